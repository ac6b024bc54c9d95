import type { Lexer } from 'langium';
import { applyEdit, type TextEdit } from './edit.ts';
import type { FileTree } from './file-tree.ts';
import { narrowed } from './narrow.ts';
import type { FeedplotParser } from './parser.ts';
import type { Text } from './text.ts';

/** Each edit costs something for every piece behind it; of more than so many the stretch from first to last is one edit. */
const MOST_EDITS = 30;

/**
 * Brings a tree to a text.
 *
 * @param edits What was done to the text since; when they do not lead from the tree's text to the wanted one (another
 *   reading came between), the two texts are compared instead.
 */
export function follow(
  tree: FileTree,
  text: Text,
  edits: readonly TextEdit[],
  parser: FeedplotParser,
  lexer: Lexer,
): void {
  if (tree.text === text) return;
  const leads = edits[0]?.before === tree.text && edits.at(-1)?.text === text;
  if (leads && edits.length <= MOST_EDITS) {
    for (const edit of edits) applyEdit(tree, edit, parser, lexer);
    return;
  }
  const { start, end } = narrowed(tree.text, text.toString());
  applyEdit(tree, { start, end, before: tree.text, text }, parser, lexer);
}
