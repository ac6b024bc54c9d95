import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { machinesNode, root } from './command-line.ts';

const show = { uri: 'file:///show.feedplot', languageId: 'feedplot', version: 1 };

const greeting = [
  { id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } },
  { method: 'initialized', params: {} },
  {
    method: 'textDocument/didOpen',
    params: { textDocument: { ...show, text: 'plan "Show" {\n  rate 5 W\n}\n' } },
  },
];
const farewell = [{ id: 2, method: 'shutdown' }, { method: 'exit' }];

/** Opens a plan, waits for its findings, and ends. @returns all that the server said, and its exit code. */
async function converse(
  node: string,
  args: readonly string[],
): Promise<{ said: string; code: number | null }> {
  const server = spawn(node, [join(root, 'dist/feedplot.cjs'), 'serve', ...args]);
  const send = (messages: readonly object[]) => {
    for (const message of messages) {
      const body = JSON.stringify({ jsonrpc: '2.0', ...message });
      server.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
    }
  };
  let said = '';
  let leaving = false;
  server.stdout.setEncoding('utf8').on('data', (text: string) => {
    said += text;
    if (leaving || !said.includes('wrong-dimension')) return;
    leaving = true;
    send(farewell);
  });
  send(greeting);
  const code = await new Promise<number | null>((resolve) => server.on('exit', resolve));
  return { said, code };
}

const nodes = [...new Set([process.execPath, machinesNode() ?? process.execPath])];

test.each(
  nodes.flatMap((node): [string, string[]][] => [
    [node, []],
    [node, ['--stdio']],
  ]),
)('the server answers over the standard streams (%s %j)', async (node, args) => {
  const { said, code } = await converse(node, args);
  expect(code).toBe(0);
  expect(said).toMatch(/^Content-Length: /);
  expect(said).toContain('"hoverProvider":true');
  expect(said).toMatch(/"method":"textDocument\/publishDiagnostics".*wrong-dimension/s);
});
