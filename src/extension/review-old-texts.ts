import { type Disposable, Uri, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { reviewRequests, type TextThenQuestion } from '../server/protocol/review.ts';

const SCHEME = 'feedplot-before';

/**
 * The address under which the editor opens a text of a commit, which nobody can write to. Its ending is that of a
 * language of its own, with the same colours: the server takes it for no plan of the workspace.
 */
export function oldTextUri(uri: string, revision: string): Uri {
  const question: TextThenQuestion = { uri, revision };
  return Uri.from({ scheme: SCHEME, path: `${Uri.parse(uri).path}-before`, query: JSON.stringify(question) });
}

/** Texts as they stood at a commit, read by the server. */
export function addOldTexts(client: BaseLanguageClient): Disposable {
  return workspace.registerTextDocumentContentProvider(SCHEME, {
    provideTextDocumentContent: async ({ query }) => {
      const question = JSON.parse(query) as TextThenQuestion;
      const text = await client.sendRequest<string | null>(reviewRequests.textThen, question);
      return text ?? '// This file was not there.\n';
    },
  });
}
