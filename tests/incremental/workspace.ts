/** A server without an editor: its files lie in memory, its findings are kept, and everything can be looked at. */
import { AstUtils, type LangiumDocument, URI } from 'langium';
import type { Connection, PublishDiagnosticsParams } from 'vscode-languageserver';
import type { TextRange } from '../../src/plan/plan.ts';
import { OpenText } from '../../src/server/open-text.ts';
import { createServerServices } from '../../src/server/services.ts';
import { dumpAnalysis } from '../support/analysis-dump.ts';
import { dumpTree, path, type Seen } from './dump.ts';
import type { RandomEdit } from './edits.ts';
import { MemoryFiles } from './memory-files.ts';

const folder = 'file:///show';

export class Workspace {
  readonly disk = new MemoryFiles();
  /** What each file was told last. */
  readonly findings = new Map<string, PublishDiagnosticsParams>();
  readonly services: ReturnType<typeof createServerServices>;
  #version = 1;

  constructor() {
    const sendDiagnostics = async (params: PublishDiagnosticsParams) => {
      this.findings.set(params.uri, params);
    };
    this.services = createServerServices({
      connection: { sendDiagnostics } as unknown as Connection,
      libraryFolder: 'file:///library',
      fileSystemProvider: () => this.disk,
    });
  }

  uri(name: string): URI {
    return URI.parse(`${folder}/${name}`);
  }

  async start(): Promise<void> {
    const { WorkspaceManager } = this.services.shared.workspace;
    const folders = [{ uri: folder, name: 'show' }];
    WorkspaceManager.initialize({ workspaceFolders: folders } as never);
    await WorkspaceManager.initializeWorkspace(folders);
  }

  /** Files come, go or change on disk. */
  async change(files: Iterable<readonly [string, string | undefined]>): Promise<void> {
    const changed: URI[] = [];
    const deleted: URI[] = [];
    for (const [name, text] of files) {
      const uri = this.uri(name);
      if (text === undefined) this.disk.files.delete(uri.toString());
      else this.disk.files.set(uri.toString(), text);
      (text === undefined ? deleted : changed).push(uri);
    }
    await this.#update(changed, deleted);
  }

  async open(name: string, text: string): Promise<void> {
    const uri = this.uri(name);
    this.services.shared.workspace.TextDocuments.set(
      new OpenText(uri.toString(), 'feedplot', this.#version++, text),
    );
    await this.#update([uri], []);
  }

  /** Closes without saving. */
  async close(name: string): Promise<void> {
    const uri = this.uri(name);
    this.services.shared.workspace.TextDocuments.delete(uri);
    await this.#update([uri], []);
  }

  /** Types, all edits in one notification, each on the text that the one before has left. */
  async type(name: string, edits: readonly Omit<RandomEdit, 'kind'>[]): Promise<void> {
    const open = this.openText(name)!;
    for (const { start, end, text } of edits) {
      const range = { start: open.positionAt(start), end: open.positionAt(end) };
      open.update([{ range, text }], this.#version);
    }
    this.#version++;
    await this.#update([this.uri(name)], []);
  }

  openText(name: string): OpenText | undefined {
    return this.services.shared.workspace.TextDocuments.get(this.uri(name)) as OpenText | undefined;
  }

  /** What the files are: as the editor has them, else as they lie on disk. */
  texts(): Map<string, string> {
    const texts = new Map(this.disk.files);
    for (const open of this.services.shared.workspace.TextDocuments.all())
      texts.set(open.uri, open.getText());
    return texts;
  }

  document(uri: string): LangiumDocument | undefined {
    return this.services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri));
  }

  /** Syntax trees, what names lead to, facts, findings, and hovers at some places. */
  async lookAt(places: readonly Place[]): Promise<Seen[]> {
    const out: Seen[] = [];
    const { Plans } = this.services.shared.plans;
    for (const uri of [...this.texts().keys()].sort()) {
      const document = this.document(uri);
      out.push('file', uri, document ? 'is read' : 'is not read');
      if (!document) continue;
      dumpTree(document.parseResult, out);
      dumpTargets(document, out);
      const { statements, unreadables, imports, hasPlan } = Plans.read(document);
      for (const { fact, label, description, faults, source } of statements) {
        out.push('fact', JSON.stringify(fact), label, description, JSON.stringify(faults));
        dumpPlace(source.range(), out);
        for (const { part } of faults) dumpPlace(source.range(part), out);
      }
      out.push('head', hasPlan, ...imports.map(({ fact }) => fact.path));
      for (const { message, range } of unreadables) {
        out.push('unreadable', message);
        dumpPlace(range, out);
      }
      for (const diagnostic of this.findings.get(uri)?.diagnostics ?? [])
        out.push('finding', JSON.stringify(diagnostic));
    }
    for (const [uri, { analysis }] of Plans.all())
      out.push(...dumpAnalysis(analysis).map((line) => `figures of ${uri}: ${line}`));
    for (const [uri, { diagnostics }] of this.findings)
      if (!this.texts().has(uri) && diagnostics.length > 0) out.push('findings for what is gone', uri);
    for (const { uri, offset } of places) {
      const document = this.document(uri);
      const position = document?.textDocument.positionAt(offset);
      const hover =
        document &&
        position &&
        (await this.services.Feedplot.lsp.HoverProvider!.getHoverContent(document, {
          textDocument: { uri },
          position,
        }));
      out.push('hover', uri, offset, JSON.stringify(hover ?? null));
    }
    return out;
  }

  async #update(changed: URI[], deleted: URI[]): Promise<void> {
    await this.services.shared.workspace.DocumentBuilder.update(changed, deleted);
    this.services.shared.plans.Plans.finish();
  }
}

export interface Place {
  readonly uri: string;
  readonly offset: number;
}

function dumpTargets(document: LangiumDocument, out: Seen[]): void {
  for (const node of AstUtils.streamAst(document.parseResult.value)) {
    for (const { reference, property } of AstUtils.streamReferences(node)) {
      const { ref } = reference as { ref?: Parameters<typeof path>[0] };
      const file = ref ? AstUtils.getDocument(ref).uri.toString() : '';
      out.push(property, reference.$refText, file, path(ref));
    }
  }
}

function dumpPlace({ line, column, endLine, endColumn }: TextRange, out: Seen[]): void {
  out.push(line, column, endLine, endColumn);
}
