/** Mains circuits. Planning values only: the local code and a qualified person decide. */
import { formatCurrent, formatNumber, formatPower, formatVoltage } from './display.ts';
import { requireLength, requireWithin } from './physics-error.ts';
import { type Explained, makeWorking, type Source } from './working.ts';

/** A load that stays for hours may use 80 % of a breaker. */
export const CONTINUOUS_SOURCE: Source = {
  source:
    'NEC 210.19(A) and 210.20(A): breaker at 125 % of a continuous load; no IEC rule. Local code decides',
  label: 'second-hand',
};
export const DROP_SOURCE: Source = { source: "Ohm's law over both conductors", label: 'derived' };
/** Guidance for the drop of a branch: NEC informational note 210.19(A) No. 4 (second-hand). */
export const BRANCH_DROP_SHARE = 0.03;
/** Guidance for the whole drop: NEC informational note 215.2(A) No. 2 (second-hand). */
export const TOTAL_DROP_SHARE = 0.05;
/** Heat: BTU/h for each watt (derived from the definition of the BTU). */
export const BTU_PER_HOUR_PER_W = 3.412;

/** Ohm per km at 20 °C. IEC 60228 class 2 (fixed wiring) and class 5 (flexible cords), plain copper (second-hand). */
export const CONDUCTORS_OHM_PER_KM: Readonly<Record<'class2' | 'class5', ReadonlyMap<number, number>>> = {
  class2: new Map([
    [1.5, 12.1],
    [2.5, 7.41],
    [4, 4.61],
  ]),
  class5: new Map([
    [1.5, 13.3],
    [2.5, 7.98],
    [4, 4.95],
  ]),
};

/** Greatest continuous current of a breaker: 80 %. @throws PhysicsError for ratings outside 0.1 to 10,000 A */
export function continuousLimit_a(rating_a: number): number {
  // Times 4 / 5, because 0.8 is no binary fraction: 16 A give 12.8 A.
  return (requireWithin('circuit rating', rating_a, 0.1, 10_000, 'A') * 4) / 5;
}

/** Greatest continuous power of a circuit at power factor 1. @throws PhysicsError */
export function continuousLimit_w(rating_a: number, voltage_v: number): number {
  return (requireWithin('circuit rating', rating_a, 0.1, 10_000, 'A') * requireVoltage(voltage_v) * 4) / 5;
}

/** Smallest breaker for a continuous load: 125 % of it. @throws PhysicsError */
export function breakerFor_a(continuous_a: number): number {
  return requireWithin('load current', continuous_a, 0, 10_000, 'A') * 1.25;
}

/** Current of a single-phase load: P / (V x power factor). @throws PhysicsError for a power factor outside 0.1 to 1 */
export function current_a(power_w: number, voltage_v: number, power_factor = 1): number {
  requireWithin('power', power_w, 0, 1e8, 'W');
  return power_w / (requireVoltage(voltage_v) * requireWithin('power factor', power_factor, 0.1, 1));
}

/** Voltage lost along a cable: 2 L I R single phase, sqrt(3) L I R three phase. @throws PhysicsError */
export function voltageDrop_v(
  length_m: number,
  load_a: number,
  conductor_ohm_per_km: number,
  phases: 1 | 3 = 1,
): number {
  requireLength(length_m);
  requireWithin('load current', load_a, 0, 10_000, 'A');
  requireWithin('conductor resistance', conductor_ohm_per_km, 0, 1e5, 'ohm per km');
  return ((phases === 3 ? Math.sqrt(3) : 2) * length_m * load_a * conductor_ohm_per_km) / 1000;
}

/** Conductor resistance at another temperature: 1 + 0.004 (T - 20) (IEC 60228, second-hand). @throws PhysicsError */
export function warmConductor_ohm_per_km(at20_ohm_per_km: number, temperature_c: number): number {
  return (
    at20_ohm_per_km *
    (1 + 0.004 * (requireWithin('conductor temperature', temperature_c, -60, 200, '°C') - 20))
  );
}

/**
 * Resistance of a copper conductor by American wire gauge at 20 °C: diameter 92^((36 - n) / 39) / 200 inch, copper
 * of 58 S m/mm2 (GNU `units` 2.22, published; resistance derived).
 *
 * @throws PhysicsError for a gauge outside 0 to 40
 */
export function gauge_ohm_per_km(gauge: number): number {
  requireWithin('wire gauge', gauge, 0, 40, 'AWG');
  const diameter_mm = (25.4 / 200) * 92 ** ((36 - gauge) / 39);
  return 1000 / (58 * (Math.PI / 4) * diameter_mm ** 2);
}

/** Heat that a load gives off to the room. @throws PhysicsError */
export function heat_btu_per_hour(power_w: number): number {
  return requireWithin('power', power_w, 0, 1e8, 'W') * BTU_PER_HOUR_PER_W;
}

function requireVoltage(voltage_v: number): number {
  return requireWithin('circuit voltage', voltage_v, 1, 100_000, 'V');
}

/** `continuousLimit_w` with its working. */
export function explainContinuousLimit(rating_a: number, voltage_v: number): Explained {
  const value = continuousLimit_w(rating_a, voltage_v);
  const working = makeWorking({
    figure: 'greatest continuous load of the circuit',
    rule: 'a load of three hours or more at most 80 % of the breaker; power factor 1. The local code and a qualified person decide',
    formula: 'rating x voltage x 80 %',
    inputs: [
      ['rating', formatCurrent(rating_a)],
      ['voltage', formatVoltage(voltage_v)],
    ],
    result: formatPower(value),
    ...CONTINUOUS_SOURCE,
  });
  return { value, working };
}

/** `voltageDrop_v` with its working. `conductor` says where the resistance comes from. */
export function explainVoltageDrop(
  length_m: number,
  load_a: number,
  conductor_ohm_per_km: number,
  phases: 1 | 3,
  conductor: Source,
): Explained {
  const value = voltageDrop_v(length_m, load_a, conductor_ohm_per_km, phases);
  const working = makeWorking({
    figure: 'voltage lost along the cable',
    rule: phases === 3 ? 'three phases' : 'single phase, there and back',
    formula: `${phases === 3 ? 'sqrt(3)' : '2'} x length x current x resistance`,
    inputs: [
      ['length', `${formatNumber(length_m / 1000)} km`],
      ['current', formatCurrent(load_a)],
      ['resistance', `${formatNumber(conductor_ohm_per_km, 2)} ohm/km`],
    ],
    result: `${formatNumber(value, 2)} V`,
    source: `${DROP_SOURCE.source}; ${conductor.source}`,
    label: conductor.label,
  });
  return { value, working };
}
