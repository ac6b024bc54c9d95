/** Twisted pair: loss, and what stranded cords and warm rooms take from a tabulated reach. */
import { formatLength, formatNumber, formatTemperature } from './display.ts';
import { requireLength, requireWithin } from './physics-error.ts';
import { type Explained, makeWorking, type Source, type Working } from './working.ts';

/** Loss of 100 m of solid cable at 20 °C: root x sqrt(f) + linear x f + inverse / sqrt(f) dB, f in MHz. */
export interface PairLoss extends Source {
  readonly root: number;
  readonly linear: number;
  readonly inverse: number;
}

const LOSS_SOURCE: Source = {
  source: 'TIA-568-C.2, as held by an open test-limit program and printed in a cable table',
  label: 'second-hand',
};

/** The categories with a published formula. */
export const PAIR_LOSSES: ReadonlyMap<'cat5e' | 'cat6' | 'cat6a', PairLoss> = new Map([
  ['cat5e', { root: 1.967, linear: 0.023, inverse: 0.05, ...LOSS_SOURCE }],
  ['cat6', { root: 1.808, linear: 0.017, inverse: 0.2, ...LOSS_SOURCE }],
  ['cat6a', { root: 1.82, linear: 0.0091, inverse: 0.25, ...LOSS_SOURCE }],
]);

/** A 100 m channel is 90 m of solid cable and 10 m of cords (TIA-568.2-D, second-hand). */
export const CHANNEL_M = 100;
export const CORDS_M = 10;
export const STRANDED_SOURCE: Source = {
  source:
    'TIA-568 and ISO/IEC 11801: stranded cords lose 20 % (24 AWG) or 50 % (26 AWG) more than solid cable',
  label: 'second-hand',
};
export const TEMPERATURE_SOURCE: Source = {
  source: 'TIA-568-C.2 §6.4.7: 0.4 % per °C above 20, 0.6 % above 40; screened 0.2 %',
  label: 'second-hand',
};
/** The warmest that the standard has factors for. */
export const WARMEST_C = 60;
const COLDEST_C = -60;

/**
 * Loss of solid cable at 20 °C. @throws PhysicsError for frequencies outside 1 to 2000 MHz or impossible lengths
 */
export function pairLoss_db(cable: PairLoss, frequency_hz: number, length_m: number): number {
  const f = requireWithin('frequency', frequency_hz, 1e6, 2e9, 'Hz') / 1e6;
  const root = Math.sqrt(f);
  return ((cable.root * root + cable.linear * f + cable.inverse / root) * requireLength(length_m)) / 100;
}

/**
 * How much more warm cable loses, as a factor on the loss at 20 °C; 1 at or below 20 °C. TIA-568-C.2 §6.4.7
 * (second-hand): unscreened 0.4 % per °C from 20 to 40 and 0.6 % from 40 to 60; screened 0.2 %.
 *
 * @throws PhysicsError above 60 °C, for which no factor is published
 */
export function temperatureFactor(temperature_c: number, screened: boolean): number {
  requireWithin('temperature of a cable', temperature_c, COLDEST_C, WARMEST_C, '°C');
  const above20 = Math.max(0, temperature_c - 20);
  if (screened) return 1 + 0.002 * above20;
  const above40 = Math.max(0, temperature_c - 40);
  return 1 + 0.004 * (above20 - above40) + 0.006 * above40;
}

/**
 * Factor on the loss of a cable that is all stranded, against the channel that a table's reach is made of: 90 m
 * solid and 10 m of cords that lose as much as it does. With 20 % more, 100 m become 85 m (derived).
 *
 * @param excess_share How much more it loses than solid cable: 0.2 for 24 AWG, 0.5 for 26 AWG.
 * @throws PhysicsError for a share that is negative or above 2
 */
export function strandedFactor(excess_share: number): number {
  const cord = 1 + requireWithin('excess loss of stranded cable', excess_share, 0, 2);
  return (cord * CHANNEL_M) / (CHANNEL_M - CORDS_M + CORDS_M * cord);
}

/** What stands against a tabulated reach. */
export interface PairConditions {
  /** Excess loss of stranded cable; undefined or 0 for solid. */
  readonly stranded_share?: number | undefined;
  readonly screened: boolean;
  /** Undefined: not above 20 °C. */
  readonly temperature_c?: number | undefined;
}

/**
 * The allowed length: the tabulated reach divided by the rise of loss, for the whole run.
 *
 * @throws PhysicsError as the factors
 */
export function pairReach_m(tabulated_m: number, conditions: PairConditions): number {
  const { stranded_share = 0, screened, temperature_c = 20 } = conditions;
  const factor = strandedFactor(stranded_share) * temperatureFactor(temperature_c, screened);
  return requireLength(tabulated_m) / factor;
}

/** `pairReach_m` with its working. `table` says where the tabulated reach comes from. */
export function explainPairReach(tabulated_m: number, conditions: PairConditions, table: Source): Explained {
  const value = pairReach_m(tabulated_m, conditions);
  const { stranded_share = 0, screened, temperature_c = 20 } = conditions;
  const parts: [string, string][] = [['table', formatLength(tabulated_m)]];
  const steps: Working[] = [];
  if (stranded_share > 0) {
    parts.push(['stranded', formatNumber(strandedFactor(stranded_share), 3)]);
    steps.push(explainStranded(stranded_share));
  }
  if (temperature_c > 20) {
    parts.push(['warmth', formatNumber(temperatureFactor(temperature_c, screened), 3)]);
    steps.push(explainTemperature(temperature_c, screened));
  }
  const working = makeWorking({
    figure: 'reach on this twisted pair',
    rule: steps.length === 0 ? 'as tabulated' : 'the tabulated reach divided by the rise of loss',
    formula: steps.length === 0 ? '' : parts.map(([name]) => name).join(' / '),
    inputs: steps.length === 0 ? [] : parts,
    result: formatLength(value),
    ...table,
    steps,
  });
  return { value, working };
}

function explainStranded(share: number): Working {
  return makeWorking({
    figure: 'rise of loss in stranded cable',
    rule: 'all of it is stranded, where a channel has 90 m solid and 10 m stranded',
    formula: '100 x cord / (90 + 10 x cord)',
    inputs: [['cord', formatNumber(1 + share, 2)]],
    result: formatNumber(strandedFactor(share), 3),
    ...STRANDED_SOURCE,
  });
}

function explainTemperature(temperature_c: number, screened: boolean): Working {
  const above40 = screened ? 0 : Math.max(0, temperature_c - 40);
  const inputs: [string, string][] = [['above20', formatNumber(temperature_c - 20 - above40, 1)]];
  if (!screened) inputs.push(['above40', formatNumber(above40, 1)]);
  return makeWorking({
    figure: `rise of loss at ${formatTemperature(temperature_c)}`,
    rule: screened ? 'screened cable' : 'unscreened cable',
    formula: screened ? '1 + 0.002 x above20' : '1 + 0.004 x above20 + 0.006 x above40',
    inputs,
    result: formatNumber(temperatureFactor(temperature_c, screened), 3),
    ...TEMPERATURE_SOURCE,
  });
}
