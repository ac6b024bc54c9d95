import { expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.ts';
import { showOf } from '../../src/analysis/tools.ts';
import { planOf } from '../support/plans.ts';

/** Vertices that all searches of a plan reached: what finding its ways costs, whatever the machine. */
function effortOf(text: string): number {
  return showOf(analyse(planOf(text))).router.search.visited;
}

/** Boxes round one switch; every picture goes from a box to the next but one. */
function star(boxes: number): string {
  return [
    'kit box { inputs in[1..2] as sdi_3g outputs out[1..2] as sdi_3g network net as ethernet_10g carries uncompressed }',
    `kit core { network net[1..${boxes}] as ethernet_10g forwards }`,
    ...Array.from({ length: Math.ceil(boxes / 1000) }, (_, i) => `node core${i} : core`),
    ...Array.from(
      { length: Math.max(0, Math.ceil(boxes / 1000) - 1) },
      (_, i) => `link core${i}.net1000 <-> core${i + 1}.net999`,
    ),
    ...Array.from({ length: boxes }, (_, i) => [
      `node box${i} : box`,
      `link box${i}.net <-> core${Math.floor(i / 998)}.net${(i % 998) + 1}`,
      `source cam${i} sends 1080p50 as sdi_3g into box${i}.in1`,
      `destination screen${i} from box${i}.out1`,
      `feed cam${i} -> screen${(i + 2) % boxes}`,
    ]).flat(),
  ].join('\n');
}

/** Boxes in a row, each joined to the next over a switch of its own; pictures go one box on. */
function row(boxes: number): string {
  return [
    'kit box { inputs in[1..2] as sdi_3g outputs out[1..2] as sdi_3g network net as ethernet_10g carries uncompressed }',
    'kit small { network net[1..3] as ethernet_10g forwards }',
    ...Array.from({ length: boxes }, (_, i) => [
      `node box${i} : box`,
      `node switch${i} : small`,
      `link box${i}.net <-> switch${i}.net1`,
      `link switch${i}.net2 <-> switch${(i + 1) % boxes}.net3`,
      `source cam${i} sends 1080p50 as sdi_3g into box${i}.in1`,
      `destination screen${i} from box${i}.out1`,
      `feed cam${i} -> screen${(i + 1) % boxes}`,
    ]).flat(),
  ].join('\n');
}

test.each([
  ['round one switch', star],
  ['in a row', row],
])('finding ways grows with the plan, not with its square: boxes %s', (_name, plan) => {
  const [small, large] = [effortOf(plan(100)), effortOf(plan(800))];
  expect(large / small).toBeGreaterThan(4);
  expect(large / small).toBeLessThan(12);
});

test('a feed round a switch of eight hundred ports reaches a handful of vertices', () => {
  expect(effortOf(star(800)) / 800).toBeLessThan(40);
});

// The trunk between two halves is missing, as while it is being typed: half of all feeds have no way.
test('nor do feeds without a way', () => {
  const halves = (boxes: number) => {
    const [left, right] = [star(boxes), star(boxes).replaceAll(/(box|core|cam|screen)(\d)/g, 'other_$1$2')];
    const [kitLines, others] = [left.split('\n').slice(0, 2), right.split('\n').slice(2)];
    const crossing = Array.from({ length: boxes }, (_, i) => `feed cam${i} -> other_screen${i}`);
    return [...kitLines, ...left.split('\n').slice(2), ...others, ...crossing].join('\n');
  };
  const [small, large] = [effortOf(halves(50)), effortOf(halves(400))];
  expect(large / small).toBeLessThan(12);
});
