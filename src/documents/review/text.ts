import type { NameOf } from '../findings/located.ts';
import type { Paint } from '../paint.ts';
import { oneLine } from '../printable.ts';
import { wrapLine } from '../wrap.ts';
import { headlineOf } from './headline.ts';
import type { Review, ReviewPlace } from './review.ts';
import { type Entry, type Section, sectionsOf } from './sections.ts';

/** A review for a terminal: nothing in it is told by colour alone. */
export function reviewText(review: Review, nameOf: NameOf, paint: Paint, width: number): string[] {
  const lines = [
    paint.heading(oneLine(`${review.title || 'Plan'}: ${headlineOf(review).join(', ')}`)),
    ...wrapLine(comparedText(review), width).map((line) => paint.quiet(line)),
  ];
  for (const section of sectionsOf(review)) {
    lines.push('', paint.heading(oneLine(section.title)));
    if (section.about) lines.push(...wrapLine(section.about, width));
    section.entries.forEach((entry, i) => {
      lines.push(...entryLines(entry, section, i, { nameOf, paint, width }));
    });
    for (const caution of section.cautions)
      lines.push(...wrapLine(caution, width).map((line) => paint.warning(line)));
  }
  return lines;
}

/** What was compared with what, and what of it could not be read. */
export function comparedText({ old, new: fresh }: Review): string {
  const revisions =
    old.revision === fresh.revision
      ? ''
      : `, revision ${old.revision ?? 'none'} → ${fresh.revision ?? 'none'}`;
  const unread = [old, fresh]
    .filter(({ unreadable }) => unreadable > 0)
    .map(
      ({ name, unreadable }) =>
        ` What could not be read in ${name} is not compared: ${unreadable === 1 ? '1 place' : `${unreadable} places`}.`,
    );
  return `${old.name} → ${fresh.name}${revisions}.${unread.join('')}`;
}

interface Setting {
  readonly nameOf: NameOf;
  readonly paint: Paint;
  readonly width: number;
}

function entryLines(
  { lead, text, notes, place, grave }: Entry,
  { numbered, name }: Section,
  index: number,
  { nameOf, paint, width }: Setting,
): string[] {
  const mark = numbered ? `${index + 1}.`.padStart(3) : grave ? ' !' : ' -';
  const where = place ? ` (${placeText(place, nameOf)})` : '';
  const indent = ' '.repeat(mark.length + 1);
  const shown = `${lead}: ${text}${name === 'findings' || name === 'merge' ? '' : where}`;
  const first =
    name === 'findings' || name === 'merge'
      ? `${place ? `${placeText(place, nameOf)}: ` : ''}${shown}`
      : shown;
  const lines = wrapLine(indent + oneLine(first, 4000), width);
  const body = lines.map((line, i) => (i === 0 ? `${mark} ${line.slice(indent.length)}` : line));
  const painted = grave ? body.map((line, i) => (i === 0 ? paint.error(line) : line)) : body;
  return [...painted, ...notes.flatMap((note) => wrapLine(`${indent}  ${oneLine(note)}`, width))];
}

/** `kit.feedplot:12`, and which of the two where it is the old one. */
export function placeText({ side, file, range }: ReviewPlace, nameOf: NameOf): string {
  return `${oneLine(nameOf(file))}:${range.line + 1}${side === 'old' ? ' before' : ''}`;
}
