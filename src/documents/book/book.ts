import { failing } from '../../analysis/failures.ts';
import { type CheckedAnalysis, filledTables, sheetMakers, sheetsOf } from '../sheets/sheets.ts';
import { Titles } from '../sheets/titles.ts';
import { coverHtml, type Heading, titleOf } from './cover.ts';
import { type BookDrawing, type BookDrawings, makingDrawings } from './drawings.ts';
import { prose, text } from './html.ts';
import { sheetHtml } from './sheet-html.ts';
import { bookStyle } from './style.ts';

/** A book before its drawings are laid out, which takes longest and can be done elsewhere. */
export interface BookParts {
  readonly title: string;
  readonly style: string;
  readonly cover: string;
  readonly drawings: readonly BookDrawing[];
  /** What stands above the drawings; empty without any. */
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
  const drawn =
    wanted === undefined || wanted.has('drawing')
      ? yield* makingDrawings(analysis, new Titles(analysis))
      : { drawings: [], tooLarge: [] };
  const drawingsHead = drawingsHeadHtml(drawn, from);
  if (drawingsHead !== '') headings.push({ id: 'drawing', title: 'Drawings' });
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
    drawings: drawn.drawings,
    drawingsHead,
    sections,
  };
}

const howToRead =
  'Each picture has a number and a shade; both go with it along every cable. Full dots are plugged, hollow ones are free. A framed band between two boxes is a network cable: each picture in it is a strip, the upper half goes to the right, the lower half to the left, white is left over. Dashed: a spare, or out of use.';

/** The heading, how to read what follows, and what is too large to be drawn on paper. */
function drawingsHeadHtml({ drawings, tooLarge }: BookDrawings, from: string): string {
  if (drawings.length + tooLarge.length === 0) return '';
  const missing = tooLarge.map(({ title, boxes, place }) => {
    const instead = place === undefined ? '`feedplot draw`' : `\`feedplot draw --place ${place}\``;
    const others = place === undefined && drawings.length > 0 ? ' The drawings of its places follow.' : '';
    return `<p class="note"><strong>${text(title)} is not drawn here:</strong> ${prose(`it has ${boxes} boxes, too many for a page.${others} ${instead} draws it for a screen.`)}</p>`;
  });
  return `<h2 id="drawing-title">Drawings</h2><p class="from">${text(from)}</p><p class="about">${text(howToRead)}</p>${missing.join('')}`;
}

function* inSteps(steps: Generator<undefined, unknown>): Generator<undefined, void> {
  while (!steps.next().done) yield;
}
