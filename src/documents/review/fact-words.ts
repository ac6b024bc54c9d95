/** What the properties of a fact are called, and their values as words: as the plan writes them, in the units it shows. */
import { subjectText, targetText } from '../../analysis/subjects.ts';
import {
  formatBytes,
  formatFrames,
  formatFrequency,
  formatLength,
  formatLoss,
  formatPower,
  formatRate,
  formatShare,
  formatTemperature,
  formatTime,
  formatWeight,
  type LengthUnits,
} from '../../physics/display.ts';
import type { FactOf, PortNamesFact } from '../../plan/facts.ts';

/** Names of properties that their key does not say well enough. */
const names: ReadonlyMap<string, string> = new Map([
  ['into', 'plugged into'],
  ['madeOf', 'made of'],
  ['poweredBy', 'powered by'],
  ['draws_w', 'draws'],
  ['poeClass', 'class of power over the network'],
  ['limit_kg', 'greatest weight'],
  ['records_bits_per_second', 'records'],
  ['lasts_s', 'duration'],
  ['bothWays', 'both ways'],
  ['standbyFor', 'standby for'],
  ['insteadOf', 'instead of'],
  ['by', 'laid by'],
  ['shares', 'in the sheath of'],
  ['things', 'holds'],
  ['loose', 'holds loose'],
  ['groups', 'ports'],
  ['joins', 'ports joined'],
  ['routes', 'routes inputs to outputs'],
  ['forwards', 'joins its network ports'],
  ['formats', 'takes'],
  ['accepts', 'takes'],
  ['limit', 'greatest delay'],
  ['loss_db', 'loss'],
  ['strandedShare', 'loses more than solid cable by'],
  ['timingDomain', 'timing domain'],
]);

/** The name of a property: `greatest delay`, `laid by`. */
export function propertyName(key: string): string {
  const words = key
    .replace(/_.*$/, '')
    .replace(/Share$/, '')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase();
  return names.get(key) ?? words;
}

/** A value in words, so that it does not read like the one `beside` it; undefined where nothing is said. */
export function valueText(
  key: string,
  value: unknown,
  units: LengthUnits,
  beside?: unknown,
): string | undefined {
  if (value === undefined || value === false) return undefined;
  if (value === true) return 'yes';
  if (typeof value === 'string') return key === 'reason' || key === 'route' ? `“${value}”` : value;
  if (typeof value === 'number')
    return numberText(key, value, units, typeof beside === 'number' ? beside : undefined);
  if (Array.isArray(value)) {
    const items = value.flatMap((item: unknown) => valueText(key, item, units) ?? []);
    return items.length === 0 ? undefined : items.join(', ');
  }
  return objectText(key, value as object, units);
}

function numberText(key: string, value: number, units: LengthUnits, beside: number | undefined): string {
  if (key.endsWith('_m')) return formatLength(value, units, beside);
  if (key.endsWith('_bits_per_second')) return formatRate(value, beside);
  if (key.endsWith('_kg')) return formatWeight(value, beside);
  if (key.endsWith('_kg_per_m')) return `${formatWeight(value * 100)} in 100 m`;
  if (key.endsWith('_ohm_per_m')) return `${(value * 100).toPrecision(4)} ohm in 100 m`;
  if (key.endsWith('_s_per_m')) return `${formatTime(value)} a metre`;
  if (key.endsWith('_w')) return formatPower(value, beside);
  if (key.endsWith('_c')) return formatTemperature(value);
  if (key.endsWith('_s')) return formatTime(value, beside);
  if (key.endsWith('_hz')) return formatFrequency(value, beside);
  if (key.endsWith('_db')) return formatLoss(value);
  if (key.endsWith('Share')) return formatShare(value);
  if (key.endsWith('_bytes')) return formatBytes(value);
  if (key.endsWith('_a')) return `${value} A`;
  if (key.endsWith('_v')) return `${value} V`;
  if (key.endsWith('_bits')) return `${value} bit`;
  return String(value);
}

type Words<T> = (value: T, units: LengthUnits) => string;

