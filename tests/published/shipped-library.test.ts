/** The tables of reach and loss are data of the shipped library, written in the plan language; its text is read here. */
import { readdirSync, readFileSync } from 'node:fs';
import { type Check, type Label, published } from './source.ts';

const FOLDER = new URL('../../src/language/library/', import.meta.url);
const TEXT = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.feedplot'))
  .map((name) => readFileSync(new URL(name, FOLDER), 'utf8'))
  .join('\n');

/** The body of `interface name "…" { … }` or of a cable. */
function body(name: string): string {
  return new RegExp(`^(?:interface|cable) ${name} .*\\{\\n([\\s\\S]*?)^\\}`, 'm').exec(TEXT)?.[1] ?? '';
}

/** What stands behind `reach cable` at an interface, up to its source. */
const reach = (interfaceName: string, cable: string) => () =>
  new RegExp(`^ *reach ${cable} ([^"\\n]*)`, 'm').exec(body(interfaceName))?.[1]?.trim() ?? 'none';

const setting = (name: string, words: string) => () =>
  new RegExp(`^ *${words} ([^"\\n]*)`, 'm').exec(body(name))?.[1]?.trim() ?? 'none';

type ReachRow = readonly [interfaceName: string, cable: string, expected: string];

function reaches(source: string, label: Label, rows: readonly ReachRow[]): void {
  published(
    { source, label },
    rows.map(
      ([interfaceName, cable, expected]): Check => ({
        what: `${interfaceName} over ${cable}`,
        got: reach(interfaceName, cable),
        expected,
      }),
    ),
  );
}

reaches('kb.wisc.edu/ns/page.php?id=7829: IEEE 802.3 clauses 25 and 40', 'second-hand', [
  ['ethernet_1g_t', 'cat5e', '100 m'],
  ['ethernet_1g_t', 'cat6', '100 m'],
  ['ethernet_1g_t', 'cat6a', '100 m'],
]);

reaches('IEEE 802.3 clause 126, 2.5GBASE-T and 5GBASE-T', 'from memory', [
  ['ethernet_2g5_t', 'cat5e', '100 m from memory'],
  ['ethernet_2g5_t', 'cat6', '100 m from memory'],
  ['ethernet_5g_t', 'cat5e', '100 m from memory'],
  ['ethernet_5g_t', 'cat6', '100 m from memory'],
]);

reaches('IEEE 802.3 clause 55, 10GBASE-T; TIA TSB-155-A on Cat 6', 'second-hand', [
  ['ethernet_10g_t', 'cat6a', '100 m'],
  ['ethernet_10g_t', 'cat6', '55 m good 37 m'],
  ['ethernet_10g_t', 'cat6_screened', '100 m'],
  ['ethernet_10g_t', 'cat5e', 'none'],
]);

reaches('IEEE 802.3 clause 113, 25GBASE-T and 40GBASE-T', 'second-hand', [
  ['ethernet_25g_t', 'cat8', '30 m'],
  ['ethernet_40g_t', 'cat8', '30 m'],
]);

// One row a fibre of each physical layer; where reach and loss are founded differently, the weaker label counts.
reaches(
  'IEEE 802.3 fibre layers, reach and channel loss (clauses 38, 52, 68, 86, 87, 88, 95, 112)',
  'second-hand',
  [
    ['ethernet_1g_sx', 'om1', '275 m loss 2.6 dB'],
    ['ethernet_1g_sx', 'om2', '550 m loss 3.56 dB'],
    ['ethernet_10g_sr', 'om1', '33 m loss 2.4 dB'],
    ['ethernet_10g_sr', 'om2', '82 m loss 2.3 dB'],
    ['ethernet_10g_sr', 'om3', '300 m loss 2.6 dB'],
    ['ethernet_10g_sr', 'om4', '400 m loss 2.9 dB'],
    ['ethernet_10g_lrm', 'om1', '220 m loss 1.9 dB'],
    ['ethernet_10g_lrm', 'om2', '220 m loss 1.9 dB'],
    ['ethernet_10g_lrm', 'om3', '220 m loss 1.9 dB'],
    ['ethernet_10g_lr', 'os2', '10 km loss 6.2 dB'],
    ['ethernet_10g_er', 'os2', '40 km good 30 km loss 11 dB'],
    ['ethernet_25g_sr', 'om4', '100 m loss 1.9 dB'],
    ['ethernet_40g_sr4', 'om4', '150 m loss 1.5 dB'],
    ['ethernet_40g_lr4', 'os2', '10 km loss 6.7 dB'],
    ['ethernet_100g_sr4', 'om4', '100 m loss 1.9 dB'],
    ['ethernet_100g_lr4', 'os2', '10 km loss 6.3 dB'],
  ],
);

