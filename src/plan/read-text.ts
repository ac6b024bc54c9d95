import type { FileTree } from '../language/incremental/file-tree.ts';
import type { FeedplotParser } from '../language/incremental/parser.ts';
import { Text } from '../language/incremental/text.ts';
import { createFeedplotServices } from '../language/services.ts';
import { type ReadFile, readFile } from './read-file.ts';

let parser: FeedplotParser | undefined;

/** Reads one file's text. What cannot be a plan at all is told and not parsed. */
export function readText(uri: string, text: string): ReadFile {
  return readFile(uri, readTree(text));
}

/** The syntax tree of a text that no editor holds. */
export function readTree(text: string): FileTree {
  // Made once, when first needed.
  parser ??= createFeedplotServices().Feedplot.parser.LangiumParser as FeedplotParser;
  const withoutMark = text.startsWith('\uFEFF') ? text.slice(1) : text;
  return parser.readFile(Text.of(withoutMark));
}

/** A file that could not be had as text, and why, in words. */
export function emptyFile(uri: string, message: string): ReadFile {
  return {
    uri,
    statements: [],
    imports: [],
    hasPlan: false,
    unreadables: [{ file: uri, message, range: { line: 0, column: 0, endLine: 0, endColumn: 1 } }],
    faulty: [],
    wording: 0,
    formerLabels: [],
    statementOf: () => undefined,
  };
}
