import type { Connection } from 'vscode-languageserver';
import { explainCheck } from '../checks/explanation.ts';
import { type ExplanationQuestion, serverRequests } from './protocol.ts';

/** Answers what a check means, for an editor that follows the link on a finding. */
export function addExplanationHandler(connection: Connection): void {
  connection.onRequest(
    serverRequests.explanation,
    ({ check }: ExplanationQuestion): string | null => explainCheck(check) ?? null,
  );
}