reaches('IEEE 802.3 fibre layers, channel loss (clauses 38, 86, 95, 112, 114, 140)', 'from memory', [
  ['ethernet_1g_lx', 'om1', '550 m loss 2.35 dB from memory'],
  ['ethernet_1g_lx', 'om2', '550 m loss 2.35 dB from memory'],
  ['ethernet_1g_lx', 'os2', '5 km loss 4.57 dB from memory'],
  ['ethernet_25g_sr', 'om3', '70 m loss 1.8 dB from memory'],
  ['ethernet_25g_sr', 'om5', '100 m loss 1.9 dB from memory'],
  ['ethernet_25g_lr', 'os2', '10 km loss 6.3 dB from memory'],
  ['ethernet_40g_sr4', 'om3', '100 m loss 1.9 dB from memory'],
  ['ethernet_100g_sr4', 'om3', '70 m loss 1.8 dB from memory'],
  ['ethernet_100g_sr4', 'om5', '100 m loss 1.9 dB from memory'],
  ['ethernet_100g_dr', 'os2', '500 m loss 3 dB from memory'],
]);

reaches(
  'fowiki.com/b/faq-40g-optical-network and open notes: direct attach of 40 and 100 Gb/s',
  'second-hand',
  [
    ['ethernet_40g_cr4', 'dac_copper', '7 m'],
    ['ethernet_100g_cr4', 'dac_copper', '5 m'],
  ],
);

reaches('direct attach of 10 and 25 Gb/s: SFF-8431 practice, IEEE 802.3 clause 110', 'from memory', [
  ['ethernet_10g_cr', 'dac_copper', '7 m from memory'],
  ['ethernet_25g_cr', 'dac_copper', '5 m good 3 m from memory'],
]);

reaches('lengths of passive HDMI cable: 10 to 15, 5 to 7.5, 3 to 5 m', 'common practice', [
  ['hdmi_1_4', 'hdmi_copper', '15 m good 10 m'],
  ['hdmi_2_0', 'hdmi_copper', '7.5 m good 5 m'],
  ['hdmi_2_1', 'hdmi_copper', '5 m good 3 m'],
]);

published(
  {
    source: 'SMPTE ST 292-1, 424, 2081-1, 2082-1: cable loss mentioned for receivers, the stricter rule',
    label: 'second-hand',
  },
  [
    { what: 'HD-SDI', got: setting('sdi_hd', 'budget'), expected: '20 dB at 742.5 MHz' },
    { what: '3G-SDI', got: setting('sdi_3g', 'budget'), expected: '20 dB at 1485 MHz' },
    { what: '6G-SDI', got: setting('sdi_6g', 'budget'), expected: '40 dB at 2970 MHz' },
    { what: '12G-SDI', got: setting('sdi_12g', 'budget'), expected: '40 dB at 5940 MHz' },
  ],
);

/** Fibre losses at their two wavelengths, in nm. */
const FIBRES: readonly (readonly [string, Label, string, readonly (readonly [number, string])[]])[] = [
  [
    'TIA-568.3-D in open calculators: OM1 and OM2',
    'second-hand',
    'om1',
    [
      [850, '3.5 dB per km'],
      [1300, '1.5 dB per km'],
    ],
  ],
  [
    'TIA-568.3-D in open calculators: OM1 and OM2',
    'second-hand',
    'om2',
    [
      [850, '3.5 dB per km'],
      [1300, '1.5 dB per km'],
    ],
  ],
  [
    'TIA-568.3-D: OM3, OM4 and OM5',
    'from memory',
    'om3',
    [
      [850, '3 dB per km'],
      [1300, '1.5 dB per km'],
    ],
  ],
  [
    'TIA-568.3-D: OM3, OM4 and OM5',
    'from memory',
    'om4',
    [
      [850, '3 dB per km'],
      [1300, '1.5 dB per km'],
    ],
  ],
  [
    'TIA-568.3-D: OM3, OM4 and OM5',
    'from memory',
    'om5',
    [
      [850, '3 dB per km'],
      [1300, '1.5 dB per km'],
    ],
  ],
  [
    'tiafotc.org and vti.net.au/node/12611: OS2',
    'second-hand',
    'os2',
    [
      [1310, '0.4 dB per km'],
      [1550, '0.4 dB per km'],
    ],
  ],
];

for (const [source, label, cable, losses] of FIBRES) {
  published(
    { source, label },
    losses.map(
      ([nanometres, expected]): Check => ({
        what: `${cable} at ${nanometres} nm`,
        got: () => new RegExp(`^ *loss (.*) at ${nanometres} nm`, 'm').exec(body(cable))?.[1] ?? 'none',
        expected,
      }),
    ),
  );
}

published(
  { source: 'trade article of 2020 at tvyvideo.com: 113 m for HD, 78 m for 3G', label: 'published' },
  [
    {
      what: 'rg6 at 742.5 MHz',
      got: () => /loss (20 dB per 113 m) at 742.5 MHz/.exec(body('rg6'))?.[1] ?? 'none',
      expected: '20 dB per 113 m',
    },
    {
      what: 'rg6 at 1485 MHz',
      got: () => /loss (20 dB per 78 m) at 1485 MHz/.exec(body('rg6'))?.[1] ?? 'none',
      expected: '20 dB per 78 m',
    },
  ],
);
