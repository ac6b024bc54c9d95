/** Small enough that copying one at each keystroke costs nothing, large enough that a big file has few of them. */
const CHUNK = 8192;

/**
 * The text of a file. It never changes: an edit makes a new one that shares all chunks but those it touches, so that a
 * keystroke copies some kilobytes instead of the whole text, and whoever holds the text of before still has it.
 */
export class Text {
  readonly length: number;
  readonly #chunks: readonly string[];
  #joined: string | undefined;

  private constructor(chunks: readonly string[], length: number, joined?: string) {
    this.#chunks = chunks;
    this.length = length;
    this.#joined = joined;
  }

  static of(text: string): Text {
    return new Text(cut(text), text.length, text);
  }

  toString(): string {
    this.#joined ??= this.#chunks.join('');
    return this.#joined;
  }

  slice(from: number, to: number): string {
    if (this.#joined !== undefined) return this.#joined.slice(from, to);
    let out = '';
    let at = 0;
    for (const chunk of this.#chunks) {
      if (at >= to) break;
      const end = at + chunk.length;
      if (end > from) out += chunk.slice(Math.max(0, from - at), to - at);
      at = end;
    }
    return out;
  }

  /** The text with [start, end) replaced. */
  replace(start: number, end: number, by: string): Text {
    const chunks = this.#chunks;
    let first = 0;
    let firstAt = 0;
    while (first < chunks.length - 1 && firstAt + chunks[first]!.length <= start)
      firstAt += chunks[first++]!.length;
    let last = first;
    let lastAt = firstAt;
    while (last < chunks.length - 1 && lastAt + chunks[last]!.length < end) lastAt += chunks[last++]!.length;
    const middle =
      (chunks[first] ?? '').slice(0, start - firstAt) + by + (chunks[last] ?? '').slice(end - lastAt);
    return new Text(
      [...chunks.slice(0, first), ...cut(middle), ...chunks.slice(last + 1)],
      this.length + by.length - (end - start),
    );
  }

  /** The place of the first occurrence at or behind an offset; -1 for none. */
  indexOf(search: string, from: number): number {
    let at = 0;
    let before = '';
    for (const chunk of this.#chunks) {
      const end = at + chunk.length;
      if (end > from) {
        const stretch = before + chunk;
        const start = at - before.length;
        const found = stretch.indexOf(search, Math.max(0, from - start));
        if (found >= 0) return start + found;
        before = search.length > 1 ? stretch.slice(1 - search.length) : '';
      }
      at = end;
    }
    return -1;
  }

  /** Where the line that holds an offset begins. Between the two halves of a line break it is still the line before. */
  lineStart(offset: number): number {
    let at = offset;
    if (at > 0 && this.#charAt(at - 1) === '\r' && this.#charAt(at) === '\n') at--;
    while (at > 0) {
      const from = Math.max(0, at - 200);
      const stretch = this.slice(from, at);
      const found = Math.max(stretch.lastIndexOf('\n'), stretch.lastIndexOf('\r'));
      if (found >= 0) return from + found + 1;
      at = from;
    }
    return 0;
  }

  /** Where the line after the one that holds an offset begins; the end of the text behind the last one. */
  nextLine(offset: number): number {
    for (let at = offset; at < this.length; at += 200) {
      const stretch = this.slice(at, at + 200);
      const found = /\r\n?|\n/.exec(stretch);
      if (!found) continue;
      const end = at + found.index + found[0].length;
      return found[0] === '\r' && this.#charAt(end) === '\n' ? end + 1 : end;
    }
    return this.length;
  }

  #charAt(offset: number): string {
    return this.slice(offset, offset + 1);
  }
}

function cut(text: string): string[] {
  if (text.length <= 2 * CHUNK) return text.length > 0 ? [text] : [];
  const chunks: string[] = [];
  for (let at = 0; at < text.length; at += CHUNK) chunks.push(text.slice(at, at + CHUNK));
  return chunks;
}
