import type { TextDocument } from 'langium';
import type { TextDocumentContentChangeEvent, TextDocumentsConfiguration } from 'vscode-languageserver';
import { Position, Range } from 'vscode-languageserver-types';
import type { TextEdit } from '../language/incremental/edit.ts';
import { narrowed } from '../language/incremental/narrow.ts';
import { Text } from '../language/incremental/text.ts';
import { LineStarts } from './line-starts.ts';

/**
 * The text of a file that an editor has open. It remembers what was changed since somebody last took the changes, so
 * that only those places need be read again.
 */
export class OpenText implements TextDocument {
  readonly uri: string;
  readonly languageId: string;
  version: number;
  #text: Text;
  readonly #lines: LineStarts;
  #changes: TextEdit[] = [];

  constructor(uri: string, languageId: string, version: number, text: string) {
    this.uri = uri;
    this.languageId = languageId;
    this.version = version;
    this.#text = Text.of(text);
    this.#lines = new LineStarts(text);
  }

  /** The text as it is now; the object changes with it. */
  get text(): Text {
    return this.#text;
  }

  get lineCount(): number {
    return this.#lines.count;
  }

  getText(range?: Range): string {
    if (!range) return this.#text.toString();
    const [start, end] = this.#offsets(range);
    return this.#text.slice(start, end);
  }

  positionAt(offset: number): Position {
    const within = Math.max(0, Math.min(offset, this.#text.length));
    const line = this.#lines.lineAt(within);
    const start = this.#lines.startOf(line)!;
    return { line, character: this.#beforeBreak(within, start) - start };
  }

  offsetAt({ line, character }: Position): number {
    if (line < 0) return 0;
    const start = this.#lines.startOf(line);
    if (start === undefined) return this.#text.length;
    const next = this.#lines.startOf(line + 1) ?? this.#text.length;
    return this.#beforeBreak(Math.max(start, Math.min(start + character, next)), start);
  }

  getLineRange(line: number): Range {
    const within = Math.max(0, Math.min(line, this.#lines.count - 1));
    if (line < 0) return Range.create(0, 0, 0, 0);
    const end = this.#lines.startOf(within + 1) ?? this.#text.length;
    return { start: Position.create(within, 0), end: this.positionAt(this.#endOfLine(within, end)) };
  }

  getEOLCharacters(line: number): string {
    if (line < 0 || line >= this.#lines.count) return '';
    const end = this.#lines.startOf(line + 1) ?? this.#text.length;
    return this.#text.slice(this.#endOfLine(line, end), end);
  }

  /** Takes over what the editor says has changed. */
  update(changes: readonly TextDocumentContentChangeEvent[], version: number): void {
    for (const change of changes) {
      const [start, end] = 'range' in change ? this.#offsets(change.range) : [0, this.#text.length];
      this.#replace('range' in change ? { start, end, by: change.text } : narrowed(this.#text, change.text));
    }
    this.version = version;
  }

  /** The changes since the last time, each with the text after it. */
  takeChanges(): readonly TextEdit[] {
    const changes = this.#changes;
    this.#changes = [];
    return changes;
  }

  #replace({ start, end, by }: { start: number; end: number; by: string }): void {
    const before = this.#text;
    this.#text = before.replace(start, end, by);
    this.#lines.replace(this.#text, start, end, by.length);
    this.#changes.push({ start, end, before, text: this.#text });
  }

  #endOfLine(line: number, next: number): number {
    return this.#beforeBreak(next, this.#lines.startOf(line)!);
  }

  #offsets({ start, end }: Range): [number, number] {
    const a = this.offsetAt(start);
    const b = this.offsetAt(end);
    return a <= b ? [a, b] : [b, a];
  }

  /** A position never lies inside or behind the break that ends its line. */
  #beforeBreak(offset: number, lineStart: number): number {
    const ending = /[\r\n]+$/.exec(this.#text.slice(Math.max(lineStart, offset - 2), offset));
    return offset - (ending?.[0].length ?? 0);
  }
}

/** What the manager of open documents needs to make and change them. */
export const openTexts: TextDocumentsConfiguration<TextDocument> = {
  create: (uri, languageId, version, text) => new OpenText(uri, languageId, version, text),
  update: (document, changes, version) => {
    (document as OpenText).update(changes, version);
    return document;
  },
};
