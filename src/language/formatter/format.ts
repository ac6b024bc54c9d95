import type { Lexer, ParseResult } from 'langium';
import type { PlanFile } from '../generated/ast.ts';
import { createFeedplotServices, type FeedplotServices } from '../services.ts';
import { type Item, itemsOf } from './items.ts';
import { formattedComment, layOut } from './layout.ts';
import { structureOf } from './structure.ts';

/** Other text between two offsets. Outside comments only white space is ever replaced. */
export interface Replacement {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** The formatted text, or why nothing is changed. */
export type Formatted = { readonly text: string } | { readonly refusal: string };

let services: FeedplotServices | undefined;

/**
 * A file in canonical layout: one statement a line, blocks indented by two, one space between words. Words, their
 * order and all comments stay, and so do groups of lines with a blank line between them. Formatting twice changes
 * nothing.
 */
export function formatText(text: string): Formatted {
  services ??= createFeedplotServices().Feedplot;
  const parsed = services.parser.LangiumParser.parse<PlanFile>(text);
  const replacements = formattingOf(text, parsed, services.parser.Lexer);
  return 'refusal' in replacements ? replacements : { text: applied(text, replacements.replacements) };
}

/**
 * What to replace for canonical layout, in order.
 *
 * @param extent Of a piece of a file the white space before its first and behind its last word is left as it is.
 */
export function formattingOf(
  text: string,
  parsed: ParseResult<PlanFile>,
  lexer: Lexer,
  extent: 'file' | 'piece' = 'file',
): { readonly replacements: readonly Replacement[] } | { readonly refusal: string } {
  const read = lexer.tokenize(text);
  const [error] = read.errors;
  if (error)
    return { refusal: `Line ${error.line ?? 1} cannot be read, so nothing was changed: ${error.message}` };
  const items = itemsOf(text, read);
  const gaps = layOut(items, structureOf(parsed, items), newlineOf(text));
  const replacements = replacementsOf(text, items, gaps, extent);
  const after = itemsOf('', lexer.tokenize(applied(text, replacements)));
  return sameWords(items, after)
    ? { replacements }
    : {
        refusal:
          'The words would not be the same afterwards, so nothing was changed. This is a fault of the tool.',
      };
}

function replacementsOf(
  text: string,
  items: readonly Item[],
  gaps: readonly string[],
  extent: 'file' | 'piece',
): Replacement[] {
  const replacements: Replacement[] = [];
  const replace = (start: number, end: number, by: string) => {
    if (text.slice(start, end) !== by) replacements.push({ start, end, text: by });
  };
  let end = text.startsWith('\uFEFF') ? 1 : 0;
  for (const [i, item] of items.entries()) {
    const gap = gaps[i] ?? '';
    if (i > 0 || extent === 'file') replace(end, item.start, gap);
    if (item.comment) replace(item.start, item.end, formattedComment(item.text, gap, newlineOf(text)));
    end = item.end;
  }
  if (extent === 'file') replace(end, text.length, items.length > 0 ? newlineOf(text) : '');
  return replacements;
}

export function applied(text: string, replacements: readonly Replacement[]): string {
  const parts: string[] = [];
  let end = 0;
  for (const { start, end: next, text: by } of replacements) {
    parts.push(text.slice(end, start), by);
    end = next;
  }
  parts.push(text.slice(end));
  return parts.join('');
}

/** The file's own line ends, as its first line has it. */
function newlineOf(text: string): string {
  return /\r?\n|\r/.exec(text)?.[0] ?? '\n';
}

function sameWords(before: readonly Item[], after: readonly Item[]): boolean {
  if (before.length !== after.length) return false;
  return before.every((item, i) => bare(item) === bare(after[i]!));
}

/** A word as it is; a comment without the white space at the ends of its lines. */
function bare({ comment, text }: Item): string {
  return comment
    ? text
        .split(/\r?\n|\r/)
        .map((line) => line.trim())
        .join('\n')
    : text;
}
