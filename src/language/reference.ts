import {
  type AstNode,
  type AstNodeDescription,
  AstUtils,
  type CstNode,
  DefaultLinker,
  type LangiumCoreServices,
  type LangiumDocument,
  type LinkingError,
  type Reference,
} from 'langium';
import type { NameScope } from './scope.ts';

/** Counts what could change the meaning of a name: every document that comes, goes or is read anew. */
export class Revision {
  current = 0;
}

/**
 * A reference that is looked up when somebody asks, and remembers the answer until a document changes. The analysis
 * works on names as text, so nothing is linked on a keystroke.
 */
class NameReference {
  private readAt = -1;
  private target: AstNode | undefined = undefined;
  readonly #linker: FeedplotLinker;
  readonly #node: AstNode;
  readonly #property: string;
  readonly $refNode: CstNode | undefined;
  readonly $refText: string;

  constructor(
    linker: FeedplotLinker,
    node: AstNode,
    property: string,
    refNode: CstNode | undefined,
    refText: string,
  ) {
    this.#linker = linker;
    this.#node = node;
    this.#property = property;
    this.$refNode = refNode;
    this.$refText = refText;
  }

  /** Itself: Langium's interface has optional properties that may not be undefined, which a getter cannot promise. */
  asReference(): Reference {
    return this as unknown as Reference;
  }

  get ref(): AstNode | undefined {
    if (this.readAt !== this.#linker.revision.current) {
      this.readAt = this.#linker.revision.current;
      this.target = this.#linker.find(this.asReference(), this.#node, this.#property);
    }
    return this.target;
  }

  get error(): LinkingError | undefined {
    if (this.ref) return undefined;
    return {
      info: { reference: this.asReference(), container: this.#node, property: this.#property },
      message: `Nothing here is named \`${this.$refText}\`.`,
    };
  }

  get $nodeDescription(): AstNodeDescription | undefined {
    const target = this.ref;
    return target && this.#linker.describe(target, this.$refText);
  }
}

/** Links on demand only; what has no target is told by a check on the plan, not by the linker. */
export class FeedplotLinker extends DefaultLinker {
  readonly revision: Revision;
  readonly #descriptions: () => { createDescription(node: AstNode, name: string): AstNodeDescription };

  constructor(services: LangiumCoreServices, revision: Revision) {
    super(services);
    this.revision = revision;
    this.#descriptions = () => services.workspace.AstNodeDescriptionProvider;
  }

  override buildReference(
    node: AstNode,
    property: string,
    refNode: CstNode | undefined,
    refText: string,
  ): Reference {
    return new NameReference(this, node, property, refNode, refText).asReference();
  }

  find(reference: Reference, container: AstNode, property: string): AstNode | undefined {
    const document = AstUtils.findRootNode(container).$document;
    if (!document) return undefined;
    return (this.scopeProvider as NameScope).find({ reference, container, property }, reference.$refText);
  }

  describe(node: AstNode, name: string): AstNodeDescription {
    return this.#descriptions().createDescription(node, name);
  }

  override async link(_document: LangiumDocument): Promise<void> {}

  override unlink(_document: LangiumDocument): void {}
}
