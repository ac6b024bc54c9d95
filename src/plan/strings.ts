import type { CompositeCstNode, CstNode, LeafCstNode } from 'langium';

/** The leaves of a statement that are text in quotes, in the order in which they are written. */
export function* stringsOf(node: CstNode | undefined): Iterable<CstNode> {
  if (!node) return;
  if (isComposite(node)) for (const child of node.content) yield* stringsOf(child);
  else if ((node as LeafCstNode).tokenType?.name === 'STRING') yield node;
}

function isComposite(node: CstNode): node is CompositeCstNode {
  return 'content' in node;
}
