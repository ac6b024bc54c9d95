import {
  type AstNode,
  type CstNode,
  CstUtils,
  DefaultReferences,
  type FindReferencesOptions,
  type LangiumDocument,
  type ReferenceDescription,
  type Stream,
  stream,
} from 'langium';
import type { Port } from '../language/generated/ast.ts';
import type { FeedplotLspServices } from './services.ts';

/**
 * Uses of a name, found by looking for its text and asking each hit what it stands for. Nothing is kept between two
 * questions, so nothing can go stale, and a keystroke pays nothing for it.
 */
export class PlanReferences extends DefaultReferences {
  override findReferences(target: AstNode, options: FindReferencesOptions): Stream<ReferenceDescription> {
    const found: ReferenceDescription[] = options.includeDeclaration ? this.getSelfReferences(target) : [];
    const text = textOf(target);
    if (text === undefined) return stream(found);
    for (const document of this.documents.all) {
      if (options.documentUri && options.documentUri.toString() !== document.uri.toString()) continue;
      for (const leaf of leavesSpelled(document, text, isNumbered(target))) {
        if (isDeclaration(leaf.astNode, leaf, this) || this.findDeclarations(leaf)[0] !== target) continue;
        found.push({
          sourceUri: document.uri,
          sourcePath: '',
          targetUri: document.uri,
          targetPath: '',
          segment: CstUtils.toDocumentSegment(leaf),
          local: true,
        });
      }
    }
    return stream(found);
  }

  /** The name that a node of the syntax tree is declared by. */
  declaredName(node: AstNode): CstNode | undefined {
    return this.nameProvider.getNameNode(node);
  }
}

export function planReferences(services: FeedplotLspServices): PlanReferences {
  return services.references.References as PlanReferences;
}

function isDeclaration(node: AstNode, leaf: CstNode, references: PlanReferences): boolean {
  return references.declaredName(node) === leaf;
}

/** The name of what is declared, or, for `in[1..4]`, what its ports' names begin with. */
function textOf(target: AstNode): string | undefined {
  return (target as { name?: string }).name;
}

function isNumbered(target: AstNode): boolean {
  return target.$type === 'Port' && (target as Port).low !== undefined;
}

/** The words of a document that are spelled like this, with a number behind if so wanted. */
function* leavesSpelled(document: LangiumDocument, text: string, numbered: boolean) {
  const root = document.parseResult.value.$cstNode;
  if (!root) return;
  const whole = document.textDocument.getText();
  for (let at = whole.indexOf(text); at >= 0; at = whole.indexOf(text, at + text.length)) {
    if (at > 0 && continuesName.test(whole.slice(at - 1, at))) continue;
    const leaf = CstUtils.findLeafNodeAtOffset(root, at);
    if (!leaf || leaf.hidden || leaf.offset !== at) continue;
    const rest = leaf.text.slice(text.length);
    if (rest === '' || (numbered && /^(0|[1-9]\d*)$/.test(rest))) yield leaf;
  }
}

const continuesName = /[\p{L}\p{N}_]/u;
