import {
  formatBytes,
  formatFrames,
  formatLength,
  formatPower,
  formatRate,
  formatShare,
  formatTemperature,
  formatTime,
  formatWeight,
  type LengthUnits,
} from '../../physics/display.ts';
import type { Duration, EndFact, Fact } from '../../plan/facts.ts';
import type { Statement } from '../../plan/plan.ts';
import type { Difference } from './review.ts';

/** What each property of a fact is called; what is not listed is called by its key, in words. */
const words: Readonly<Record<string, string>> = {
  into: 'plugged into',
  madeOf: 'made of',
  length_m: 'length',
  temperature_c: 'temperature',
  current_a: 'current',
  voltage_v: 'voltage',
  poweredBy: 'powered by',
  draws_w: 'power',
  poeClass: 'class of power over the network',
  weight_kg: 'weight',
  limit_kg: 'greatest weight',
  rate_bits_per_second: 'rate',
  records_bits_per_second: 'recording',
  headroomShare: 'headroom',
  sparesShare: 'spares',
  slack_m: 'slack',
  lasts_s: 'duration',
  bothWays: 'both ways',
  standbyFor: 'standby for',
  insteadOf: 'instead of',
  timingDomain: 'timing domain',
  things: 'contents',
  loose: 'loose contents',
  groups: 'ports',
};

/** Property by property, what is said of a thing now and was not before. Names that only changed as such are no difference. */
export function differencesOf(
  before: Statement,
  after: Statement,
  newName: (name: string) => string,
  units: LengthUnits,
): Difference[] {
  const differences: Difference[] = [];
  if (before.label !== after.label)
    differences.push({ what: 'label', before: before.label, after: after.label });
  const [was, is] = [before.fact, after.fact] as unknown as [Values, Values];
  for (const key of new Set([...Object.keys(was), ...Object.keys(is)])) {
    if (key === 'kind' || key === 'name') continue;
    if (same(was[key], is[key], newName)) continue;
    differences.push({
      what: nameOf(key),
      before: textOf(key, was[key], units),
      after: textOf(key, is[key], units),
    });
  }
  return differences;
}

type Values = Readonly<Record<string, unknown>>;

function same(before: unknown, after: unknown, newName: (name: string) => string): boolean {
  const renamed = JSON.stringify(before, (_, part: unknown) =>
    typeof part === 'string' ? newName(part) : part,
  );
  return renamed === JSON.stringify(after);
}

function nameOf(key: string): string {
  return (
    words[key] ??
    key
      .replace(/_[a-z_]+$/, '')
      .replace(/([a-z])([A-Z])/g, '$1 $2')
      .toLowerCase()
  );
}

function textOf(key: string, value: unknown, units: LengthUnits): string | undefined {
  if (value === undefined || (Array.isArray(value) && value.length === 0)) return undefined;
  if (typeof value === 'number') return numberText(key, value, units);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  if (Array.isArray(value)) return listText(key, value, units);
  if (isDuration(value)) return 'frames' in value ? formatFrames(value.frames) : formatTime(value.seconds);
  if (isEnd(value)) return `${value.node}.${value.port}`;
  if (isFormat(value)) return value.text;
  return Object.entries(value as Values)
    .map(([name, part]) => `${nameOf(name)} ${textOf(name, part, units) ?? ''}`)
    .join(', ');
}

function listText(key: string, items: readonly unknown[], units: LengthUnits): string {
  if (items.some((item) => typeof item === 'object' && !isEnd(item) && !isFormat(item) && !isTarget(item)))
    return `${items.length} ${items.length === 1 ? 'entry' : 'entries'}`;
  return items
    .map((item) =>
      isTarget(item) ? [item.thing, item.port].filter(Boolean).join('.') : textOf(key, item, units),
    )
    .join(', ');
}

function numberText(key: string, value: number, units: LengthUnits): string {
  if (key.endsWith('_m')) return formatLength(value, units);
  if (key.endsWith('_bits_per_second')) return formatRate(value);
  if (key.endsWith('_kg')) return formatWeight(value);
  if (key.endsWith('_w')) return formatPower(value);
  if (key.endsWith('_c')) return formatTemperature(value);
  if (key.endsWith('_s')) return formatTime(value);
  if (key.endsWith('Share')) return formatShare(value);
  if (key.endsWith('_bytes')) return formatBytes(value);
  if (key.endsWith('_a')) return `${value} A`;
  if (key.endsWith('_v')) return `${value} V`;
  return String(value);
}

function isDuration(value: object | null): value is Duration {
  return value !== null && ('frames' in value || 'seconds' in value);
}

function isEnd(value: unknown): value is EndFact {
  return typeof value === 'object' && value !== null && 'node' in value && 'port' in value;
}

function isFormat(value: unknown): value is { text: string } {
  return typeof value === 'object' && value !== null && 'text' in value && typeof value.text === 'string';
}

function isTarget(value: unknown): value is { thing: string; port?: string } {
  return typeof value === 'object' && value !== null && 'thing' in value;
}

/** Kinds of statements that say nothing of the show itself: what was found or accepted is told by its own effects. */
export function isTold(fact: Fact): boolean {
  return !['import', 'accept', 'measured', 'proved'].includes(fact.kind);
}
