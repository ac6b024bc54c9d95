import { URI } from 'langium';
import type { CancellationToken, Connection } from 'vscode-languageserver';
import { failing } from '../analysis/failures.ts';
import { checking } from '../checks/findings.ts';
import { type BookParts, makingBook } from '../documents/book/book.ts';
import { inSteps } from './in-steps.ts';
import type { CurrentPlan } from './plans.ts';
import { type Book, type BookQuestion, serverRequests } from './protocol.ts';
import type { FeedplotSharedServices } from './services.ts';

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
      const parts = await services.plans.Plans.holding(plan.analysis, () =>
        inSteps(makingPapers(plan), token),
      );
      return { plan: plan.uri, parts };
    },
  );
}

function* makingPapers({ analysis, assembled }: CurrentPlan): Generator<undefined, BookParts> {
  yield* failing(analysis);
  const checked = yield* checking(analysis, assembled.unreadables);
  return yield* makingBook({ analysis, ...checked });
}
