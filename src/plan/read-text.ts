import type { FeedplotParser } from '../language/incremental/parser.ts';
import { Text } from '../language/incremental/text.ts';
import { libraryTexts } from '../language/library/texts.ts';
import { createFeedplotServices } from '../language/services.ts';
import { type ReadFile, readFile } from './read-file.ts';

let parser: FeedplotParser | undefined;

/** Reads one file's text. What cannot be a plan at all is told and not parsed. */
export function readText(uri: string, text: string): ReadFile {
  // The parser for text that no editor holds; made once, when first needed.
  parser ??= createFeedplotServices().Feedplot.parser.LangiumParser as FeedplotParser;
  const withoutMark = text.startsWith('\uFEFF') ? text.slice(1) : text;
  return readFile(uri, parser.readFile(Text.of(withoutMark)));
}

/** A file that could not be had as text, and why, in words. */
export function emptyFile(uri: string, message: string): ReadFile {
  return {
    uri,
    statements: [],
    imports: [],
    hasPlan: false,
    unreadables: [{ file: uri, message, range: { line: 0, column: 0, endLine: 0, endColumn: 1 } }],
    wording: 0,
    formerLabels: [],
    statementOf: () => undefined,
  };
}

const libraries = new Map<string, readonly ReadFile[]>();

/**
 * The shipped library, read once.
 *
 * @param folder URI of the folder in which its files lie for an editor to open.
 */
export function readLibrary(folder: string): readonly ReadFile[] {
  let files = libraries.get(folder);
  if (!files) {
    files = libraryTexts.map(([name, text]) => readText(`${folder}/${name}`, text));
    libraries.set(folder, files);
  }
  return files;
}
