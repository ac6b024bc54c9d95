import {
  budgetReach_m,
  type CoaxLoss,
  coaxLoss_db,
  coaxReach_m,
  fitCoaxLoss,
} from '../../src/physics/coax.ts';
import { type Check, published } from './source.ts';

/** The published pair: 20 dB are used up after 113 m at 742.5 MHz and after 78 m at 1485 MHz. */
const RG6 = fitCoaxLoss([
  { frequency_hz: 742.5e6, loss_db_per_m: 20 / 113 },
  { frequency_hz: 1485e6, loss_db_per_m: 20 / 78 },
]);
const given = (skin_db: number, dielectric_db: number): CoaxLoss => ({ skin_db, dielectric_db, stated: 2 });
const RG6_ROUNDED = given(19.33, 1.405);
const RG59 = given(25.4, 1.2);
const RG11 = given(13.3, 1);

const loss_100 = (cable: CoaxLoss, gigahertz: number) => () => coaxLoss_db(cable, gigahertz * 1e9, 100);
const reach = (cable: CoaxLoss, budget_db: number, gigahertz: number) => () =>
  budgetReach_m(cable, { budget_db, frequency_hz: gigahertz * 1e9 });

published(
  { source: 'trade article of 2020 at tvyvideo.com: 113 m for HD, 78 m for 3G', label: 'published' },
  [
    { what: 'reach at 742.5 MHz within 20 dB, m', got: reach(RG6, 20, 0.7425), expected: 113, within: 0.01 },
    { what: 'reach at 1485 MHz within 20 dB, m', got: reach(RG6, 20, 1.485), expected: 78, within: 0.01 },
    { what: 'k1', got: () => RG6.skin_db, expected: 19.33, within: 0.005 },
    { what: 'k2', got: () => RG6.dielectric_db, expected: 1.405, within: 0.002 },
  ],
);

published({ source: 'practice figures for RG-6 class coax: 12G 70 to 75 m', label: 'common practice' }, [
  { what: '12G within 40 dB, m', got: reach(RG6, 40, 5.94), expected: 72.5, within: 2.5 },
]);

// A general page, 6.4 dB/100 ft at 950 MHz and 9.7 at 2150 MHz, is 21.0 and 31.8 dB/100 m: another cable of the class.
published(
  {
    source: 'a general page on series 6 coax: 6.4 and 9.7 dB per 100 ft at 950 and 2150 MHz',
    label: 'second-hand',
  },
  [
    { what: 'loss at 950 MHz, dB/100 m', got: loss_100(RG6, 0.95), expected: 6.4 / 0.3048, percent: 5 },
    { what: 'loss at 2150 MHz, dB/100 m', got: loss_100(RG6, 2.15), expected: 9.7 / 0.3048, percent: 5 },
  ],
);

/** Per 100 ft at 750 and 1000 MHz. */
const SCTE: readonly (readonly [string, CoaxLoss, number, number])[] = [
  ['59', RG59, 6.97, 8.12],
  ['11', RG11, 3.65, 4.35],
];

published(
  { source: 'ANSI/SCTE 74 limits at 750 and 1000 MHz, dB per 100 ft', label: 'from memory' },
  SCTE.flatMap(([series, cable, at750, at1000]): Check[] => [
    {
      what: `series ${series} at 750 MHz`,
      got: () => loss_100(cable, 0.75)() * 0.3048,
      expected: at750,
      percent: 3,
    },
    {
      what: `series ${series} at 1000 MHz`,
      got: () => loss_100(cable, 1)() * 0.3048,
      expected: at1000,
      percent: 3,
    },
  ]),
);

/** Half clock in GHz; loss of RG-6, RG-59 and RG-11 class, dB per 100 m. */
const LOSSES: readonly (readonly [number, number, number, number])[] = [
  [0.135, 7.3, 9.5, 5],
  [0.7425, 17.7, 22.8, 12.2],
  [1.485, 25.6, 32.7, 17.7],
  [2.97, 37.5, 47.3, 25.9],
  [5.94, 55.5, 69, 38.4],
];

/** Budget, half clock; reach of RG-59, RG-6 and RG-11 class, m. */
const REACHES: readonly (readonly [number, number, number, number, number])[] = [
  [30, 0.135, 316, 411, 597],
  [20, 0.7425, 88, 113, 164],
  [20, 1.485, 61, 78, 113],
  [30, 1.485, 92, 117, 170],
  [40, 2.97, 84, 107, 154],
  [40, 5.94, 58, 72, 104],
];

published(
  {
    source: 'k1 sqrt(f) + k2 f with the coefficients of three classes, computed apart from this project',
    label: 'derived',
  },
  [
    ...LOSSES.flatMap(([f, rg6, rg59, rg11]): Check[] => [
      { what: `RG-6 class at ${f} GHz, dB/100 m`, got: loss_100(RG6, f), expected: rg6, within: 0.051 },
      { what: `RG-59 class at ${f} GHz, dB/100 m`, got: loss_100(RG59, f), expected: rg59, within: 0.051 },
      { what: `RG-11 class at ${f} GHz, dB/100 m`, got: loss_100(RG11, f), expected: rg11, within: 0.051 },
    ]),
    ...REACHES.flatMap(([budget, f, rg59, rg6, rg11]): Check[] => [
      {
        what: `RG-59 class, ${budget} dB at ${f} GHz, m`,
        got: reach(RG59, budget, f),
        expected: rg59,
        within: 0.51,
      },
      {
        what: `RG-6 class, ${budget} dB at ${f} GHz, m`,
        got: reach(RG6, budget, f),
        expected: rg6,
        within: 0.51,
      },
      {
        what: `RG-11 class, ${budget} dB at ${f} GHz, m`,
        got: reach(RG11, budget, f),
        expected: rg11,
        within: 0.51,
      },
    ]),
    {
      id: 'W3.4',
      what: 'RG-6 class at 5.94 GHz, dB/100 m',
      got: loss_100(RG6_ROUNDED, 5.94),
      expected: 55.46,
      within: 0.1,
    },
    {
      id: 'W3.5',
      what: '12G within 40 dB, m',
      got: reach(RG6_ROUNDED, 40, 5.94),
      expected: 72.1,
      percent: 10,
    },
    { id: 'W3.6', what: '3G within 20 dB, m', got: reach(RG6_ROUNDED, 20, 1.485), expected: 78, within: 1 },
    { what: '3G within 30 dB, m', got: reach(RG6_ROUNDED, 30, 1.485), expected: 117, within: 1 },
    {
      what: '6G within 40 dB reaches no further than 3G within 20 dB, m',
      got: () =>
        coaxReach_m(RG6_ROUNDED, { budget_db: 40, frequency_hz: 2.97e9 }, [
          { budget_db: 20, frequency_hz: 1.485e9 },
        ]),
      expected: 78,
      within: 1,
    },
  ],
);
