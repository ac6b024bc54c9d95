import { type AstNode, type CstNode, GrammarUtils } from 'langium';
import type { Source, TextRange } from './plan.ts';
import { stringsOf } from './strings.ts';

/** Where a statement stands in the text, looked up in its syntax tree each time: positions move, trees know. */
export class TextSource implements Source {
  readonly file: string;
  /** The syntax tree of the statement's latest reading. */
  node: AstNode;

  constructor(file: string, node: AstNode) {
    this.file = file;
    this.node = node;
  }

  range(part?: string): TextRange {
    const found = part === undefined ? undefined : this.#find(part);
    return found ? rangeOf(found) : this.#firstLine();
  }

  whole(): TextRange {
    const { $cstNode: cst } = this.node;
    return cst ? rangeOf(cst) : this.#firstLine();
  }

  #find(part: string): CstNode | undefined {
    if (part.startsWith('string:'))
      return [...stringsOf(this.node.$cstNode)][Number(part.slice('string:'.length))];
    const steps = part.split('.');
    let node: AstNode | undefined = this.node;
    for (const [i, step] of steps.entries()) {
      const [property = '', item] = step.split('/');
      if (!node) return undefined;
      if (i === steps.length - 1) {
        return GrammarUtils.findNodeForProperty(
          node.$cstNode,
          property,
          item === undefined ? undefined : Number(item),
        );
      }
      const value: unknown = (node as unknown as Record<string, unknown>)[property];
      const child: unknown = Array.isArray(value) ? value[Number(item ?? 0)] : value;
      node = isAstNode(child) ? child : undefined;
    }
    return undefined;
  }

  #firstLine(): TextRange {
    const cst = this.node.$cstNode;
    if (!cst) return { line: 0, column: 0, endLine: 0, endColumn: 0 };
    const { start, end } = cst.range;
    if (start.line === end.line) return rangeOf(cst);
    const firstLine = cst.text.split(/\r?\n|\r/, 1)[0] ?? '';
    return {
      line: start.line,
      column: start.character,
      endLine: start.line,
      endColumn: start.character + firstLine.trimEnd().length,
    };
  }
}

function rangeOf(node: CstNode): TextRange {
  const { start, end } = node.range;
  return { line: start.line, column: start.character, endLine: end.line, endColumn: end.character };
}

function isAstNode(value: unknown): value is AstNode {
  return typeof value === 'object' && value !== null && '$type' in value;
}
