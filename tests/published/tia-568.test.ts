import { pairDelay_s_per_m } from '../../src/physics/delay.ts';
import { PAIR_LOSSES, pairLoss_db, pairReach_m, temperatureFactor } from '../../src/physics/twisted-pair.ts';
import { type Check, published } from './source.ts';

type Category = 'cat5e' | 'cat6' | 'cat6a';
const loss_100 = (category: Category, megahertz: number) => () =>
  pairLoss_db(PAIR_LOSSES.get(category)!, megahertz * 1e6, 100);

published(
  {
    source: 'TIA-568-C cable table, what-when-how.com LAN-Wiring-398, Cat 5e, dB per 100 m',
    label: 'second-hand',
  },
  [
    {
      id: 'W5.9',
      what: 'at 62.5 MHz (printed 17.0)',
      got: loss_100('cat5e', 62.5),
      expected: 16.99,
      within: 0.05,
    },
    {
      id: 'W5.10',
      what: 'at 31.25 MHz (printed 11.7)',
      got: loss_100('cat5e', 31.25),
      expected: 11.72,
      within: 0.05,
    },
    { what: 'at 100 MHz', got: loss_100('cat5e', 100), expected: 22, within: 0.05 },
  ],
);

published(
  {
    source: 'TIA-568-C.2 Table 56 as held by an open test-limit program, dB per 100 m',
    label: 'second-hand',
  },
  [
    { what: 'Cat 6 at 250 MHz', got: loss_100('cat6', 250), expected: 32.8, within: 0.06 },
    { what: 'Cat 6A at 500 MHz', got: loss_100('cat6a', 500), expected: 45.3, within: 0.06 },
  ],
);

published(
  {
    source: 'TIA-568-C.2 §6.4.7 quoted at grouper.ieee.org/groups/802/3/4PPOE/email/msg00302.html',
    label: 'second-hand',
  },
  [
    {
      what: 'unscreened, 20 to 40 °C, per °C',
      got: () => (temperatureFactor(40, false) - 1) / 20,
      expected: 0.004,
      within: 1e-9,
    },
    {
      what: 'unscreened, 40 to 60 °C, per °C',
      got: () => (temperatureFactor(60, false) - temperatureFactor(40, false)) / 20,
      expected: 0.006,
      within: 1e-9,
    },
    {
      what: 'screened, 20 to 60 °C, per °C',
      got: () => (temperatureFactor(60, true) - 1) / 40,
      expected: 0.002,
      within: 1e-9,
    },
    {
      id: 'W5.11',
      what: 'Cat 5e, 100 m, 100 MHz at 60 °C, dB',
      got: () => loss_100('cat5e', 100)() * temperatureFactor(60, false),
      expected: 26.37,
      within: 0.05,
    },
  ],
);

/** Length of a permanent link that has 90 m at 20 °C. */
const permanent =
  (temperature_c: number, screened = false) =>
  () =>
    pairReach_m(90, { screened, temperature_c });

published({ source: "TIA-568 length table in a test-equipment maker's note", label: 'second-hand' }, [
  {
    id: 'W5.4',
    what: 'unscreened at 40 °C, m (by division 83.3)',
    got: permanent(40),
    expected: 84,
    within: 1,
  },
]);

published({ source: 'TIA-568 length table', label: 'from memory' }, [
  { id: 'W5.5', what: 'unscreened at 60 °C, m', got: permanent(60), expected: 75, within: 1 },
  ...(
    [
      [25, 89],
      [30, 87],
      [50, 79.5],
    ] as const
  ).map(
    ([temperature_c, expected]): Check => ({
      what: `unscreened at ${temperature_c} °C, m`,
      got: permanent(temperature_c),
      expected,
      within: 1,
    }),
  ),
  { what: 'screened at 40 °C, m', got: permanent(40, true), expected: 87, within: 1 },
  { what: 'screened at 60 °C, m', got: permanent(60, true), expected: 83, within: 1 },
]);

published(
  { source: 'TIA-568 and ISO/IEC 11801: channel of 90 m and 10 m, cords 20 % more', label: 'derived' },
  [
    {
      what: 'a channel made of one stranded cord, m',
      got: () => pairReach_m(100, { screened: false, stranded_share: 0.2 }),
      expected: 85,
    },
  ],
);

published(
  {
    source: 'TIA-568 delay table, what-when-how.com LAN-Wiring-320 Table 12.7, ns per 100 m',
    label: 'second-hand',
  },
  [
    ...(
      [
        [1, 570],
        [100, 538],
      ] as const
    ).map(
      ([megahertz, expected]): Check => ({
        what: `at ${megahertz} MHz`,
        got: () => pairDelay_s_per_m(megahertz * 1e6) * 100e9,
        expected,
        within: 0.5,
      }),
    ),
    { id: 'W7.6', what: 'at 10 MHz', got: () => pairDelay_s_per_m(10e6) * 100e9, expected: 545.4, within: 1 },
  ],
);
