import { resolve } from 'node:path';
import { type BookParts, bookParts, bookSections } from '../documents/book/book.ts';
import { bookPage } from '../documents/book/page.ts';
import { countBySeverity, counted } from '../documents/findings/located.ts';
import { oneLine } from '../documents/printable.ts';
import { csvOf } from '../documents/sheets/csv.ts';
import { markdownOf } from '../documents/sheets/markdown.ts';
import { mergedTables } from '../documents/sheets/merged.ts';
import { sheetsOf } from '../documents/sheets/sheets.ts';
import { nearest } from '../language/spelling.ts';
import { addLabelOptions, type LabelOptions, writeLabels } from './book-labels.ts';
import { writePictures } from './book-pictures.ts';
import { nameFrom } from './file-uri.ts';
import { findPlan } from './find-plan.ts';
import { type OpenPlan, PlanReader } from './open-plan.ts';
import { OutputFolder } from './output-folder.ts';
import type { Define } from './program.ts';
import type { Terminal } from './terminal.ts';
import { Trouble } from './trouble.ts';

interface Options extends LabelOptions {
  readonly to: string;
  readonly only?: string;
}

/** Forms in which papers are written. Those that a crew needs less often are made when they are named. */
const usual = ['html', 'tables', 'markdown'] as const;
const named = ['labels', 'pictures'] as const;
const forms: readonly string[] = [...usual, ...named];

/** `feedplot book`: the papers that the crew carries. */
export const define: Define = (command, { terminal, program }) => {
  command
    .argument('[plan]', 'a plan file, or a folder with one plan; without it, the one plan in this folder')
    .option('--to <folder>', 'where the papers are written', 'papers')
    .option(
      '--only <list>',
      `only these, with commas between: ${forms.join(', ')}; or sections: ${bookSections.join(', ')}`,
    )
    .action(async (name: string | undefined, options: Options) => {
      const only = wantedOf(options.only);
      const reader = new PlanReader(program);
      const { path, chosen } = findPlan(reader, terminal.folder, name);
      const plan = reader.plan(path);
      const planName = nameFrom(terminal.folder, plan.uri);
      if (chosen) terminal.note(`Writing the papers of ${planName}.`);
      const folder = new OutputFolder(resolve(terminal.folder, options.to));
      await write(plan, only, folder, terminal);
      if (only.forms.has('labels')) await writeLabels(plan, options, folder, program, terminal);
      if (only.forms.has('pictures')) await writePictures(plan, folder, program, terminal);
      terminal.progress('');
      tell(plan, planName, folder, terminal);
    });
  addLabelOptions(command);
};

interface Wanted {
  readonly forms: ReadonlySet<string>;
  /** Undefined: all of them, and a cover. */
  readonly sections: ReadonlySet<string> | undefined;
}

/** @throws Trouble for a word that is neither a form nor a section. */
function wantedOf(list: string | undefined): Wanted {
  const words = (list ?? '')
    .split(',')
    .map((word) => word.trim())
    .filter(Boolean);
  const wrong = words.find((word) => !forms.includes(word) && !bookSections.includes(word));
  if (wrong !== undefined) {
    const guess = nearest(wrong, [...forms, ...bookSections]);
    throw new Trouble(
      `There is no paper called ${oneLine(wrong, 80)}.${guess ? ` Did you mean ${guess}?` : ''} Forms: ${forms.join(', ')}. Sections: ${bookSections.join(', ')}.`,
    );
  }
  const wantedForms = words.filter((word) => forms.includes(word));
  const sections = words.filter((word) => bookSections.includes(word));
  return {
    forms: new Set(wantedForms.length > 0 ? wantedForms : usual),
    sections: sections.length > 0 ? new Set(sections) : undefined,
  };
}

async function write(
  plan: OpenPlan,
  wanted: Wanted,
  folder: OutputFolder,
  terminal: Terminal,
): Promise<void> {
  if (wanted.forms.has('html')) await writeBook(bookParts(plan, wanted.sections), folder, terminal);
  const sheets = [...sheetsOf(plan, wanted.sections)];
  if (wanted.forms.has('tables')) {
    terminal.progress('Writing the tables');
    for (const table of sheets.flatMap(mergedTables)) folder.write(`tables/${table.file}.csv`, csvOf(table));
  }
  if (wanted.forms.has('markdown')) {
    const { title, statement } = plan.analysis.settings;
    const { revision, date } = statement?.fact ?? {};
    const from = [revision && `Revision ${revision}`, date].filter(Boolean).join(', ');
    folder.write('book.md', markdownOf(title || 'Plan', from, sheets));
  }
}

async function writeBook(parts: BookParts, folder: OutputFolder, terminal: Terminal): Promise<void> {
  const { scenePlacer } = await import('../documents/papers.ts');
  const placeScene = scenePlacer();
  const placements = [];
  for (const [i, { title, scene }] of parts.drawings.entries()) {
    terminal.progress(`Drawing ${i + 1} of ${parts.drawings.length}: ${title}`);
    placements.push(await placeScene(scene));
  }
  folder.write('book.html', await bookPage(parts, placements));
}

function tell(plan: OpenPlan, name: string, folder: OutputFolder, terminal: Terminal): void {
  const { error } = countBySeverity(plan.findings);
  if (error > 0)
    terminal.note(
      `${name} has ${counted(error, 'error')}: the papers say so, and \`feedplot check\` tells where.`,
    );
  terminal.out(`Wrote ${counted(folder.written.length, 'file')} to ${folder.path}.`);
  if (folder.written.includes('book.html')) terminal.out('Open book.html in a browser and print it.');
}
