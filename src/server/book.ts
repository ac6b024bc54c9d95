import { URI } from 'langium';
import type { CancellationToken, Connection } from 'vscode-languageserver';
import { checkPlan } from '../checks/findings.ts';
import { makingBook } from '../documents/book/book.ts';
import { type Book, type BookQuestion, serverRequests } from './protocol.ts';
import type { FeedplotSharedServices } from './services.ts';

/** So long may one step of the work keep other requests waiting. */
const STEP_MS = 20;

/**
 * Answers the papers of a plan, its drawings not laid out yet. The work is done on the analysis as it was when it was
 * asked for, in short steps between which every other request is answered.
 */
export function addBookHandler(connection: Connection, services: FeedplotSharedServices): void {
  connection.onRequest(
    serverRequests.book,
    async ({ uri }: BookQuestion, token: CancellationToken): Promise<Book | null> => {
      const document = services.workspace.LangiumDocuments.getDocument(URI.parse(uri));
      const plan = document && services.plans.Plans.of(document);
      if (!plan) return null;
      const { analysis, assembled } = plan;
      const checked = { analysis, ...checkPlan(analysis, assembled.unreadables) };
      const steps = makingBook(checked);
      let rested_ms = performance.now();
      for (;;) {
        const step = steps.next();
        if (step.done) return { plan: plan.uri, parts: step.value };
        if (performance.now() - rested_ms < STEP_MS) continue;
        await new Promise((resolve) => setTimeout(resolve, 0));
        if (token.isCancellationRequested) return null;
        rested_ms = performance.now();
      }
    },
  );
}
