import type { ReadFile } from './read-file.ts';
import { emptyFile, readText } from './read-text.ts';

/** A file of more bytes is not even opened: the most characters that are read, at four bytes each. */
export const MOST_BYTES = 16_000_000;

/** One file out of its bytes. What is no text is told at the place where that begins. */
export function readBytes(uri: string, bytes: Uint8Array): ReadFile {
  const decoded = decode(bytes);
  if ('text' in decoded) return readText(uri, decoded.text);
  const { message, line, column } = decoded;
  const range = { line, column, endLine: line, endColumn: column + 1 };
  return { ...emptyFile(uri, message), unreadables: [{ file: uri, message, range }] };
}

/** Text out of the bytes of a file, or why they are none and where, counted from zero. */
export type Decoded =
  | { readonly text: string }
  | { readonly message: string; readonly line: number; readonly column: number };

/** Reads UTF-8, with or without a mark at its beginning. What is no UTF-8 is told, never guessed at. */
export function decode(bytes: Uint8Array): Decoded {
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    if (bytes.includes(0)) return { message: noText(bytes), line: 0, column: 0 };
    const before = new TextDecoder().decode(bytes).split('\uFFFD', 1)[0] ?? '';
    const lines = before.split(/\r\n|\r|\n/);
    return {
      message: 'This file is not UTF-8 text from here on. Save it as UTF-8.',
      line: lines.length - 1,
      column: lines.at(-1)?.length ?? 0,
    };
  }
}

function noText(bytes: Uint8Array): string {
  const marked = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  return marked
    ? 'This file is UTF-16 text. Save it as UTF-8.'
    : 'This is no text: it holds bytes that no editor writes. Is it a plan?';
}
