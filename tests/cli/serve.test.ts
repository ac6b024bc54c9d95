import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { machinesNode, root } from './command-line.ts';

/** Sends messages to the server and gathers its answers until all requests are answered and it has ended. */
async function talk(
  node: string,
  args: readonly string[],
  messages: readonly object[],
): Promise<Record<string, unknown>[]> {
  const server = spawn(node, [join(root, 'dist/feedplot.cjs'), 'serve', ...args]);
  const chunks: Buffer[] = [];
  server.stdout.on('data', (chunk: Buffer) => chunks.push(chunk));
  for (const message of messages) {
    const body = JSON.stringify({ jsonrpc: '2.0', ...message });
    server.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  }
  await new Promise((resolve) => server.on('exit', resolve));
  const text = Buffer.concat(chunks).toString();
  return [...text.matchAll(/Content-Length: \d+\r\n\r\n(\{.*?\})(?=Content-Length|$)/gs)].map(([, body]) =>
    JSON.parse(body!),
  );
}

const conversation = [
  { id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } },
  { method: 'initialized', params: {} },
  {
    method: 'textDocument/didOpen',
    params: {
      textDocument: {
        uri: 'file:///show.feedplot',
        languageId: 'feedplot',
        version: 1,
        text: 'plan "Show" {\n  rate 5 W\n}\n',
      },
    },
  },
  {
    id: 2,
    method: 'textDocument/documentSymbol',
    params: { textDocument: { uri: 'file:///show.feedplot' } },
  },
  { id: 3, method: 'shutdown' },
  { method: 'exit' },
];

const nodes = [...new Set([process.execPath, machinesNode() ?? process.execPath])];

test.each(
  nodes.flatMap(
    (node) =>
      [
        [node, []],
        [node, ['--stdio']],
      ] as const,
  ),
)('the server answers over the standard streams (%s %j)', async (node, args) => {
  const answers = await talk(node, args, conversation);
  const first = answers.find(({ id }) => id === 1);
  expect(first?.result).toHaveProperty('capabilities.hoverProvider');
  const findings = answers.find(({ method }) => method === 'textDocument/publishDiagnostics');
  expect(JSON.stringify(findings)).toContain('wrong-dimension');
});
