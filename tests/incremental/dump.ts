/** Everything that can be seen of a syntax tree, one value after the other, to compare two trees. */
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

/** Values rather than lines of text: they are compared after every edit, and joining them would take longest. */
export type Seen = string | number | boolean | null | undefined;

export function dumpTree(parsed: ParseResult, out: Seen[] = []): Seen[] {
  dumpNode(parsed.value, out);
  dumpCst(parsed.value.$cstNode!, out);
  for (const { offset, line, column, length, message } of parsed.lexerErrors)
    out.push('lexer', offset, line, column, length, message);
  for (const { token, message } of parsed.parserErrors)
    out.push('parser', token.startOffset, token.startLine, token.startColumn, token.image, message);
  return out;
}

function dumpNode(node: AstNode, out: Seen[]): void {
  const cst = node.$cstNode;
  out.push('node', node.$type, node.$containerProperty, node.$containerIndex);
  if (cst) {
    out.push(cst.offset, cst.length, node.$container ? cst.text : '', cst.astNode === node);
    dumpRange(cst.range, out);
  } else out.push('no text');
  for (const key of Object.keys(node).sort()) {
    if (key.startsWith('$')) continue;
    const value = (node as unknown as Record<string, unknown>)[key];
    if (!Array.isArray(value)) dumpValue(node, key, value, out);
    else for (const item of value) dumpValue(node, key, item, out);
  }
  out.push('end');
}

function dumpValue(node: AstNode, key: string, value: unknown, out: Seen[]): void {
  out.push(key);
  if (isAstNode(value)) {
    if (value.$container !== node) out.push('stands in another node');
    dumpNode(value, out);
  } else if (isReference(value)) {
    const at = value.$refNode!;
    out.push('names', value.$refText, at.offset, at.text);
    dumpRange(at.range, out);
  } else if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') {
    out.push(value);
  } else out.push(JSON.stringify(value));
}

function dumpCst(node: CstNode, out: Seen[]): void {
  const leaf = !isCompositeCstNode(node);
  const source = node.grammarSource as { $type: string; value?: string } | undefined;
  const kind = leaf ? (node as LeafCstNode).tokenType.name : 'node';
  out.push('cst', kind, node.hidden, node.offset, node.length, source?.$type, source?.value);
  dumpRange(node.range, out);
  if (leaf) {
    out.push(node.text);
    return;
  }
  for (const child of (node as CompositeCstNode).content) {
    if (child.container !== node) out.push('stands in another node');
    dumpCst(child, out);
  }
  out.push('end');
}

/** `statements/3.targets/1`. */
export function path(node: AstNode | undefined): string {
  if (!node) return 'nothing';
  const steps: string[] = [];
  for (let at = node; at.$container; at = at.$container)
    steps.unshift(`${at.$containerProperty}/${at.$containerIndex ?? ''}`);
  return steps.join('.');
}

function dumpRange({ start, end }: Range, out: Seen[]): void {
  out.push(start.line, start.character, end.line, end.character);
}

/** So many values before and behind the first difference are shown. */
const AROUND = 12;

/** The first place in which two dumps differ, in words; undefined for none. */
export function firstDifference(kept: readonly Seen[], fresh: readonly Seen[]): string | undefined {
  for (let i = 0; i < Math.max(kept.length, fresh.length); i++) {
    if (Object.is(kept[i], fresh[i])) continue;
    const show = (values: readonly Seen[]) =>
      JSON.stringify(values.slice(Math.max(0, i - AROUND), i + AROUND)).slice(0, 600);
    return `value ${i}\n  edited: ${show(kept)}\n  fresh:  ${show(fresh)}`;
  }
  return undefined;
}
