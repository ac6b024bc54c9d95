import { CstUtils, GrammarUtils, type LeafCstNode } from 'langium';
import type { PlanFile } from '../../src/language/generated/ast.ts';
import { createFeedplotServices } from '../../src/language/services.ts';
import { isStatementWord } from '../../src/language/words.ts';

/** A word of a plan as somebody writes it. */
export interface Word {
  readonly text: string;
  /** The white space between the word before and this one. */
  readonly before: string;
  /** An editor can know it: it is no new name, number or text. */
  readonly offered: boolean;
  /** It opens a statement. */
  readonly opens: boolean;
}

const { LangiumParser } = createFeedplotServices().Feedplot.parser;

/** What nobody but the writer knows, and signs that are quicker to type than to choose. */
const ownKinds: ReadonlySet<string> = new Set(['NUMBER', 'STRING', 'DATE', 'ADDRESS', 'SAMPLING', 'RATIO']);
const signs = /^([{}[\],.:]+|->|<->)$/;

/** The words of each statement of a plan in order, without comments. */
export function wordsToWrite(text: string): Word[][] {
  const { statements } = LangiumParser.parse<PlanFile>(text).value;
  return statements.map(({ $cstNode }) => {
    const leaves = CstUtils.flattenCst($cstNode!)
      .filter((leaf) => !leaf.hidden)
      .toArray();
    return leaves.map((leaf, i) => ({
      text: leaf.text,
      before: i === 0 ? '' : text.slice(leaves[i - 1]!.end, leaf.offset),
      offered: isOffered(leaf),
      opens: i === 0 && isStatementWord(leaf.text),
    }));
  });
}

/** Whether an editor can offer a word where it stands. */
export function isOffered(leaf: LeafCstNode): boolean {
  if (leaf.hidden || ownKinds.has(leaf.tokenType.name) || signs.test(leaf.text)) return false;
  return GrammarUtils.findAssignment(leaf)?.feature !== 'name';
}
