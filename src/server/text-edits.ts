import { type LangiumDocuments, URI } from 'langium';
import { TextEdit, type WorkspaceEdit } from 'vscode-languageserver';
import { changesOf } from '../checks/edits.ts';
import type { Edit } from '../checks/finding.ts';
import { rangeOf } from './publish.ts';

/** What a fix means for the texts as they are now; undefined when it does not fit them any more. */
export function workspaceEditOf(
  edits: readonly Edit[],
  documents: LangiumDocuments,
): WorkspaceEdit | undefined {
  const textOf = (file: string) => documents.getDocument(URI.parse(file))?.textDocument.getText() ?? '';
  const changes = changesOf(edits, textOf);
  if (!changes) return undefined;
  const byFile = new Map<string, TextEdit[]>();
  for (const { file, range, text } of changes) {
    const list = byFile.get(file) ?? [];
    list.push(TextEdit.replace(rangeOf(range), text));
    byFile.set(file, list);
  }
  return { changes: Object.fromEntries(byFile) };
}
