import { Cancellation, DefaultDocumentBuilder, DocumentState, type LangiumDocument, type URI } from 'langium';
import type { Revision } from '../language/reference.ts';
import type { FeedplotSharedServices } from './services.ts';

/** Reads changed files, and the files that they import, and tells everybody that names may mean something else now. */
export class PlanDocumentBuilder extends DefaultDocumentBuilder {
  readonly #services: FeedplotSharedServices;
  readonly #revision: () => Revision;

  constructor(services: FeedplotSharedServices, revision: () => Revision) {
    super(services);
    this.#services = services;
    this.#revision = revision;
    const changed = () => {
      this.#revision().current++;
    };
    this.onUpdate(changed);
    this.onBuildPhase(DocumentState.Parsed, changed);
  }

  override async update(
    changed: URI[],
    deleted: URI[],
    cancel = Cancellation.CancellationToken.None,
  ): Promise<void> {
    await super.update(changed, deleted, cancel);
    const imported = await this.#services.plans.Plans.loadImports();
    if (imported.length > 0) await super.update(imported, [], cancel);
    await this.#services.plans.Plans.publish();
  }

  override async build<T extends import('langium').AstNode>(
    documents: LangiumDocument<T>[],
    options: import('langium').BuildOptions = {},
    cancel = Cancellation.CancellationToken.None,
  ): Promise<void> {
    await super.build(documents, options, cancel);
    await this.#services.plans.Plans.publish();
  }

  protected override shouldRelink(): boolean {
    return false;
  }
}
