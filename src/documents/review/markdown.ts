import { counted, type NameOf } from '../findings/located.ts';
import { oneLine } from '../printable.ts';
import { escapeMarkdown } from '../sheets/markdown.ts';
import { headlineOf } from './headline.ts';
import type { Review } from './review.ts';
import { type Entry, type Section, sectionsOf } from './sections.ts';
import { comparedText, placeText } from './text.ts';

/** A comment of a pull request may have 65,536 characters; there is room left for what a workflow adds. */
const MOST_CHARACTERS = 60_000;

/** Nobody reads a longer sentence in a comment. */
const LONGEST_ENTRY = 2000;

/** What is read first gets so many times the room of what is folded, when there is too little for all. */
const OPEN_WEIGHT = 4;

/** A review as a comment of a pull request: what matters in the first line, the worst first, the rest folded. */
export function reviewMarkdown(review: Review, nameOf: NameOf): string {
  const head = [
    `### Feedplot review: ${escapeMarkdown(headlineOf(review).join(', '))}`,
    `${escapeMarkdown(review.title || 'Plan')}: ${escapeMarkdown(comparedText(review))}`,
  ];
  const sections = sectionsOf(review).map((section) => ({
    section,
    items: section.entries.map((entry, i) => item(entry, section, i, nameOf)),
  }));
  const room = MOST_CHARACTERS - head.join('\n\n').length - sections.length * 300;
  const rooms = divide(
    room,
    sections.map(({ section, items }) => ({
      size: items.reduce((sum, text) => sum + text.length + 1, 0),
      weight: section.open ? OPEN_WEIGHT : 1,
    })),
  );
  const shown = sections.map(({ section, items }, i) => ({
    section,
    items,
    count: fitting(items, rooms[i]!),
  }));
  const left = shown.reduce((sum, { items, count }) => sum + items.length - count, 0);
  if (left > 0)
    head.push(
      `**${counted(left, 'line')} left out** because a comment has room for so much only: \`feedplot review\` tells all.`,
    );
  return `${[...head, ...shown.map(({ section, items, count }) => sectionText(section, items, count))].join('\n\n')}\n`;
}

function sectionText(section: Section, items: readonly string[], count: number): string {
  const { title, about, open, numbered } = section;
  const left = items.length - count;
  const rest = left > 0 ? [`${numbered ? '\n' : '- '}… and ${left} more`] : [];
  const quoted = section.cautions.map((caution) => `> ${escapeMarkdown(caution)}`).join('\n>\n');
  const list = [...items.slice(0, count), ...rest, ...(quoted ? ['', quoted] : [])].join('\n');
  const words = about ? `${escapeMarkdown(about)}\n\n` : '';
  if (open) return `#### ${title}\n\n${words}${list}`;
  return `<details><summary>${title}</summary>\n\n${words}${list}\n\n</details>`;
}

function item(
  { lead, text, notes, place, grave }: Entry,
  { numbered, name }: Section,
  index: number,
  nameOf: NameOf,
): string {
  const bullet = numbered ? `${index + 1}.` : '-';
  const indent = ' '.repeat(bullet.length + 1);
  const where = place ? code(placeText(place, nameOf)) : '';
  const words = prose(text);
  const isFinding = name === 'findings' || name === 'merge';
  const mark = grave && !isFinding && !numbered ? '⚠ ' : '';
  const line = isFinding
    ? `${bullet} **${escapeMarkdown(lead)}** ${where}: ${words}`
    : `${bullet} ${mark}**${escapeMarkdown(lead)}**: ${words}${where ? ` (${where})` : ''}`;
  return [line, ...notes.map((note) => `${indent}- ${grave ? '⚠ ' : ''}${prose(note)}`)].join('\n');
}

function code(text: string): string {
  return `\`${oneLine(text).replaceAll('`', "'")}\``;
}

/** Our own sentences: what stands between back-quotes is typed as it is, text of the plan becomes no markup. */
function prose(text: string): string {
  return oneLine(text, LONGEST_ENTRY)
    .split('`')
    .map((part, i) => (i % 2 === 1 ? code(part) : escapeMarkdown(part)))
    .join('');
}

interface Wanted {
  readonly size: number;
  readonly weight: number;
}

/** Room for each: whoever needs less than a fair share gets all of it, and what is left over goes to the others. */
function divide(room: number, wanted: readonly Wanted[]): number[] {
  const rooms = wanted.map(() => 0);
  const order = wanted.map((_, i) => i).sort((a, b) => needs(wanted[a]!) - needs(wanted[b]!) || a - b);
  let [left, weights] = [room, wanted.reduce((sum, { weight }) => sum + weight, 0)];
  for (const i of order) {
    const { size, weight } = wanted[i]!;
    rooms[i] = Math.min(size, Math.floor((left * weight) / weights));
    left -= rooms[i]!;
    weights -= weight;
  }
  return rooms;
}

function needs({ size, weight }: Wanted): number {
  return size / weight;
}

/** How many items, from the first on, a room holds. */
function fitting(items: readonly string[], room: number): number {
  let used = 0;
  const first = items.findIndex((text) => {
    used += text.length + 1;
    return used > room;
  });
  return first < 0 ? items.length : first;
}
