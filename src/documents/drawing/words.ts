/** Words of a drawing put together from names and figures. */
import { oneLine } from '../printable.ts';

/** What reads from right to left (Unicode Standard Annex 9: letters of classes R and AL, by their blocks). */
const rightToLeft = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

/** A name of the plan as it may stand alone. */
export function nameText(name: string): string {
  return oneLine(name, 300);
}

/** A name that is to stand beside figures: one written from right to left does not turn them around. */
export function apart(name: string): string {
  const text = nameText(name);
  return rightToLeft.test(text) ? `\u2068${text}\u2069` : text;
}

/** The parts that are there, with a dot between them. */
export function joined(parts: readonly (string | undefined)[], between = ' · '): string {
  return parts.filter((part) => part !== undefined && part !== '').join(between);
}

/** `95 of 78 m`, `1 of 6 frames`: two figures with one unit. */
export function outOf(figure: string, limit: string): string {
  const [, bare = figure, unit] = /^(.*) (\S+)$/.exec(figure) ?? [];
  const [, , limitUnit] = /^(.*) (\S+)$/.exec(limit) ?? [];
  const isSame = unit !== undefined && limitUnit !== undefined && singular(unit) === singular(limitUnit);
  return `${isSame ? bare : figure} of ${limit}`;
}

function singular(unit: string): string {
  return unit === 'frames' ? 'frame' : unit;
}
