import { Range, Selection, type Uri, ViewColumn, window } from 'vscode';
import type { TextSpan } from '../server/protocol.ts';

/** Shows a place beside the view that it was asked from. */
export async function showPlace(uri: Uri, { start, end }: TextSpan): Promise<void> {
  const range = new Range(start.line, start.character, end.line, end.character);
  const shown =
    window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString()) ??
    window.visibleTextEditors.find(({ document }) => document.languageId === 'feedplot');
  const editor = await window.showTextDocument(uri, {
    viewColumn: shown?.viewColumn ?? ViewColumn.One,
    preserveFocus: true,
    selection: range,
  });
  editor.selection = new Selection(range.start, range.end);
}
