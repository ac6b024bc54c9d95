import { type Disposable, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { EXPLANATION_SCHEME, type ExplanationQuestion, serverRequests } from '../server/protocol.ts';

/** What a check means: the page that the link on a finding leads to. The editor shows it set, not as Markdown. */
export function addExplanations(client: BaseLanguageClient): Disposable {
  return workspace.registerTextDocumentContentProvider(EXPLANATION_SCHEME, {
    provideTextDocumentContent: async ({ path }) => {
      const question: ExplanationQuestion = { check: path.replace(/^\/|\.md$/g, '') };
      const text = await client.sendRequest<string | null>(serverRequests.explanation, question);
      return text ?? 'Nothing more is told of this finding.\n';
    },
  });
}
