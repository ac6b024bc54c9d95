/**
 * Plans with the expected findings written in them, in comments directly above the statement (or the line) that is
 * wrong:
 *
 *     // expect: link-reach "90 m", from-memory
 *     // expect: source-unused
 *     source camera …
 *
 * Everything that is found must be expected, and everything expected must be found; a marker that cannot be read, or
 * that names no check, is a mistake of the fixture.
 */
import { analyse } from '../../src/analysis/analyse.ts';
import { checkNames } from '../../src/checks/catalogue.ts';
import { type Finding, locate } from '../../src/checks/finding.ts';
import { type CheckedPlan, checkPlan } from '../../src/checks/findings.ts';
import { assembledOf, root } from './plans.ts';

interface Expectation {
  readonly file: string;
  /** Line of the marker, from 1, for messages. */
  readonly markedAt: number;
  /** The line below the markers, from 0. */
  readonly line: number;
  readonly check: string;
  /** A piece of the message. */
  readonly says: string | undefined;
}

/** Everything that is found in a plan, from its text or from several files of which it is the first. */
export function checkText(files: string | Record<string, string>): CheckedPlan {
  const { plan, unreadables } = assembledOf(files);
  return checkPlan(analyse(plan), unreadables, {
    onToolFault: (check, error) => {
      throw new Error(`The check ${check} failed`, { cause: error });
    },
  });
}

/** What is found, as `check: message`. */
export function findingTexts(files: string | Record<string, string>): string[] {
  return checkText(files).findings.map(({ check, message }) => `${check}: ${message}`);
}

/** The differences between what is expected and what is found; empty when all is as marked. */
export function mismatches(files: Record<string, string>): string[] {
  const problems: string[] = [];
  const expected = Object.entries(files).flatMap(([file, text]) => expectationsIn(file, text, problems));
  const left = [...checkText(files).findings];
  for (const expectation of expected) {
    const at = left.findIndex((finding) => isMet(expectation, finding));
    if (at >= 0) left.splice(at, 1);
    else problems.push(`${expectation.file}:${expectation.markedAt}: not found: ${textOf(expectation)}`);
  }
  for (const finding of left) {
    const { file, range } = locate(finding.place);
    problems.push(`${nameOf(file)}:${range.line + 1}: not expected: ${finding.check}: ${finding.message}`);
  }
  return problems;
}

function textOf({ check, says }: Expectation): string {
  return says === undefined ? check : `${check} "${says}"`;
}

function isMet({ file, line, check, says }: Expectation, finding: Finding): boolean {
  if (finding.check !== check || (says !== undefined && !finding.message.includes(says))) return false;
  const { place } = finding;
  const found = locate(place);
  if (nameOf(found.file) !== file) return false;
  const statementLine = 'statement' in place ? place.statement.source.whole().line : undefined;
  return found.range.line === line || statementLine === line || isTopOfFile(finding, line);
}

/** What concerns a file as a whole may be marked above its first line. */
function isTopOfFile({ place }: Finding, line: number): boolean {
  return 'file' in place && place.range.line === 0 && place.range.endColumn === 1 && line <= 3;
}

function nameOf(uri: string): string {
  return decodeURIComponent(uri.slice(root.length + 1));
}

const MARKER = /^\s*\/\/\s*expect\b(.*)$/;
const ITEM = /^\s*([a-z]+(?:-[a-z]+)*)(?:\s+"([^"]+)")?\s*$/;

function expectationsIn(file: string, text: string, problems: string[]): Expectation[] {
  const lines = text.split(/\r\n|\r|\n/);
  return lines.flatMap((line, i) => {
    const marker = MARKER.exec(line);
    if (!marker) return [];
    let below = i + 1;
    while (MARKER.test(lines[below] ?? '')) below++;
    const [, written = ''] = marker;
    if (!written.startsWith(':')) {
      problems.push(`${file}:${i + 1}: malformed marker: ${line.trim()}`);
      return [];
    }
    return splitItems(written.slice(1)).flatMap((one) => {
      const [, check, says] = ITEM.exec(one) ?? [];
      if (check !== undefined && checkNames.has(check)) {
        return [{ file, markedAt: i + 1, line: below, check, says }];
      }
      const why = check === undefined ? 'malformed marker' : `no check is named ${check}`;
      problems.push(`${file}:${i + 1}: ${why}: ${line.trim()}`);
      return [];
    });
  });
}

/** Items are separated by commas outside of quotes. */
function splitItems(text: string): string[] {
  return text.match(/(?:[^",]|"[^"]*"?)+|(?<=^|,)(?=,|$)/g) ?? [''];
}
