import {
  type AstNode,
  type AstNodeDescription,
  AstUtils,
  DefaultScopeProvider,
  type LangiumCoreServices,
  type LangiumDocument,
  type ReferenceInfo,
  type Scope,
  type Stream,
  stream,
} from 'langium';
import type { Kit, Node, PlanFile, Statement, SubjectEnd } from './generated/ast.ts';
import { findFamily, findPort, portNames, portsOf } from './ports.ts';
import type { Visibility } from './visibility.ts';

/** The spaces in which a name stands for one thing. */
type Space = 'thing' | 'place' | 'kit' | 'cable' | 'interface' | 'segment' | 'case';

const spaceOf: Partial<Record<Statement['$type'], Space>> = {
  Node: 'thing',
  Source: 'thing',
  Destination: 'thing',
  Link: 'thing',
  Circuit: 'thing',
  Uplink: 'thing',
  Place: 'place',
  Kit: 'kit',
  Cable: 'cable',
  Interface: 'interface',
  Segment: 'segment',
  Case: 'case',
};

const allSpaces = [...new Set(Object.values(spaceOf))] as Space[];

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

type Names = Map<Space, Map<string, AstNode>>;

/** Looks names up in maps, one per file and space, in the order of the plan's files. */
export class NameScope extends DefaultScopeProvider {
  readonly #visibility: Visibility;
  readonly #names = new WeakMap<PlanFile, Names>();

  constructor(services: LangiumCoreServices, visibility: Visibility) {
    super(services);
    this.#visibility = visibility;
  }

  /** What a reference leads to; the first declaration wins. */
  find(context: ReferenceInfo, name: string): AstNode | undefined {
    if (isPortReference(context)) return this.#findPort(context, name);
    const lookup = this.#lookup(context);
    for (const document of this.#visible(context)) {
      const names = this.#namesOf(document);
      for (const space of lookup.spaces) {
        const node = names.get(space)?.get(name);
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
    for (const document of this.#visible(context)) {
      const names = this.#namesOf(document);
      for (const space of lookup.spaces) {
        for (const [name, node] of names.get(space) ?? []) {
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

  #visible(context: ReferenceInfo): readonly LangiumDocument<PlanFile>[] {
    return this.#visibility.of(AstUtils.getDocument(context.container));
  }

  #namesOf(document: LangiumDocument<PlanFile>): Names {
    const root = document.parseResult.value;
    let names = this.#names.get(root);
    if (!names) {
      names = new Map(allSpaces.map((space) => [space, new Map<string, AstNode>()]));
      for (const statement of root.statements) {
        const space = spaceOf[statement.$type];
        if (!space || !('name' in statement) || !statement.name) continue;
        const inSpace = names.get(space)!;
        if (!inSpace.has(statement.name)) inSpace.set(statement.name, statement);
      }
      this.#names.set(root, names);
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
