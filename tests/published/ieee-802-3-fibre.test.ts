import {
  CONNECTION_DB,
  type FibreRun,
  fibreLoss_db,
  judgeFibre,
  SPLICE_DB,
} from '../../src/physics/fibre.ts';
import { type Check, published } from './source.ts';

const short: FibreRun = { length_m: 150, loss_db_per_m: 0.003, connections: 4 };
const typical: FibreRun = { ...short, connection_db: 0.5 };
const long: FibreRun = { length_m: 2000, loss_db_per_m: 0.0004, connections: 2, splices: 1 };
const SR_OM3 = { reach_m: 300, loss_db: 2.6 };
const LR_OS2 = { reach_m: 10_000, loss_db: 6.2 };

published(
  { source: 'TIA-568.3-D highest losses, FOA guideline and open calculators', label: 'second-hand' },
  [
    { what: 'mated connection, dB', got: () => CONNECTION_DB, expected: 0.75 },
    { what: 'splice, dB', got: () => SPLICE_DB, expected: 0.3 },
  ],
);

published(
  { source: 'TIA-568.3-D losses against the channel losses of IEEE 802.3 clause 52', label: 'derived' },
  [
    {
      id: 'W5.1',
      what: '150 m OM3, four connections, dB',
      got: () => fibreLoss_db(short),
      expected: 3.45,
      within: 0.01,
    },
    {
      what: 'which fails although 150 m is within 300 m',
      got: () => judgeFibre(short, SR_OM3).fits,
      expected: false,
    },
    { what: 'the loss decides', got: () => judgeFibre(short, SR_OM3).decided_by, expected: 'loss' },
    {
      id: 'W5.2',
      what: 'the same with connections of 0.5 dB, dB',
      got: () => fibreLoss_db(typical),
      expected: 2.45,
      within: 0.01,
    },
    { what: 'which passes', got: () => judgeFibre(typical, SR_OM3).fits, expected: true },
    {
      what: 'with a margin of, dB',
      got: () => judgeFibre(typical, SR_OM3).margin_db ?? 'none',
      expected: 0.15,
      within: 0.01,
    },
    {
      id: 'W5.3',
      what: '2 km OS2, two connections, one splice, dB',
      got: () => fibreLoss_db(long),
      expected: 2.6,
      within: 0.01,
    },
    { what: 'which passes', got: () => judgeFibre(long, LR_OS2).fits, expected: true },
  ],
);

published(
  {
    source: 'IEEE 802.3 reflector, ieee802.org/3/100GNGOPTX/email/msg00583.html: 0.2375 dB/km',
    label: 'second-hand',
  },
  [
    {
      id: 'W5.6',
      what: '40 km of such fibre with 1.5 dB of connections lose the 11 dB of 10GBASE-ER',
      got: () =>
        ((11 - fibreLoss_db({ length_m: 0, loss_db_per_m: 0, connections: 2, connection_db: 0.75 })) /
          40_000) *
        1000,
      expected: 0.2375,
    },
  ],
);

// The consortium scales from 10 km x 0.4 dB/km = 4.0 dB, a shorter range than the loss budget alone allows.
const onLossyFibre = (loss_db_per_m: number) => () =>
  judgeFibre({ length_m: 0, loss_db_per_m, connections: 0 }, { reach_m: 10_000, loss_db: 4 }).allowed_m;

published({ source: 'tiafotc.org, 40GBASE-LR4 on fibre of more loss', label: 'second-hand' }, [
  { id: 'W5.7', what: 'range at 1.0 dB/km, m', got: onLossyFibre(0.001), expected: 4000 },
  { what: 'range at 0.5 dB/km, m', got: onLossyFibre(0.0005), expected: 8000 },
]);

published({ source: "a maker's router hardware guide, table of link-loss factors", label: 'second-hand' }, [
  {
    id: 'W5.8',
    what: '8 km at 0.5 dB/km, seven connections of 0.5 dB, budget 13 dB: margin, dB',
    got: () =>
      judgeFibre(
        { length_m: 8000, loss_db_per_m: 0.0005, connections: 7, connection_db: 0.5 },
        { reach_m: 80_000, loss_db: 13 },
      ).margin_db ?? 'none',
    expected: 5.5,
  },
]);

/** Reach in m, dB/km, connections in dB, channel loss in dB as tabulated. */
const CHANNELS: readonly (readonly [string, number, number, number, number])[] = [
  ['10GBASE-SR on OM3', 300, 3.5, 1.5, 2.6],
  ['10GBASE-SR on OM4', 400, 3.5, 1.5, 2.9],
  ['25GBASE-SR on OM4', 100, 3.5, 1.5, 1.9],
  ['40GBASE-SR4 on OM4', 150, 3.5, 1, 1.5],
  ['100GBASE-LR4', 10_000, 0.43, 2, 6.3],
  ['40GBASE-LR4', 10_000, 0.47, 2, 6.7],
];

published(
  {
    source: 'IEEE 802.3 channel insertion losses, recomputed from attenuation and connector allowance',
    label: 'second-hand',
  },
  CHANNELS.map(
    ([name, length_m, perKilometre, connectors, expected]): Check => ({
      what: `${name}, dB`,
      got: () =>
        fibreLoss_db({
          length_m,
          loss_db_per_m: perKilometre / 1000,
          connections: 1,
          connection_db: connectors,
        }),
      expected,
      within: 0.051,
    }),
  ),
);
