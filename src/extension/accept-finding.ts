import { Position, Uri, WorkspaceEdit, window, workspace } from 'vscode';
import type { ReasonWanted } from '../server/protocol.ts';

/** Asks why a finding is accepted, and writes the line that says so. Without a reason nothing is written. */
export async function acceptFinding({ uri, position, before, after, message }: ReasonWanted): Promise<void> {
  const reason = await window.showInputBox({
    title: 'Accept this finding',
    prompt: message,
    placeHolder: 'Why the crew can live with it; it is printed in the book',
    validateInput: (text) =>
      text.includes('"') ? 'The reason stands in quotes: use none inside it.' : undefined,
  });
  if (!reason?.trim()) return;
  const edit = new WorkspaceEdit();
  edit.insert(
    Uri.parse(uri),
    new Position(position.line, position.character),
    `${before}${reason.trim()}${after}`,
  );
  await workspace.applyEdit(edit);
}
