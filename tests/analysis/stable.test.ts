import fc from 'fast-check';
import { expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.ts';
import { failuresOf } from '../../src/analysis/failures.ts';
import type { Analysis } from '../../src/analysis/model.ts';
import type { Statement } from '../../src/plan/plan.ts';
import { benchText } from '../bench/plans.ts';
import { planOf } from '../support/plans.ts';
import { finals, words } from './plans.ts';

/** Every figure of an analysis, in an order that does not depend on that of the statements. */
function figuresOf(analysis: Analysis): string[] {
  const links = analysis.links.map(({ name, length, chain, index }) => {
    const { base, differing, worst } = analysis.traffic[index]!;
    const loads = [base, ...differing].map(
      ({ segment, forward, backward }) =>
        `${segment?.name} ${forward.load_bits_per_second.toFixed(3)} ${backward.load_bits_per_second.toFixed(3)}`,
    );
    const { verdict, reach_m, loss_db } = analysis.reaches[chain.index]!;
    return JSON.stringify([
      name,
      length.length_m,
      length.from,
      chain.interface?.name,
      loads.sort(),
      worst.share?.toFixed(9),
      verdict,
      reach_m,
      loss_db,
    ]);
  });
  const deliveries = analysis.deliveries.map(({ feed, segment, routes, noRoute, delay }) =>
    JSON.stringify([
      feed.name,
      segment?.name,
      routes.map(({ ports }) => words(ports)),
      noRoute?.kind,
      delay.delay_s?.toFixed(12),
      delay.over,
    ]),
  );
  return [...links, ...deliveries].sort();
}

const statements = finals
  .split(/\n(?=[a-z])/)
  .map((line) => line.trim())
  .filter((line) => line !== '');

test('the same plan gives the same analysis', () => {
  const plan = planOf(benchText(300));
  expect(figuresOf(analyse(plan))).toEqual(figuresOf(analyse(plan)));
  expect(figuresOf(analyse(planOf(finals)))).toEqual(figuresOf(analyse(planOf(finals))));
});

// No two ways are equally short in this plan, and no two pictures meet, so no order decides anything.
test('the order of statements changes no figure where nothing is tied', () => {
  const expected = figuresOf(analyse(planOf(finals)));
  fc.assert(
    fc.property(fc.shuffledSubarray(statements, { minLength: statements.length }), (shuffled) => {
      expect(figuresOf(analyse(planOf(shuffled.join('\n'))))).toEqual(expected);
    }),
    { numRuns: 40 },
  );
});

test('splitting a plan over files changes no figure', () => {
  const expected = figuresOf(analyse(planOf(finals)));
  fc.assert(
    fc.property(
      fc.array(fc.nat(3), { minLength: statements.length, maxLength: statements.length }),
      (homes) => {
        const parts: [string[], string[], string[], string[]] = [[], [], [], []];
        statements.forEach((statement, i) => {
          parts[statement.startsWith('plan ') ? 0 : homes[i]!]!.push(statement);
        });
        const [own, ...others] = parts;
        const files: Record<string, string> = {
          'show.feedplot': [
            ...own,
            'import "part1.feedplot"',
            'import "part2.feedplot"',
            'import "part3.feedplot"',
          ].join('\n'),
        };
        others.forEach((part, i) => {
          files[`part${i + 1}.feedplot`] = part.join('\n');
        });
        expect(figuresOf(analyse(planOf(files)))).toEqual(expected);
      },
    ),
    { numRuns: 30 },
  );
});

test('a statement about something else changes nothing else', () => {
  const before = figuresOf(analyse(planOf(finals)));
  const after = figuresOf(
    analyse(
      planOf(
        `${finals}\nplace far\nnode lone : edge_box at far\nsource spare at far sends 1080p50\nsegment rest`,
      ),
    ),
  );
  expect(after).toEqual(before);
});

/** The plan with one of its statements gone, changed or moved, all others the same objects. */
const changes: readonly [name: string, change: (statements: Statement[]) => Statement[]][] = [
  ['a feed taken out', (list) => without(list, 'feed')],
  ['the segment taken out', (list) => without(list, 'segment')],
  [
    'a measured delay taken out',
    (list) => list.filter(({ fact }) => fact.kind !== 'measured' || fact.subject.kind !== 'feed'),
  ],
  [
    'a measured length taken out',
    (list) => list.filter(({ fact }) => fact.kind !== 'measured' || fact.subject.kind === 'feed'),
  ],
  ['a link taken out', (list) => without(list, 'link')],
  ['a place taken out', (list) => without(list, 'place')],
  ['nothing changed', (list) => [...list]],
];

function without(list: Statement[], kind: Statement['fact']['kind']): Statement[] {
  const at = list.findLastIndex(({ fact }) => fact.kind === kind);
  return list.filter((_, i) => i !== at);
}

test.each(changes)('worked out after another analysis it is the same: %s', (_name, change) => {
  const plan = planOf(finals);
  const before = analyse(plan);
  const figuresBefore = figuresOf(before);
  const changed = { ...plan, statements: change([...plan.statements]) };
  const after = analyse(changed, before);
  expect(figuresOf(after)).toEqual(figuresOf(analyse(changed)));
  expect(after.names).toEqual(analyse(changed).names);
  // The earlier analysis is left as it was, and both can still be asked.
  expect(figuresOf(before)).toEqual(figuresBefore);
  expect(failuresOf(after).length).toBe(failuresOf(analyse(changed)).length);
});

test('the plant is taken over while only wishes change', () => {
  const plan = planOf(finals);
  const before = analyse(plan);
  const after = analyse({ ...plan, statements: without([...plan.statements], 'feed') }, before);
  expect(after.nodes).toBe(before.nodes);
  expect(analyse({ ...plan, statements: without([...plan.statements], 'link') }, before).nodes).not.toBe(
    before.nodes,
  );
});
