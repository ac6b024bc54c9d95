import type { CstNode, LeafCstNode } from 'langium';
import type { Piece } from '../language/incremental/piece.ts';
import { equalFacts } from './equal-facts.ts';
import type { Fact } from './facts.ts';
import type { Fault, Statement } from './plan.ts';
import { readStatement } from './read-statement.ts';
import { TextSource } from './text-source.ts';

/**
 * A statement as read from text. While a later reading of it means the same it stays the same object, and takes over
 * the words, faults and place of that reading: what was worked out from it and found in it still holds.
 */
export class TextStatement implements Statement {
  readonly fact: Fact;
  label: string | undefined;
  description: string | undefined;
  faults: readonly Fault[];
  readonly source: TextSource;

  constructor({ fact, label, description, faults }: Statement, source: TextSource) {
    this.fact = fact;
    this.label = label;
    this.description = description;
    this.faults = faults;
    this.source = source;
  }

  /** Takes over a later reading. @returns whether its faults differ; its label can be looked at before and after. */
  becomes(later: TextStatement): boolean {
    const differs = !equalFacts(this.faults, later.faults);
    this.label = later.label;
    this.description = later.description;
    this.faults = later.faults;
    this.source.node = later.source.node;
    return differs;
  }
}

/** The statement of a piece; undefined where there is none, or where it does not mean anything yet. */
export function statementIn(piece: Piece, file: string): TextStatement | undefined {
  const { statement: node, items } = piece;
  if (!node) return undefined;
  const source = new TextSource(file, node);
  const read = readStatement(node, source, descriptionAmong(items));
  return read && new TextStatement(read, source);
}

/** The documentation comment directly above the statement, if the last block comment is one. */
function descriptionAmong(items: readonly CstNode[]): string | undefined {
  const statement = items.findIndex((item) => !item.hidden);
  const comment = items
    .slice(0, statement)
    .findLast((item) => (item as LeafCstNode).tokenType.name === 'ML_COMMENT');
  return comment?.text.startsWith('/**') ? commentText(comment.text) || undefined : undefined;
}

function commentText(comment: string): string {
  return comment
    .replace(/^\/\*\*|\*\/$/g, '')
    .split(/\r?\n/)
    .map((line) => line.replace(/^\s*\* ?/, '').trim())
    .join('\n')
    .trim();
}
