import type { AstNode } from 'langium';

/**
 * Finishes the syntax tree of a statement: tells every node where it is contained, and packs the lists. A list that
 * grew item by item has room for many more, and of the lists of a statement most are empty: those share one.
 */
export function settle(node: AstNode): void {
  const properties = node as unknown as Record<string, unknown>;
  for (const key in properties) {
    if (key.startsWith('$')) continue;
    const value = properties[key];
    if (Array.isArray(value)) {
      properties[key] = value.length === 0 ? noItems : value.slice();
      for (let i = 0; i < value.length; i++) if (isNode(value[i])) contain(value[i], node, key, i);
    } else if (isNode(value)) contain(value, node, key, undefined);
  }
}

const noItems: readonly never[] = Object.freeze([]);

interface Contained extends Omit<AstNode, '$container' | '$containerProperty' | '$containerIndex'> {
  $container: AstNode;
  $containerProperty: string;
  $containerIndex?: number;
}

function contain(node: Contained, container: AstNode, property: string, index: number | undefined): void {
  node.$container = container;
  node.$containerProperty = property;
  if (index !== undefined) node.$containerIndex = index;
  settle(node as AstNode);
}

function isNode(value: unknown): value is Contained {
  return typeof value === 'object' && value !== null && typeof (value as AstNode).$type === 'string';
}
