/**
 * An extension for measurements: it writes down, in the extension host, how long each change of a plan waits for the
 * finding that it makes. Packed by itself, so that what is measured stays as it ships.
 */
import { execFile } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { promisify } from 'node:util';

/** What the probe wrote down, in milliseconds. */
export interface Recording {
  /** For each kind of edit, from a change to the finding that it makes or takes away. */
  readonly waits: Record<string, number[]>;
  /** Changes after which the next one came before their finding. */
  readonly overtaken: number;
  /** How late a timer of 10 ms was: so long the host did something else. */
  readonly late: number[];
}

/** A kind of edit: the line that it is made in, what of the line is told by a finding, and when nothing is. */
export interface Edit {
  readonly name: string;
  readonly line: number;
  /** Its first group is what the finding repeats. */
  readonly written: string;
  readonly told: string;
  /** As it was: no finding. */
  readonly calm: string;
}

/** Runs in the extension host. */
function probe(edits: readonly Edit[], target: string, languageId: string): string {
  return `const vscode = require('vscode');
const fs = require('node:fs');
const edits = ${JSON.stringify(edits)};
const recording = { waits: Object.fromEntries(edits.map(({ name }) => [name, []])), overtaken: 0, late: [] };
let pending;
function toldOf(edit, uri) {
  const words = vscode.languages.getDiagnostics(uri)
    .filter((one) => one.range.start.line === edit.line)
    .map((one) => one.message).join(' ');
  return new RegExp(edit.told).exec(words)?.[1];
}
function poll() {
  if (!pending) return;
  const { edit, uri, wanted, began } = pending;
  if (toldOf(edit, uri) === wanted) {
    recording.waits[edit.name].push(performance.now() - began);
    pending = undefined;
  } else setTimeout(poll, 1);
}
exports.activate = (context) => {
  let last = performance.now();
  const beat = setInterval(() => {
    const now = performance.now();
    recording.late.push(Math.max(0, now - last - 10));
    last = now;
  }, 10);
  const save = setInterval(() => fs.writeFileSync(${JSON.stringify(target)}, JSON.stringify(recording)), 500);
  context.subscriptions.push(
    { dispose: () => { clearInterval(beat); clearInterval(save); } },
    vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      const began = performance.now();
      const line = contentChanges[0]?.range.start.line;
      const edit = document.languageId === ${JSON.stringify(languageId)} && edits.find((one) => one.line === line);
      if (!edit) return;
      const written = new RegExp(edit.written).exec(document.lineAt(line).text)?.[1];
      if (pending) recording.overtaken++;
      const wasPending = pending !== undefined;
      pending = { edit, uri: document.uri, wanted: written === edit.calm ? undefined : written, began };
      if (!wasPending) poll();
    }),
  );
};
`;
}

/** Packs the probe. @returns the path of the package */
export async function packageProbe(
  folder: string,
  edits: readonly Edit[],
  target: string,
  root: string,
): Promise<string> {
  const source = path.join(folder, 'probe');
  mkdirSync(source);
  const manifest = {
    name: 'feedplot-probe',
    displayName: 'Feedplot probe',
    description: 'Measures.',
    publisher: 'feedplot-bench',
    version: '0.0.1',
    license: 'MIT',
    engines: { vscode: '^1.91.0' },
    main: './probe.js',
    activationEvents: ['onLanguage:feedplot'],
  };
  writeFileSync(path.join(source, 'package.json'), JSON.stringify(manifest));
  writeFileSync(path.join(source, 'README.md'), '# Feedplot probe\n');
  writeFileSync(path.join(source, 'LICENSE'), 'MIT\n');
  writeFileSync(path.join(source, 'probe.js'), probe(edits, target, 'feedplot'));
  const file = path.join(folder, 'probe.vsix');
  const vsce = path.join(root, 'node_modules/@vscode/vsce/vsce');
  await promisify(execFile)(
    process.execPath,
    [vsce, 'package', '--no-dependencies', '--allow-missing-repository', '--out', file],
    { cwd: source },
  );
  return file;
}
