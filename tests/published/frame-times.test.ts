import { FIBRE_PROPAGATION, propagation_s, totalDelay_s } from '../../src/physics/delay.ts';
import { formatRatio, frameRateOf, framesToSeconds } from '../../src/physics/rate.ts';
import { judgeLipSync, type LipSyncRule } from '../../src/physics/sound.ts';
import { type Check, published } from './source.ts';

/** Exact ratio; 1, 2 and 3 frames in ms. */
const TIMES: readonly (readonly [string, string, number, number, number])[] = [
  ['23.976', '24000/1001', 41.7083, 83.417, 125.125],
  ['24', '24', 41.6667, 83.333, 125],
  ['25', '25', 40, 80, 120],
  ['29.97', '30000/1001', 33.3667, 66.733, 100.1],
  ['30', '30', 33.3333, 66.667, 100],
  ['50', '50', 20, 40, 60],
  ['59.94', '60000/1001', 16.6833, 33.367, 50.05],
  ['60', '60', 16.6667, 33.333, 50],
];

const ms = (frames: number, rate: string) => () => framesToSeconds(frames, frameRateOf(rate)) * 1000;
const chain = () => totalDelay_s([{ name: 'chain', frames: 3, rate: frameRateOf(25) }]);
const direct = (rule: LipSyncRule) => () => judgeLipSync(chain(), 0, rule).judgement;

published({ source: 'frame times from the exact ratios', label: 'derived' }, [
  ...TIMES.flatMap(([rate, ratio, one, two, three]): Check[] => [
    { what: `${rate}: exact ratio`, got: () => formatRatio(frameRateOf(rate)), expected: ratio },
    { what: `${rate}: one frame, ms`, got: ms(1, rate), expected: one, within: 0.000_051 },
    { what: `${rate}: two frames, ms`, got: ms(2, rate), expected: two, within: 0.000_51 },
    { what: `${rate}: three frames, ms`, got: ms(3, rate), expected: three, within: 0.000_51 },
  ]),
  { id: 'W7.1', what: 'one frame at 59.94, ms', got: ms(1, '59.94'), expected: 16.6833, within: 0.0001 },
  { id: 'W7.2', what: 'three frames at 25, sound sent direct, ms', got: () => chain() * 1000, expected: 120 },
  { what: 'which is outside BT.1359-1', got: direct('bt1359'), expected: 'bad' },
  { what: 'and R37', got: direct('r37'), expected: 'bad' },
  { what: 'and IS-191', got: direct('is191'), expected: 'bad' },
]);

published({ source: 'group index 1.468 over the speed of light', label: 'derived' }, [
  {
    id: 'W7.4',
    what: '100 m of fibre, ns',
    got: () => propagation_s(100, FIBRE_PROPAGATION.delay_s_per_m) * 1e9,
    expected: 489.7,
    within: 5,
  },
]);

published({ source: 'fibre takes 5 microseconds per km', label: 'common practice' }, [
  {
    what: 'one kilometre, microseconds',
    got: () => propagation_s(1000, FIBRE_PROPAGATION.delay_s_per_m) * 1e6,
    expected: 5,
    percent: 3,
  },
]);
