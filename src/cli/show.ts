import { existsSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { countBySeverity, locateFindings } from '../documents/findings/located.ts';
import { analysisJson } from '../documents/json/analysis.ts';
import { oneLine } from '../documents/printable.ts';
import { besideTables } from '../documents/tables/beside.ts';
import { overview, tables } from '../documents/tables/tables.ts';
import { type Table, textTable } from '../documents/text-table.ts';
import { workingsText } from '../documents/workings/text.ts';
import { explainedNames, workingsOf } from '../documents/workings/workings.ts';
import { wrapLine } from '../documents/wrap.ts';
import { nearest } from '../language/spelling.ts';
import { nameFrom } from './file-uri.ts';
import { findPlan } from './find-plan.ts';
import { jsonText } from './json-text.ts';
import { type OpenPlan, PlanReader } from './open-plan.ts';
import type { Define } from './program.ts';
import type { Terminal } from './terminal.ts';
import { Trouble } from './trouble.ts';

interface Options {
  readonly why?: string;
  readonly json?: true;
  readonly beside?: string;
}

const tableNames = [...tables.keys()];

/** `feedplot show`: what was worked out, as tables, as workings or as JSON. */
export const define: Define = (command, { terminal, program }) => {
  command
    .argument('[plan]', 'a plan file, or a folder with one plan; without it, the one plan in this folder')
    .argument('[tables...]', `which tables: ${tableNames.join(', ')}; without any, the first four`)
    .option('--why <name>', 'how the figures of a link, source, destination, node or feed were got')
    .option('--json', 'the whole analysis for machines')
    .option('--beside <other plan>', 'two designs side by side: findings, cost, cable, loads, delays, losses')
    .action((first: string | undefined, others: string[], options: Options) => {
      const words = first === undefined ? [] : [first, ...others];
      const wanted = words.filter((word) => tables.has(word));
      const named = words.filter((word) => !tables.has(word));
      const wrong = named.find((word, i) => i > 0 || isNoFile(terminal, word));
      if (wrong !== undefined) throw new Trouble(unknownTable(wrong));
      if (options.beside !== undefined && (options.json || options.why !== undefined))
        throw new Trouble('Two plans side by side are for people: ask for `--json` or `--why` of each.');
      const reader = new PlanReader(program);
      const plan = open(reader, terminal, named[0]);
      if (options.beside !== undefined) showBeside(reader, plan, options.beside, { wanted, terminal });
      else if (options.json) showJson(plan, terminal);
      else if (options.why !== undefined) showWorkings(plan, options.why, terminal);
      else showTables(plan, wanted.length > 0 ? wanted : overview, terminal);
    });
};

function open(reader: PlanReader, terminal: Terminal, named: string | undefined): OpenPlan {
  const { path, chosen } = findPlan(reader, terminal.folder, named);
  const plan = reader.plan(path);
  const name = nameFrom(terminal.folder, plan.uri);
  if (chosen) terminal.note(`Showing ${name}.`);
  const { error } = countBySeverity(plan.findings);
  if (error > 0) {
    terminal.note(
      `${name} has ${error} ${error === 1 ? 'error' : 'errors'}: \`feedplot check\` tells ${error === 1 ? 'it' : 'them'}.`,
    );
  }
  return plan;
}

/** A word that is no file, and does not look like the name of one. */
function isNoFile({ folder }: Terminal, word: string): boolean {
  return (
    /^\w+$/.test(word) &&
    !existsSync(resolve(folder, word)) &&
    !existsSync(resolve(folder, `${word}.feedplot`))
  );
}

function unknownTable(word: string): string {
  const guess = nearest(word, tableNames);
  return `No file and no table is called ${word}.${guess ? ` Did you mean ${guess}?` : ''} There are ${tableNames.join(', ')}.`;
}

function showTables({ analysis }: OpenPlan, names: readonly string[], terminal: Terminal): void {
  names
    .flatMap((name) => {
      const [main, ...others] = tables.get(name)!(analysis);
      return [main!, ...others.filter((table) => table.rows.length > 0)];
    })
    .forEach((table, i) => {
      if (i > 0) terminal.out('');
      showTable(table, terminal);
    });
}

/** What tells two designs apart, and then the wanted tables of each. */
function showBeside(
  reader: PlanReader,
  plan: OpenPlan,
  other: string,
  { wanted, terminal }: { wanted: readonly string[]; terminal: Terminal },
): void {
  const plans = [plan, open(reader, terminal, other)];
  const short = plans.map(({ uri }) => basename(uri, '.feedplot'));
  const [first, second] = plans.map((one, i) => ({
    ...one,
    name: short[0] === short[1] ? nameFrom(terminal.folder, one.uri) : decodeURIComponent(short[i]!),
  }));
  for (const table of besideTables([first!, second!])) {
    showTable(table, terminal);
    terminal.out('');
  }
  for (const one of wanted.length > 0 ? [first!, second!] : []) {
    terminal.out(terminal.paint.heading(one.name));
    showTables(one, wanted, terminal);
    terminal.out('');
  }
}

function showTable(table: Table, { width, paint, out }: Terminal): void {
  if (table.rows.length === 0) {
    out(table.empty);
    return;
  }
  const [titles, ...lines] = textTable(table, width);
  out(paint.heading(titles!));
  for (const line of lines) out(line);
}

function showJson({ analysis, findings, files, uri }: OpenPlan, terminal: Terminal): void {
  const nameOf = (file: string) => nameFrom(terminal.folder, file);
  const json = analysisJson(analysis, nameOf(uri), locateFindings(findings, files, nameOf));
  terminal.out(jsonText(json));
}

function showWorkings({ analysis }: OpenPlan, name: string, terminal: Terminal): void {
  const workings = workingsOf(analysis, name);
  if (!workings) {
    const guess = nearest(name, explainedNames(analysis));
    throw new Trouble(
      `Nothing in this plan is called ${oneLine(name, 80)}.${guess ? ` Did you mean ${guess}?` : ''}`,
    );
  }
  if (workings.length === 0) terminal.out(`${oneLine(name, 80)} has no figures that were worked out.`);
  for (const line of workingsText(workings)) {
    for (const part of wrapLine(line, terminal.width)) terminal.out(part);
  }
}
