import { type CompositeCstNode, type CstNode, GrammarAST, type LeafCstNode, type ParseResult } from 'langium';
import type { PlanFile } from '../generated/ast.ts';
import { isStatementWord } from '../words.ts';
import type { Item } from './items.ts';

/** What the layout must know of the sense of the words. */
export interface Structure {
  /** Offsets at which a setting of a block begins. */
  readonly settings: ReadonlySet<number>;
  /** Indexes of items that open a statement. */
  readonly statements: ReadonlySet<number>;
  /** Statements, by the index of their first item, that could not be read whole: their line ends are kept. */
  readonly broken: ReadonlySet<number>;
}

export function structureOf(parsed: ParseResult<PlanFile>, items: readonly Item[]): Structure {
  const opening = items.flatMap((item, i) => (!item.comment && isStatementWord(item.kind) ? [i] : []));
  return {
    settings: settingsOf(parsed),
    statements: new Set(opening),
    broken: brokenOf(parsed, items, opening),
  };
}

function settingsOf(parsed: ParseResult<PlanFile>): Set<number> {
  const settings = new Set<number>();
  for (const { $cstNode } of parsed.value.statements) {
    let inBlock = false;
    for (const child of partsOf($cstNode)) {
      if (inBlock && !child.hidden && opensChoice(child)) settings.add(child.offset);
      if (isBrace(child)) inBlock = true;
    }
  }
  return settings;
}

function isBrace(part: CstNode): boolean {
  return (part as Partial<LeafCstNode>).tokenType?.name === '{';
}

/** The words and clauses of a statement, below the rules that only choose which kind of statement it is. */
function partsOf(statement: CstNode | undefined): readonly CstNode[] {
  let node = statement as CompositeCstNode | undefined;
  while (node?.content.length === 1 && 'content' in node.content[0]!)
    node = node.content[0] as CompositeCstNode;
  return node?.content ?? [];
}

/** Whether a part of a statement is the first of one of the choices that its rule offers over and over. */
function opensChoice(part: CstNode): boolean {
  let element = part.grammarSource;
  if (element && GrammarAST.isAssignment(element.$container)) element = element.$container;
  const group = element?.$container;
  if (GrammarAST.isGroup(group)) {
    if (group.elements[0] !== element) return false;
    return GrammarAST.isAlternatives(group.$container);
  }
  return GrammarAST.isAlternatives(group);
}

function brokenOf(
  parsed: ParseResult<PlanFile>,
  items: readonly Item[],
  opening: readonly number[],
): Set<number> {
  const broken = new Set<number>();
  const mark = (offset: number | undefined) => {
    if (offset === undefined || !Number.isFinite(offset)) return;
    let low = 0;
    let high = opening.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (items[opening[middle]!]!.start <= offset) low = middle + 1;
      else high = middle;
    }
    broken.add(opening[low - 1] ?? 0);
  };
  for (const error of parsed.parserErrors) {
    const { token } = error;
    // At the end of the file the token has no place: the last statement is the one that ends too early.
    mark(Number.isFinite(token.startOffset) ? token.startOffset : items.at(-1)?.start);
    mark((error as { previousToken?: typeof token }).previousToken?.startOffset);
  }
  return broken;
}
