import type { Source } from '../../analysis/model.ts';
import type { RichCell } from './sheet.ts';
import type { Titles } from './titles.ts';

/** A picture by its number and name. */
export function pictureCell(source: Source | undefined, titles: Titles, small?: string): RichCell {
  if (!source) return { text: 'a picture that the plan does not have', small };
  return { text: titles.of(source), picture: titles.numberOf(source), small };
}

/** `1 Score laptop`: for places that have no badge. */
export function pictureText(source: Source, titles: Titles): string {
  return `${titles.numberOf(source)} ${titles.of(source)}`;
}
