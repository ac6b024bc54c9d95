import { failing } from '../../analysis/failures.ts';
import { type CheckedAnalysis, filledTables, sheetMakers, sheetsOf } from '../sheets/sheets.ts';
import { Titles } from '../sheets/titles.ts';
import { coverHtml, type Heading, titleOf } from './cover.ts';
import { type BookDrawing, bookDrawings } from './drawings.ts';
import { text } from './html.ts';
import { sheetHtml } from './sheet-html.ts';
import { bookStyle } from './style.ts';

/** A book before its drawings are laid out, which takes longest and can be done elsewhere. */
export interface BookParts {
  readonly title: string;
  readonly style: string;
  readonly cover: string;
  readonly drawings: readonly BookDrawing[];
  /** What stands around the drawings. */
  readonly drawingsHead: string;
  readonly sections: readonly string[];
}

/** Every section of the book by the name that a person asks for. */
export const bookSections: readonly string[] = ['drawing', ...sheetMakers.keys()];

/** @param wanted Names of sections; undefined: the whole book with its cover. */
export function bookParts(checked: CheckedAnalysis, wanted?: ReadonlySet<string>): BookParts {
  const steps = makingBook(checked, wanted);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same in steps of a section each, for an editor that has other things to do between them. */
export function* makingBook(
  checked: CheckedAnalysis,
  wanted?: ReadonlySet<string>,
): Generator<undefined, BookParts> {
  const { analysis } = checked;
  const title = titleOf(checked);
  const { revision, date } = analysis.settings.statement?.fact ?? {};
  const from = [title, revision && `revision ${revision}`, date].filter(Boolean).join(' · ');
  // The fault cards need what is longest to work out; it goes in steps of its own.
  if (wanted === undefined || wanted.has('faults')) yield* inSteps(failing(analysis));
  const headings: Heading[] = [];
  const drawings =
    wanted === undefined || wanted.has('drawing') ? bookDrawings(analysis, new Titles(analysis)) : [];
  if (drawings.length > 0) headings.push({ id: 'drawing', title: 'Drawings' });
  const sections: string[] = [];
  for (const sheet of sheetsOf(checked, wanted)) {
    yield;
    // The whole book leaves out what the plan has nothing for; a section that was asked for says so.
    if (wanted === undefined && filledTables(sheet).length === 0) continue;
    headings.push({ id: sheet.id, title: sheet.title });
    sections.push(sheetHtml(sheet, from));
    yield;
  }
  return {
    title,
    style: bookStyle({ title, revision: revision ? `revision ${revision}` : '', date: date ?? '' }),
    cover: wanted === undefined ? coverHtml(checked, headings) : '',
    drawings,
    drawingsHead: `<h2 id="drawing-title">Drawings</h2><p class="from">${text(from)}</p>`,
    sections,
  };
}

function* inSteps(steps: Generator<undefined, unknown>): Generator<undefined, void> {
  while (!steps.next().done) yield;
}
