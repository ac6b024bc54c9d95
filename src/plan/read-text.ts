import type { ParseResult } from 'langium';
import type { PlanFile } from '../language/generated/ast.ts';
import { libraryTexts } from '../language/generated/library.ts';
import { createFeedplotServices, type FeedplotServices } from '../language/services.ts';
import type { Unreadable } from './plan.ts';
import { type ReadFile, readFile } from './read-file.ts';

/** A plan of 20,000 statements has under two million characters. */
export const MOST_CHARACTERS = 4_000_000;

let services: FeedplotServices | undefined;

/** The parser for text that no editor holds; made once, when first needed. */
function parse(text: string): ParseResult<PlanFile> {
  services ??= createFeedplotServices().Feedplot;
  return services.parser.LangiumParser.parse<PlanFile>(text);
}

/** Reads one file's text. What cannot be a plan at all is told and not parsed. */
export function readText(uri: string, text: string): ReadFile {
  const refusal = refuse(text);
  if (refusal) return emptyFile(uri, refusal);
  return readFile(uri, parse(text.startsWith('\uFEFF') ? text.slice(1) : text));
}

/** Why a text is not read, in words; undefined for a text that is. */
export function refuse(text: string): string | undefined {
  if (text.length > MOST_CHARACTERS) {
    return `This file has ${(text.length / 1e6).toFixed(1)} million characters; at most ${MOST_CHARACTERS / 1e6} million are read. Is it a plan?`;
  }
  if (text.includes('\u0000')) return 'This is no text: it holds bytes that no editor writes. Is it a plan?';
  return undefined;
}

export function emptyFile(uri: string, message: string): ReadFile {
  const unreadable: Unreadable = {
    file: uri,
    message,
    range: { line: 0, column: 0, endLine: 0, endColumn: 1 },
  };
  return {
    uri,
    statements: [],
    imports: [],
    hasPlan: false,
    unreadables: [unreadable],
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
