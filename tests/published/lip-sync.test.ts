import { judgeLipSync, type LipSyncJudgement, type LipSyncRule } from '../../src/physics/sound.ts';
import { type Check, published } from './source.ts';

/** The picture takes half a second; positive milliseconds: the sound is early. */
function judged(rule: LipSyncRule, early_ms: number, expected: LipSyncJudgement): Check {
  return {
    what: `${Math.abs(early_ms)} ms ${early_ms < 0 ? 'late' : 'early'}`,
    got: () => judgeLipSync(0.5, 0.5 - early_ms / 1000, rule).judgement,
    expected,
  };
}

published({ source: 'ITU-R BT.1359-1 (1998) considering g) and recommends 2', label: 'published' }, [
  judged('bt1359', 45, 'good'),
  judged('bt1359', 45.1, 'noticed'),
  judged('bt1359', -125, 'good'),
  judged('bt1359', -125.1, 'noticed'),
  judged('bt1359', 90, 'noticed'),
  judged('bt1359', 90.1, 'bad'),
  judged('bt1359', -185, 'noticed'),
  judged('bt1359', -185.1, 'bad'),
]);

published({ source: 'EBU R37-2007 Table 1, end to end', label: 'second-hand' }, [
  judged('r37', 40, 'good'),
  judged('r37', 40.1, 'bad'),
  judged('r37', -60, 'good'),
  judged('r37', -60.1, 'bad'),
]);

published({ source: 'ATSC IS-191 (26 June 2003), encoder input', label: 'second-hand' }, [
  judged('is191', 15, 'good'),
  judged('is191', 15.1, 'bad'),
  judged('is191', -45, 'good'),
  judged('is191', -45.1, 'bad'),
]);
