import type { Sheet, SheetInput } from '../sheets/sheet.ts';
import { type CheckedAnalysis, sheetMakers, sheetsOf } from '../sheets/sheets.ts';
import { Titles } from '../sheets/titles.ts';
import { coverHtml, titleOf } from './cover.ts';
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
  const { analysis } = checked;
  const titles: SheetInput['titles'] = new Titles(analysis);
  const sheets: readonly Sheet[] = sheetsOf(checked, wanted);
  const drawings = wanted === undefined || wanted.has('drawing') ? bookDrawings(analysis, titles) : [];
  const title = titleOf(checked);
  const { revision, date } = analysis.settings.statement?.fact ?? {};
  const from = [title, revision && `revision ${revision}`, date].filter(Boolean).join(' · ');
  const headings = [
    ...(drawings.length > 0 ? [{ id: 'drawing', title: 'Drawings' }] : []),
    ...sheets.map((sheet) => ({ id: sheet.id, title: sheet.title })),
  ];
  return {
    title,
    style: bookStyle({ title, revision: revision ? `revision ${revision}` : '', date: date ?? '' }),
    cover: wanted === undefined ? coverHtml(checked, headings) : '',
    drawings,
    drawingsHead: `<h2 id="drawing-title">Drawings</h2><p class="from">${text(from)}</p>`,
    sections: sheets.map((sheet) => sheetHtml(sheet, from)),
  };
}
