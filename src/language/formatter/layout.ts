import type { Item } from './items.ts';
import type { Structure } from './structure.ts';

const INDENT = '  ';

/** The white space before each item. In a statement that is not whole, what was written as one word stays one. */
export function layOut(items: readonly Item[], structure: Structure, newline: string): string[] {
  const gaps: string[] = [];
  let depth = 0;
  let broken = structure.broken.has(0);
  for (const [i, item] of items.entries()) {
    const previous = items[i - 1];
    if (structure.statements.has(i)) {
      depth = 0;
      broken = structure.broken.has(i);
    }
    if (item.kind === '}') depth = Math.max(0, depth - 1);
    if (!previous) gaps.push('');
    else {
      const opens = structure.statements.has(i);
      const line = lineBefore(item, previous, depth, {
        opens,
        broken,
        setting: structure.settings.has(item.start),
      });
      if (line === undefined) gaps.push(broken && item.start === previous.end ? '' : between(previous, item));
      else gaps.push(newline.repeat(keepsBlankLine(item, previous) ? 2 : 1) + INDENT.repeat(line));
    }
    if (item.kind === '{') depth++;
  }
  return gaps;
}

/** How far the line is indented that begins with an item; undefined when it goes on the line before. */
function lineBefore(
  item: Item,
  previous: Item,
  depth: number,
  { opens, broken, setting }: { opens: boolean; broken: boolean; setting: boolean },
): number | undefined {
  if (opens && !(previous.comment && item.newlines === 0 && !isLineComment(previous))) return 0;
  if (item.kind === '}' || previous.kind === '{') {
    return item.comment && item.newlines === 0 ? undefined : depth;
  }
  if (setting) return previous.comment && item.newlines === 0 && !isLineComment(previous) ? undefined : depth;
  if (item.comment && item.newlines > 0) return depth;
  if (previous.kind === '}') return item.newlines > 0 ? depth : undefined;
  if (isLineComment(previous) || isUnclosedText(previous)) return continued(depth, item);
  if (previous.comment && item.newlines > 0) return continued(depth, item);
  return broken && item.newlines > 0 ? continued(depth, item) : undefined;
}

/** Inside a statement the next line is indented by one more. */
function continued(depth: number, item: Item): number {
  return item.comment ? depth : depth + 1;
}

function keepsBlankLine(item: Item, previous: Item): boolean {
  return item.newlines > 1 && previous.kind !== '{' && item.kind !== '}';
}

function isLineComment(item: Item): boolean {
  return item.comment && item.text.startsWith('//');
}

/** Text that its line ends, because nobody closed it. */
function isUnclosedText({ kind, text }: Item): boolean {
  return kind === 'STRING' && !(text.length > 1 && /["“”»]$/.test(text));
}

const tight = new Set(['.', '..', '[']);

/** The white space between two items of a line. */
function between(previous: Item, item: Item): string {
  if (item.kind === ',' && !previous.comment) return '';
  if (tight.has(item.kind) || item.kind === ']' || tight.has(previous.kind)) return '';
  return ' ';
}

/** A comment without white space at the ends of its lines; one in the usual shape is moved with its first line. */
export function formattedComment(text: string, gap: string, newline: string): string {
  const [first = '', ...rest] = text.split(/\r?\n|\r/).map((line) => line.trimEnd());
  const starred = rest.every((line) => line.trimStart().startsWith('*'));
  const indent = /[ ]*$/.exec(gap.includes('\n') || gap.includes('\r') || gap === '' ? gap : '')?.[0] ?? '';
  return [first, ...rest.map((line) => (starred ? `${indent} ${line.trimStart()}` : line))].join(newline);
}