/** Properties, or items of lists, that are objects. */
const objects: { readonly [key: string]: Words<never> } = Object.assign(Object.create(null), {
  groups: portGroup,
  joins: ({ front, rear, interface: face }: FactOf<'kit'>['joins'][number]) =>
    `${range(front)} with ${range(rear)}${face ? ` as ${face}` : ''}`,
  labels: ({ port, text }: FactOf<'node'>['labels'][number]) => `${port} “${text}”`,
  carries: carriage,
  supplies: ({ perPort_w, inAll_w }: NonNullable<FactOf<'kit'>['supplies']>) =>
    `${formatPower(perPort_w)} a port${inAll_w === undefined ? '' : `, ${formatPower(inAll_w)} in all`}`,
  losses: ({ loss_db_per_m, frequency_hz }: FactOf<'cable'>['losses'][number]) =>
    `${formatLoss(loss_db_per_m * 100)} in 100 m${frequency_hz === undefined ? '' : ` at ${formatFrequency(frequency_hz)}`}`,
  reaches: ({ cable, length_m }: FactOf<'interface'>['reaches'][number], units) =>
    `${cable} ${formatLength(length_m, units)}`,
  budgets: ({ loss_db, frequency_hz }: FactOf<'interface'>['budgets'][number]) =>
    `${formatLoss(loss_db)}${frequency_hz === undefined ? '' : ` at ${formatFrequency(frequency_hz)}`}`,
  lanes: ({ count, rate_bits_per_second }: NonNullable<FactOf<'interface'>['lanes']>) =>
    `${count} of ${formatRate(rate_bits_per_second)}`,
  sound: ({ after_s, distance_m }: NonNullable<FactOf<'destination'>['sound']>, units) =>
    [
      after_s === undefined ? '' : `after ${formatTime(after_s)}`,
      distance_m === undefined ? '' : `from ${formatLength(distance_m, units)}`,
    ]
      .filter(Boolean)
      .join(' '),
  streams: ({ rates_bits_per_second, uplinks }: FactOf<'destination'>['streams'][number]) =>
    `${rates_bits_per_second.map((rate) => formatRate(rate)).join(', ')} over ${uplinks.join(', ')}`,
  subject: (subject: FactOf<'accept'>['subject']) => subjectText(subject),
} satisfies Record<string, Words<never> | ((value: never, units: LengthUnits) => string)>);

function objectText(key: string, value: object, units: LengthUnits): string {
  if ('node' in value && 'port' in value) return `${value.node}.${value.port}`;
  if ('thing' in value) return targetText(value as FactOf<'proved'>['target']);
  if ('text' in value && !('port' in value)) return String(value.text);
  if ('port' in value && 'format' in value) return `${value.port} ${(value.format as { text: string }).text}`;
  if ('frames' in value) return formatFrames(Number(value.frames));
  if ('seconds' in value) return formatTime(Number(value.seconds));
  return objects[key]?.(value as never, units) ?? JSON.stringify(value);
}

function portGroup({
  role,
  ports,
  interface: face,
  follows,
  gives,
}: FactOf<'kit'>['groups'][number]): string {
  const word = { input: 'inputs', output: 'outputs', network: 'network' }[role];
  const parts = [
    `${word} ${ports.map(range).join(', ')}`,
    face ? `as ${face}` : '',
    follows ? `follow ${range(follows)}` : '',
    gives ? `gives ${gives.text}` : '',
  ];
  return parts.filter(Boolean).join(' ');
}

function range({ name, low, high }: PortNamesFact): string {
  return low === undefined || high === undefined ? name : `${name}[${low}..${high}]`;
}

function carriage(fact: NonNullable<FactOf<'kit'>['carries']>): string {
  if (fact.kind === 'uncompressed')
    return ['uncompressed', fact.sampling, fact.depth_bits && `${fact.depth_bits} bit`]
      .filter(Boolean)
      .join(' ');
  if ('ratio' in fact) return `compressed ${fact.ratio}:1`;
  if ('bitsPerPixel' in fact) return `compressed to ${fact.bitsPerPixel} bit per pixel`;
  return `compressed at ${formatRate(fact.rate_bits_per_second)}`;
}
