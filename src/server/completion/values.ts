import type { Analysis } from '../../analysis/model.ts';
import { catalogue } from '../../checks/catalogue.ts';
import { formatRate } from '../../physics/display.ts';
import { flowLoads } from '../../physics/flows.ts';
import { type Dimension, UNITS } from '../../physics/quantity.ts';
import { completeFormat, parseFormat } from '../../physics/raster.ts';
import { checkHover } from '../hover/check-hover.ts';
import { formatHover } from '../hover/kind-hovers.ts';
import { withoutWorkings } from '../hover/markdown.ts';
import { type Asked, CompletionItemKind, lastOf, type Offer } from './asked.ts';

const rasters = ['1080p', '2160p', '720p', '1080i'];
const rates = ['23.98', '24', '25', '29.97', '30', '50', '59.94', '60'];
/** What laptops send. */
const laptopFormats = ['1920x1200p60', '1920x1080p60', '1280x720p60', '2560x1440p60', '3840x2160p60'];

/** Formats with their rate on the network, those at the house rate first. */
export function formatOffers({ analysis }: Asked): Offer[] {
  const houseRate = analysis?.settings.statement?.fact.rate;
  const broadcast = rasters.flatMap((raster) =>
    rates
      .filter((rate) => !raster.endsWith('i') || ['50', '59.94', '60'].includes(rate))
      .map((rate) => raster + rate),
  );
  return [...broadcast, ...laptopFormats].map((text) => ({
    label: text,
    kind: CompletionItemKind.EnumMember,
    detail: networkRate(analysis, text),
    documentation: analysis && withoutWorkings(formatHover(analysis, parseFormat(text))),
    group: houseRate !== undefined && text.endsWith(`p${houseRate}`) && !text.includes('x') ? 1 : 2,
  }));
}

function networkRate(analysis: Analysis | undefined, text: string): string {
  const { packing = 'equal', tagged = false } = analysis?.settings ?? {};
  const format = completeFormat(parseFormat(text), 'network');
  const { total_bits_per_second } = flowLoads(format, { kind: 'uncompressed', packing }, tagged);
  return `${formatRate(total_bits_per_second)} on the network`;
}

/** What kind of quantity follows a word. */
const dimensions: Record<string, readonly Dimension[]> = {
  over: ['length'],
  run: ['length'],
  slack: ['length'],
  of: ['length'],
  sound: ['time', 'length'],
  after: ['time'],
  from: ['length'],
  delay: ['frames', 'time'],
  within: ['frames', 'time'],
  lasts: ['time'],
  headroom: ['share'],
  spares: ['share'],
  circuit: ['current', 'voltage'],
  draws: ['power'],
  poe: ['power'],
  weighs: ['weight'],
  up: ['weight'],
  records: ['data rate'],
  streams: ['data rate'],
  uplink: ['data rate'],
  carries: ['data rate'],
  lanes: ['data rate'],
  loss: ['loss'],
  budget: ['loss'],
  reach: ['length'],
  good: ['length'],
  clock: ['frequency'],
  wavelength: ['length'],
  resistance: ['resistance'],
  measured: ['length', 'frames', 'time', 'data rate'],
  stranded: ['share'],
  link: ['length'],
};

/** Units that are written in a show; the others are read too. */
const usual = new Set([
  'm',
  'ft',
  'km',
  'frames',
  'ms',
  's',
  'h',
  '%',
  'A',
  'V',
  'W',
  'kg',
  'g',
  'lb',
  'Mb/s',
  'Gb/s',
  'MHz',
  'GHz',
  'dB',
  'ohm',
  'nm',
]);

/** Units of the quantity that is being written. */
export function unitOffers(asked: Asked): Offer[] {
  const after = lastOf(asked, Object.keys(dimensions));
  const wanted = after === undefined ? [] : (dimensions[after] ?? []);
  const one = asked.where.before.at(-1)?.image === '1';
  return UNITS.filter(({ symbol, dimension }) => {
    if (symbol === 'nm') return after === 'wavelength';
    if (dimension === 'frames') return wanted.includes(dimension) && symbol === (one ? 'frame' : 'frames');
    return usual.has(symbol) && wanted.includes(dimension);
  }).map(({ symbol, dimension }) => ({
    label: symbol,
    kind: CompletionItemKind.Unit,
    detail: dimension,
    group: 1,
  }));
}

/** The words that a setting knows. */
const settingWords: Record<string, readonly (readonly [word: string, means: string])[]> = {
  'PlanHead.units': [
    ['metric', 'metres'],
    ['feet', 'feet'],
  ],
  'PlanHead.packings': [
    ['equal', 'equal packets for every row'],
    ['block', 'blocks of 180 octets'],
  ],
  'PlanHead.lipsyncs': [
    ['bt1359', 'ITU-R BT.1359-1'],
    ['r37', 'EBU R 37'],
    ['is191', 'ATSC IS-191'],
  ],
  'PlanHead.currencies': [
    ['EUR', 'euro'],
    ['USD', 'US dollar'],
    ['GBP', 'pound sterling'],
    ['CHF', 'Swiss franc'],
    ['JPY', 'yen'],
  ],
};

export function settingOffers(slot: string): Offer[] {
  return (settingWords[slot] ?? []).map(([label, detail]) => ({
    label,
    kind: CompletionItemKind.EnumMember,
    detail,
    group: 1,
  }));
}

/** The day of the show, and today. */
export function dateOffers({ analysis }: Asked, today: string): Offer[] {
  const shown = analysis?.settings.statement?.fact.date;
  const dates = new Map([[today, 'today']]);
  if (shown) dates.set(shown, 'the day of the event');
  return [...dates].map(([label, detail]) => ({ label, kind: CompletionItemKind.Value, detail, group: 1 }));
}

/** What is found and can be accepted, as whole lines; then every check by its name. */
export function acceptOffers({ plan }: Asked): Offer[] {
  const found = (plan?.findings ?? []).flatMap(({ check, subject, message }) =>
    subject === null
      ? []
      : [
          {
            label: `${check} on ${subject}`,
            kind: CompletionItemKind.Event,
            documentation: message,
            text: `${check} on ${subject} "why it is acceptable"`,
            group: 1,
          },
        ],
  );
  const checks = catalogue.map(
    ({ name, summary }): Offer => ({
      label: name,
      kind: CompletionItemKind.Constant,
      detail: summary,
      documentation: checkHover(name),
      group: 3,
    }),
  );
  return [...found, ...checks];
}
