/** What nothing that Feedplot shows may say: that is the program speaking of itself, or acting on whoever reads it. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

const source = resolve(import.meta.dirname, '../../src');

/** Classes, syntax nodes and tokens of ours whose names nobody would write in a sentence: those of several words. */
const ownNames = [
  ...new Set(
    readdirSync(source, { recursive: true, encoding: 'utf8' })
      .filter((file) => /\.(ts|langium)$/.test(file) && !file.includes('generated/'))
      .flatMap((file) => [
        ...readFileSync(join(source, file), 'utf8').matchAll(
          /\b(?:class|interface|returns) ([A-Z][a-z]+[A-Z]\w*)/g,
        ),
      ])
      .map(([, name]) => name!),
  ),
];

const never = new RegExp(
  [
    '\\b(?:undefined|NaN|Infinity)\\b',
    '\\[object ',
    '\\b(?:TypeError|RangeError|ReferenceError|SyntaxError|AssertionError)\\b',
    '\\bfault of (?:Feedplot|the tool), not of the plan\\b',
    '\\bfailed\\. This is a fault of Feedplot\\b',
    '\\b(?:EOF|ML_COMMENT|SL_COMMENT)\\b',
    `\\b(?:${ownNames.join('|')})\\b`,
  ].join('|'),
);

/** Characters that steer a terminal, or show a line in another order than it is. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const steering = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]|\p{Cs}/u;
/** Characters that XML 1.0 does not allow (W3C Recommendation, fifth edition, production 2). */
const unwritable = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u;

const forbidden = { terminal: steering, file: unwritable, editor: undefined };

/**
 * The first thing in a text that should not be there, with what stands around it; undefined for none.
 *
 * @param goesTo A terminal, which obeys what it is told; a file, which others must be able to read; an editor, which
 *   shows the plan's own text anyway.
 */
export function misspoken(text: string, goesTo: keyof typeof forbidden): string | undefined {
  const found = never.exec(text) ?? forbidden[goesTo]?.exec(text);
  if (!found) return undefined;
  return JSON.stringify(text.slice(Math.max(0, found.index - 80), found.index + 80));
}

/** The part of a page that people read: what is in its scripts and styles is for the browser. */
export function readable(page: string): string {
  return page.replace(/<(script|style)\b[\s\S]*?<\/\1>/g, '');
}
