/** A server that does nothing but say so: what the way there and back costs. */
import { createConnection, ProposedFeatures, TextDocumentSyncKind } from 'vscode-languageserver/node';

const connection = createConnection(ProposedFeatures.all, process.stdin, process.stdout);
connection.onInitialize(() => ({ capabilities: { textDocumentSync: TextDocumentSyncKind.Incremental } }));
connection.onDidOpenTextDocument(({ textDocument: { uri, version } }) => {
  void connection.sendDiagnostics({ uri, version, diagnostics: [] });
});
connection.onDidChangeTextDocument(({ textDocument: { uri, version } }) => {
  void connection.sendDiagnostics({ uri, version, diagnostics: [] });
});
connection.listen();
