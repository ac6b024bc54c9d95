import {
  type AstNode,
  type AstNodeDescription,
  AstUtils,
  DefaultScopeProvider,
  type LangiumCoreServices,
  type ReferenceInfo,
  type Scope,
  type Stream,
  stream,
} from 'langium';
import { allSpaces, FileNames, type Space } from './file-names.ts';
import type { Kit, Node, SubjectEnd } from './generated/ast.ts';
import { type FileTree, treeOf } from './incremental/file-tree.ts';
import { findFamily, findPort, portNames, portsOf } from './ports.ts';
import type { Visibility } from './visibility.ts';

/** For each type that a reference can ask for: where it is looked up, and which statements it takes. */
const lookups: Record<string, { spaces: readonly Space[]; types?: readonly string[] }> = {
  Place: { spaces: ['place'] },
  Kit: { spaces: ['kit'] },
  Cable: { spaces: ['cable'] },
  Interface: { spaces: ['interface'] },
  Segment: { spaces: ['segment'] },
  Thing: { spaces: ['thing'] },
  Named: { spaces: allSpaces },
  Target: { spaces: ['thing'], types: ['Destination', 'Node'] },
  Node: { spaces: ['thing'], types: ['Node'] },
  Source: { spaces: ['thing'], types: ['Source'] },
  Link: { spaces: ['thing'], types: ['Link'] },
  Circuit: { spaces: ['thing'], types: ['Circuit'] },
  Uplink: { spaces: ['thing'], types: ['Uplink'] },
};

/** Looks names up file by file, in the order of the plan's files. */
export class NameScope extends DefaultScopeProvider {
  readonly #visibility: Visibility;
  readonly #names = new WeakMap<FileTree, FileNames>();

  constructor(services: LangiumCoreServices, visibility: Visibility) {
    super(services);
    this.#visibility = visibility;
  }

  /** What a reference leads to; the first declaration wins. */
  find(context: ReferenceInfo, name: string): AstNode | undefined {
    if (isPortReference(context)) return this.#findPort(context, name);
    const lookup = this.#lookup(context);
    for (const tree of this.#visible(context)) {
      const names = this.#namesOf(tree);
      for (const space of lookup.spaces) {
        const node = names.find(space, name);
        if (node && (!lookup.types || lookup.types.includes(node.$type))) return node;
      }
    }
    return undefined;
  }

  override getScope(context: ReferenceInfo): Scope {
    const describe = (node: AstNode, name: string) => this.descriptions.createDescription(node, name);
    const getElement = (name: string) => {
      const node = this.find(context, name);
      return node && describe(node, name);
    };
    return {
      getElement,
      getElements: (name) =>
        stream([getElement(name)].filter((d): d is AstNodeDescription => d !== undefined)),
      getAllElements: () =>
        stream(this.#candidates(context)).map(([name, node]) =>
          describe(node, name),
        ) as Stream<AstNodeDescription>,
    };
  }

  #candidates(context: ReferenceInfo): [string, AstNode][] {
    if (isPortReference(context)) {
      const kit = kitOf(context.container);
      return kit
        ? portsOf(kit).flatMap((port) => portNames(port).map((name): [string, AstNode] => [name, port]))
        : [];
    }
    const lookup = this.#lookup(context);
    const found = new Map<string, AstNode>();
    for (const tree of this.#visible(context)) {
      const names = this.#namesOf(tree);
      for (const space of lookup.spaces) {
        for (const [name, node] of names.all(space)) {
          if (!found.has(name) && (!lookup.types || lookup.types.includes(node.$type))) found.set(name, node);
        }
      }
    }
    return [...found];
  }

  #findPort(context: ReferenceInfo, name: string): AstNode | undefined {
    const kit = kitOf(context.container);
    if (!kit) return undefined;
    const family =
      context.container.$type === 'PortUse' &&
      'low' in context.container &&
      context.container.low !== undefined;
    return family ? findFamily(kit, name) : findPort(kit, name);
  }

  /** `desk <-> platform` names places, even where a node has the same name. */
  #lookup(context: ReferenceInfo): { spaces: readonly Space[]; types?: readonly string[] } {
    const type = this.reflection.getReferenceType(context);
    if (type === 'Named' && context.container.$type === 'SubjectEnd') {
      const end = context.container as SubjectEnd;
      const subject = end.$container;
      if (subject?.arrow === '<->' && !subject.first?.port && !subject.second?.port) return lookups.Place!;
      if (subject?.arrow || end.port) return lookups.Thing!;
    }
    return lookups[type] ?? { spaces: [] };
  }

  #visible(context: ReferenceInfo): readonly FileTree[] {
    return this.#visibility.of(AstUtils.getDocument(context.container)).flatMap((d) => treeOf(d) ?? []);
  }

  #namesOf(tree: FileTree): FileNames {
    let names = this.#names.get(tree);
    if (!names) {
      names = new FileNames(tree);
      this.#names.set(tree, names);
    }
    return names;
  }
}

function isPortReference(context: ReferenceInfo): boolean {
  return context.property === 'port';
}

/** The kit whose ports can be named in this place. */
function kitOf(container: AstNode): Kit | undefined {
  if (container.$type === 'PortUse')
    return AstUtils.getContainerOfType(container, (n): n is Kit => n.$type === 'Kit');
  if (container.$type === 'PortLabel' || container.$type === 'PortFormat') {
    return (container.$container as Node).kits[0]?.ref;
  }
  const { node, thing } = container as { node?: { ref?: AstNode }; thing?: { ref?: AstNode } };
  const named = (node ?? thing)?.ref;
  return named?.$type === 'Node' ? (named as Node).kits[0]?.ref : undefined;
}
