/** What is worked out after one edit after the other is what is worked out afresh: every figure, every finding. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { analyse, analyseAgain } from '../../src/analysis/analyse.ts';
import type { Analysis } from '../../src/analysis/model.ts';
import { findingsOf } from '../../src/checks/findings.ts';
import { benchText, withFindings } from '../bench/plans.ts';
import { Random } from '../incremental/random.ts';
import { dumpAnalysis } from '../support/analysis-dump.ts';
import { EditedPlan } from '../support/edited-plan.ts';
import { everyStatement } from '../support/every-statement.ts';
import { finals, kits } from './plans.ts';

/** Two ways between the switches, two pictures at one output, cables in one sheath, a mixer that is fed by its own picture. */
const entangled = `plan "Entangled" { rate 50 slack 2 m }
place hall
place desk
place annex
run hall <-> desk 40 m
run desk <-> annex 30 m
run hall <-> annex 80 m
${kits}
node box_a : edge_box at hall
node box_b : edge_box at desk
node sw_a : switch_8 at hall
node sw_b : switch_8 at desk
node mixer : mixer_4 at desk
node patch : patch_4 at annex
node fan : splitter at desk
link one sw_a.net1 <-> sw_b.net1 over om3
link two sw_a.net2 <-> sw_b.net2 over om3
link three sw_a.net3 <-> sw_b.net3 over om3 shares two
link four sw_a.net4 <-> sw_b.net4 over om3 standby for one
link box_a.net1 <-> sw_a.net5 over om3 4 m
link box_a.net2 <-> sw_a.net6 over om3 4 m
link box_b.net1 <-> sw_b.net5 over om3
link box_b.net2 <-> sw_b.net6 over om3 by annex
source cam1 at hall sends 1080p50 as sdi_3g into box_a.in1 over rg6 12 m
source cam2 at hall sends 1080p50 as sdi_3g into box_a.in2 over rg6 14 m
source cam3 at annex sends 720p50 as sdi_3g into patch.front1 over rg6 5 m
source program from mixer.out1 sends 1080p50
link patch.rear1 -> mixer.in3 over rg6
link box_b.out1 -> mixer.in1 over rg6 2 m
link box_b.out2 -> mixer.in2 over rg6 2 m
link mixer.out1 -> fan.in1 over rg6 1 m
link fan.out1 -> box_b.in1 over rg6 1 m
link fan.out2 -> mixer.in4 over rg6 1 m
destination wall at hall takes 1080p50 as sdi_3g from box_a.out1 over rg6 20 m within 6 frames
destination door at annex takes 1080p50 as sdi_3g from fan.out3 over rg6 within 2 frames
destination back at hall takes 1080p50 as sdi_3g from box_a.out2 over rg6 3 m
segment act
segment finale without one, cam2
feed cam1 -> mixer.in1
feed cam2 -> mixer.in2 seamless
feed cam3 -> mixer.in3
feed program -> wall, door
feed program -> mixer.in4
feed cam2 -> back redundant
feed cam1 -> back in finale instead of cam2
feed cam2 -> wall in act instead of program
feed program -> back via fan.out1 in act
black door in finale
measured cam1 -> mixer.in1 90 ms
measured one 44 m
measured hall <-> annex 78 m
proved program -> wall on 2027-05-14
accept link-unused on three "spare"
case blue holds cam1, wall weighs 6 kg up to 40 kg
stock rg6 any of 25 m costs 22
`;

const plans: Readonly<Record<string, string>> = {
  entangled,
  finals,
  starter: readFileSync('examples/starter/starter.feedplot', 'utf8'),
  ways: readFileSync('examples/mistakes/ways.feedplot', 'utf8'),
  pictures: readFileSync('examples/mistakes/pictures.feedplot', 'utf8'),
  every: everyStatement.join('\n'),
  centre: withFindings(benchText(260), 4),
};

interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** A slip or a change of mind: another number, another name, a line more or less, some letters. */
function randomEdit(text: string, random: Random): Edit {
  const lines = [...text.matchAll(/^.+$/gm)];
  const line = random.pick(lines);
  const pieces = [...line[0].matchAll(/[\w.]+/g)];
  const piece = pieces.length > 0 ? random.pick(pieces) : undefined;
  const start = line.index + (piece?.index ?? 0);
  const end = start + (piece?.[0].length ?? 0);
  const other = random.pick([...random.pick(lines)[0].matchAll(/[\w.]+/g)].map(([word]) => word).concat('x'));
  switch (random.below(10)) {
    case 0:
      return { start: line.index, end: line.index + line[0].length + 1, text: '' };
    case 1:
      return { start: line.index, end: line.index, text: `${random.pick(lines)[0]}\n` };
    case 2:
      return { start: line.index, end: line.index, text: `${random.pick(everyStatement)}\n` };
    case 3:
    case 4:
      return { start, end, text: other };
    case 5:
      return { start: end, end, text: random.pick(['1', 'x', ' ', '9', ' 3 m']) };
    case 6:
      return { start: Math.max(start, end - 1), end, text: random.pick(['', '2', 'b']) };
    default: {
      const numbers = [...line[0].matchAll(/\b\d+\b/g)];
      if (numbers.length === 0) return { start, end, text: other };
      const number = random.pick(numbers);
      const at = line.index + number.index;
      return { start: at, end: at + number[0].length, text: `${random.below(120)}` };
    }
  }
}

/** How often the quick way was taken. */
function work(
  text: string,
  seed: number,
  edits: number,
): { followed: number; difference: string | undefined } {
  const random = new Random(seed);
  const plan = new EditedPlan(text);
  const undo: Edit[] = [];
  let analysis: Analysis = analyse(plan.assembled.plan);
  let followed = 0;
  for (let i = 0; i < edits; i++) {
    const now = plan.text;
    // Going back again and again keeps the plan from falling to pieces.
    const edit =
      (random.below(5) < 2 || now.length > 2 * text.length + 2000 ? undo.pop() : undefined) ??
      randomEdit(now, random);
    const undone = {
      start: edit.start,
      end: edit.start + edit.text.length,
      text: now.slice(edit.start, edit.end),
    };
    if (edit.end > now.length) continue;
    plan.edit(edit.start, edit.end, edit.text);
    undo.push(undone);
    const { assembled } = plan;
    if (assembled.plan === analysis.plan) continue;
    const { links } = analysis;
    analysis = analyseAgain(assembled.plan, analysis);
    if (analysis.links === links) followed++;
    const fresh = analyse(assembled.plan);
    const difference =
      firstDifference(dumpAnalysis(analysis), dumpAnalysis(fresh)) ??
      firstDifference(findingLines(analysis, assembled), findingLines(fresh, assembled));
    if (difference) return { followed, difference: `edit ${i}, ${JSON.stringify(edit)}: ${difference}` };
  }
  return { followed, difference: undefined };
}

/** The first line in which two dumps differ, from a little before where they part. */
function firstDifference(edited: readonly string[], fresh: readonly string[]): string | undefined {
  for (let i = 0; i < Math.max(edited.length, fresh.length); i++) {
    const [a, b] = [edited[i] ?? '', fresh[i] ?? ''];
    if (a === b) continue;
    let at = 0;
    while (a[at] === b[at]) at++;
    const show = (line: string) => `${line.slice(0, 40)} … ${line.slice(Math.max(0, at - 60), at + 200)}`;
    return `line ${i}\n  edited: ${show(a)}\n  fresh:  ${show(b)}`;
  }
  return undefined;
}

function findingLines(analysis: Analysis, { unreadables }: EditedPlan['assembled']): string[] {
  return findingsOf(analysis, unreadables).map(({ check, severity, message, subject, segment, related }) =>
    JSON.stringify([check, severity, message, subject, segment, related.map((one) => one.message)]),
  );
}

test.each(Object.entries(plans))(
  'after any edits it is as worked out afresh: %s',
  (_name, text) => {
    for (const seed of [1, 2, 3]) {
      const { followed, difference } = work(text, seed, EDITS);
      expect(difference).toBeUndefined();
      expect(followed).toBeGreaterThan(0);
    }
  },
  120_000,
);

const EDITS = Number(process.env.FEEDPLOT_EDITS ?? 30);
