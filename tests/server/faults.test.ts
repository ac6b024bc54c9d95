/** A fault of the tool is told once and ends nothing: the next request is answered. */
import { PassThrough } from 'node:stream';
import { afterEach, expect, test } from 'vitest';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import {
  createProtocolConnection,
  type Diagnostic,
  type Hover,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';
import { planChecks } from '../../src/checks/catalogue.ts';
import type { Check } from '../../src/checks/check.ts';
import { Faults } from '../../src/server/faults.ts';
import { createServerServices } from '../../src/server/services.ts';
import { startServer } from '../../src/server/start.ts';
import { MemoryFiles } from '../incremental/memory-files.ts';

const uri = 'file:///show/show.feedplot';
const clients: ProtocolConnection[] = [];

afterEach(() => {
  for (const client of clients.splice(0)) client.dispose();
});

/** A server in this process, whose parts can be broken, and an editor that speaks with it. */
async function start() {
  const [up, down] = [new PassThrough(), new PassThrough()];
  const connection = createConnection(
    ProposedFeatures.all,
    new StreamMessageReader(up),
    new StreamMessageWriter(down),
  );
  const services = createServerServices({
    connection,
    libraryFolder: 'file:///library',
    fileSystemProvider: () => new MemoryFiles(),
  });
  startServer(services.shared);
  const client = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  clients.push(client);
  const log: string[] = [];
  const waiting = new Map<number, (diagnostics: Diagnostic[]) => void>();
  client.onNotification('window/logMessage', ({ message }: { message: string }) => {
    log.push(message);
  });
  client.onNotification(
    'textDocument/publishDiagnostics',
    ({ version, diagnostics }: PublishDiagnosticsParams) => waiting.get(version ?? 0)?.(diagnostics),
  );
  client.listen();
  const folders = [{ uri: 'file:///show', name: 'show' }];
  await client.sendRequest('initialize', {
    processId: null,
    rootUri: null,
    workspaceFolders: folders,
    capabilities: {},
  });
  await client.sendNotification('initialized', {});
  let version = 0;
  const findings = (told: Promise<void>) =>
    new Promise<Diagnostic[]>((resolve) => {
      waiting.set(version, resolve);
      void told;
    });
  return {
    services,
    log,
    open: (text: string) => {
      version++;
      return findings(
        client.sendNotification('textDocument/didOpen', {
          textDocument: { uri, languageId: 'feedplot', version, text },
        }),
      );
    },
    change: (text: string) => {
      version++;
      return findings(
        client.sendNotification('textDocument/didChange', {
          textDocument: { uri, version },
          contentChanges: [{ text }],
        }),
      );
    },
    hover: (line: number, character: number) =>
      client.sendRequest<Hover | null>('textDocument/hover', {
        textDocument: { uri },
        position: { line, character },
      }),
  };
}

const codes = (diagnostics: Diagnostic[]) => diagnostics.map(({ code }) => code);

test('a request that fails is answered as a fault of the tool, logged once with what makes it happen again', async () => {
  const { services, log, open, hover } = await start();
  await open('plan "Test"\nplace desk "Desk"\n');
  const provider = services.Feedplot.lsp.HoverProvider!;
  const whole = provider.getHoverContent.bind(provider);
  provider.getHoverContent = (document, params, cancel) => {
    if (params.position.line === 0) throw new TypeError("Cannot read properties of undefined (reading 'x')");
    return whole(document, params, cancel);
  };
  await expect(hover(0, 1)).rejects.toThrow('That is a fault of the tool, not of the plan');
  await expect(hover(0, 1)).rejects.not.toThrow('undefined');
  const told = log.filter((line) => line.includes('onHover'));
  expect(told).toHaveLength(1);
  expect(told[0]).toContain("reading 'x'");
  expect(told[0]).toContain('"position":{"line":0,"character":1}');
  expect(await hover(1, 7)).not.toBeNull();
});

test('a plan that cannot be worked out says so, is logged with its text, and is worked out again after the next edit', async () => {
  const { services, log, open, change } = await start();
  const { Plans } = services.shared.plans;
  const read = Plans.read.bind(Plans);
  let broken = true;
  Plans.read = (document) => {
    const file = read(document);
    if (!broken || document.uri.toString() !== uri) return file;
    const statements = file.statements.map((statement) => ({
      ...statement,
      get fact(): never {
        throw new RangeError('out of reach');
      },
    }));
    return {
      ...file,
      uri,
      imports: [],
      hasPlan: true,
      unreadables: [],
      wording: 0,
      formerLabels: [],
      statements,
    };
  };
  const first = await open('plan "Test"\nplace desk "Desk"\n');
  expect(codes(first)).toContain('tool-fault');
  expect(first.map(({ message }) => message).join()).not.toContain('reach');
  const told = log.filter((line) => line.includes('working out a plan'));
  expect(told).toHaveLength(1);
  expect(told[0]).toContain('out of reach');
  expect(told[0]).toContain('plan \\"Test\\"\\nplace desk');
  broken = false;
  expect(codes(await change('plan "Test"\nplace desk "Desk"\nplace desk\n'))).toEqual(['duplicate-name']);
});

test('a check that fails is told as a fault of the tool, logged once with the plan, and the others go on', async () => {
  const { log, open, change } = await start();
  const broken: Check = {
    ...planChecks[0]!,
    name: 'broken-check',
    find: () => {
      throw new TypeError('not a function');
    },
  };
  (planChecks as Check[]).push(broken);
  try {
    const found = await open('plan "Test"\nplace desk "Desk"\nplace desk\n');
    expect(codes(found).sort()).toEqual(['duplicate-name', 'tool-fault']);
    const [fault] = found.filter(({ code }) => code === 'tool-fault');
    expect(fault!.message).toContain('This is a fault of Feedplot, not of the plan');
    expect(fault!.message).not.toContain('not a function');
    await change('plan "Test"\nplace desk "Desk"\nplace desk\nplace stage\n');
    const told = log.filter((line) => line.includes('broken-check'));
    expect(told).toHaveLength(1);
    expect(told[0]).toContain('not a function');
    expect(told[0]).toContain('place desk \\"Desk\\"');
  } finally {
    (planChecks as Check[]).pop();
  }
  expect(codes(await change('plan "Test"\nplace desk "Desk"\n'))).toEqual([]);
});

test('an edit that the reader cannot follow is read afresh', async () => {
  const { services, log, open, change } = await start();
  await open('plan "Test"\nplace desk "Desk"\n');
  const document = services.shared.workspace.LangiumDocuments.all.find((d) => d.uri.toString() === uri)!;
  const tree = document.parseResult as unknown as { apply: () => void };
  tree.apply = () => {
    throw new Error('half way');
  };
  expect(codes(await change('plan "Test"\nplace desk "Desk"\nplace desk\n'))).toEqual(['duplicate-name']);
  expect(log.filter((line) => line.includes('half way'))).toHaveLength(1);
  expect(codes(await change('plan "Test"\nplace desk "Desk"\n'))).toEqual([]);
});

test('a fault is written once, whatever was given', () => {
  const lines: string[] = [];
  const faults = new Faults({ console: { error: (line: string) => lines.push(line) } } as never);
  const circle: Record<string, unknown> = {};
  circle.self = circle;
  const error = new Error('same');
  faults.tell('doing', circle, error);
  faults.tell('doing', { other: 1 }, error);
  faults.tell('doing', {}, 'a string');
  expect(lines).toHaveLength(2);
});
