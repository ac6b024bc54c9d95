import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkText } from '../support/fixtures.ts';

const folder = new URL('./fixtures/', import.meta.url);
const textOf = (name: string) => readFileSync(new URL(name, folder), 'utf8');
const names = readdirSync(folder).filter((name) => name.endsWith('.feedplot'));
const parts = Object.fromEntries(
  names.filter((name) => name.startsWith('part-')).map((name) => [name, textOf(name)]),
);

/** A line as it stands while somebody types it, deletes it or has it twice. */
const slips: Record<string, (line: string) => string[]> = {
  'left out': () => [],
  'cut off': (line) => [line.slice(0, Math.floor(line.length * 0.6))],
  'without its last word': (line) => [line.replace(/\s*\S+\s*$/, '')],
  'without its second word': (line) => [line.replace(/^(\s*\S+)\s+\S+/, '$1')],
  'written twice': (line) => [line, line],
};

/** So that the test stays quick every fixture lends some of its lines, and all of them together every kind. */
const EVERY = 7;

describe('any line of a plan may be broken', () => {
  const plans = names.filter((name) => !(name in parts));
  it.each(plans)('%s: no check fails, and every message is whole', (name) => {
    const lines = textOf(name).split('\n');
    for (let i = name.length % EVERY; i < lines.length; i += EVERY) {
      for (const slip of Object.values(slips)) {
        const text = [...lines.slice(0, i), ...slip(lines[i]!), ...lines.slice(i + 1)].join('\n');
        // A check that fails is thrown by checkText.
        for (const { check, message, fixes } of checkText({ [name]: text, ...parts }).findings) {
          expect(`${check}: ${message}`).not.toMatch(/undefined|null|NaN|Infinity|\[object| {2}|\n/);
          expect(`${check}: ${message}`).toMatch(/[.?]$/);
          for (const { title } of fixes) expect(title).not.toMatch(/undefined|null/);
        }
      }
    }
  });
});
