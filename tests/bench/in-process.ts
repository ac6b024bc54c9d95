/** What the parts of the work cost, without a server. */
import { analyse } from '../../src/analysis/analyse.ts';
import { findingsOf } from '../../src/checks/findings.ts';
import { applyEdit } from '../../src/language/incremental/edit.ts';
import type { FeedplotParser } from '../../src/language/incremental/parser.ts';
import { Text } from '../../src/language/incremental/text.ts';
import { createFeedplotServices } from '../../src/language/services.ts';
import { assemblePlan } from '../../src/plan/assemble.ts';
import { readLibrary } from '../../src/plan/library/read.ts';
import { readFile } from '../../src/plan/read-file.ts';
import { median } from './figures.ts';
import { keystrokes } from './keystrokes.ts';
import { benchText } from './plans.ts';

const services = createFeedplotServices().Feedplot;
const parser = services.parser.LangiumParser as FeedplotParser;

export interface Parts {
  /** Text to syntax trees, all of it. */
  readonly parse_ms: number;
  /** Syntax trees to facts. */
  readonly facts_ms: number;
  readonly analyse_ms: number;
  readonly checks_ms: number;
  /** One keystroke: text to syntax tree and facts. */
  readonly keystroke_ms: number;
}

/** Medians of so many rounds. */
export function measureParts(statements: number, rounds: number): Parts {
  const text = benchText(statements);
  const uri = 'file:///show.feedplot';
  const library = readLibrary('file:///library');
  const took: Record<keyof Parts, number[]> = {
    parse_ms: [],
    facts_ms: [],
    analyse_ms: [],
    checks_ms: [],
    keystroke_ms: [],
  };
  const time = <T>(part: keyof Parts, work: () => T): T => {
    const began = performance.now();
    const result = work();
    took[part].push(performance.now() - began);
    return result;
  };
  for (let round = 0; round < rounds; round++) {
    const tree = time('parse_ms', () => parser.readFile(Text.of(text)));
    const file = readFile(uri, tree);
    time('facts_ms', () => file.statements);
    const { plan } = assemblePlan(uri, { file: () => file, library })!;
    const analysis = time('analyse_ms', () => analyse(plan));
    time('checks_ms', () => findingsOf(analysis, []));
    const { at, text: typed } = keystrokes[1]!.find(text);
    for (let i = 0; i < 10; i++) {
      const [end, by] = i % 2 === 0 ? [at, typed] : [at + typed.length, ''];
      time('keystroke_ms', () => {
        const before = tree.text;
        applyEdit(
          tree,
          { start: at, end, before, text: before.replace(at, end, by) },
          parser,
          services.parser.Lexer,
        );
        return file.statements;
      });
    }
  }
  return Object.fromEntries(
    Object.entries(took).map(([part, times]) => [part, median(times)]),
  ) as unknown as Parts;
}
