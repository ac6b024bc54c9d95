/** Everything that can be seen of a syntax tree, a line a thing, to compare two trees. */
import {
  type AstNode,
  type CompositeCstNode,
  type CstNode,
  isAstNode,
  isCompositeCstNode,
  isReference,
  type LeafCstNode,
  type ParseResult,
} from 'langium';
import type { Range } from 'vscode-languageserver-types';

export function dumpTree(parsed: ParseResult): string[] {
  const out: string[] = [];
  dumpNode(parsed.value, out, 0);
  dumpCst(parsed.value.$cstNode!, out, 0);
  for (const error of parsed.lexerErrors) {
    out.push(`lexer ${error.offset} ${error.line}:${error.column} ${error.length} ${error.message}`);
  }
  for (const { token, message } of parsed.parserErrors) {
    out.push(`parser ${token.startOffset} ${token.startLine}:${token.startColumn} ${token.image} ${message}`);
  }
  return out;
}

function dumpNode(node: AstNode, out: string[], depth: number): void {
  const cst = node.$cstNode;
  const place = cst
    ? `${cst.offset}+${cst.length} ${range(cst.range)} ${depth > 0 ? cst.text : ''} ${cst.astNode === node}`
    : 'no text';
  out.push(`${depth} ${path(node)} ${node.$type} ${place}`);
  for (const key of Object.keys(node).sort()) {
    if (key.startsWith('$')) continue;
    const value = (node as unknown as Record<string, unknown>)[key];
    const items = Array.isArray(value) ? value : [value];
    items.forEach((item: unknown, i) => {
      if (isAstNode(item)) {
        if (item.$container !== node) out.push(`${depth} ${key} ${i} stands in another node`);
        dumpNode(item, out, depth + 1);
      } else if (isReference(item)) {
        const at = item.$refNode!;
        out.push(`${depth} ${key} ${i} names ${item.$refText} ${at.offset} ${range(at.range)} ${at.text}`);
      } else {
        out.push(`${depth} ${key} ${i} ${JSON.stringify(item)}`);
      }
    });
  }
}

function dumpCst(node: CstNode, out: string[], depth: number): void {
  const leaf = !isCompositeCstNode(node);
  const source = node.grammarSource as { $type: string; value?: string } | undefined;
  const kind = leaf ? (node as LeafCstNode).tokenType.name : 'node';
  out.push(
    `cst ${depth} ${kind} ${node.hidden} ${node.offset}+${node.length} ${range(node.range)} ${source?.$type} ${source?.value ?? ''} ${leaf ? node.text : ''}`,
  );
  if (leaf) return;
  for (const child of (node as CompositeCstNode).content) {
    if (child.container !== node) out.push(`cst ${depth} stands in another node`);
    dumpCst(child, out, depth + 1);
  }
}

/** `statements/3.targets/1`. */
export function path(node: AstNode | undefined): string {
  if (!node) return 'nothing';
  const steps: string[] = [];
  for (let at = node; at.$container; at = at.$container)
    steps.unshift(`${at.$containerProperty}/${at.$containerIndex ?? ''}`);
  return steps.join('.');
}

function range({ start, end }: Range): string {
  return `${start.line}:${start.character}-${end.line}:${end.character}`;
}

/** The first line in which two dumps differ, in words; undefined for none. */
export function firstDifference(kept: readonly string[], fresh: readonly string[]): string | undefined {
  for (let i = 0; i < Math.max(kept.length, fresh.length); i++) {
    if (kept[i] === fresh[i]) continue;
    const show = (line: string | undefined) =>
      line === undefined ? 'nothing' : JSON.stringify(line).slice(0, 300);
    return `line ${i}\n  edited: ${show(kept[i])}\n  fresh:  ${show(fresh[i])}`;
  }
  return undefined;
}
