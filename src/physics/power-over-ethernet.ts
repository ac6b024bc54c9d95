/** Power over the network cable: what the supply must give and what arrives. */
import {
  formatCurrent,
  formatLength,
  formatNumber,
  formatPower,
  formatResistance,
  formatVoltage,
} from './display.ts';
import { PhysicsError, requireLength, requireWhole, requireWithin } from './physics-error.ts';
import { type Explained, makeWorking, type Source, type Working } from './working.ts';

/** A class of powered devices (IEEE 802.3af, at and bt). */
export interface PowerClass extends Source {
  readonly class: number;
  readonly type: 1 | 2 | 3 | 4;
  /** What the supply sets aside for it. */
  readonly supply_w: number;
  /** The least voltage of a supply of this type. */
  readonly supply_v: number;
  /** Loop resistance of the 100 m channel that the class is made for. */
  readonly channel_ohm: number;
  /** What the device may draw. */
  readonly device_w: number;
  readonly pairs: 2 | 4;
}

export const POWER_CLASS_SOURCE: Source = {
  source: 'IEEE 802.3af-2003, 802.3at-2009, 802.3bt-2018, class table',
  label: 'second-hand',
};
/** Confirmed by computation: they give every published device power within 0.06 W. */
export const CHANNEL_RESISTANCE_SOURCE: Source = {
  source:
    'channel resistance of 20, 12.5 and 6.25 ohm in IEEE 802.3, scaled with length; it reproduces the device power of every class',
  label: 'from memory',
};

function powerClass(
  number: number,
  type: 1 | 2 | 3 | 4,
  supply_w: number,
  supply_v: number,
  channel_ohm: number,
  device_w: number,
): PowerClass {
  const pairs = number <= 4 ? 2 : 4;
  return { class: number, type, supply_w, supply_v, channel_ohm, device_w, pairs, ...POWER_CLASS_SOURCE };
}

/** Classes 0 to 8, at their own place. */
export const POWER_CLASSES: readonly PowerClass[] = [
  powerClass(0, 1, 15.4, 44, 20, 12.95),
  powerClass(1, 1, 4, 44, 20, 3.84),
  powerClass(2, 1, 7, 44, 20, 6.49),
  powerClass(3, 1, 15.4, 44, 20, 12.95),
  powerClass(4, 2, 30, 50, 12.5, 25.5),
  powerClass(5, 3, 45, 50, 6.25, 40),
  powerClass(6, 3, 60, 50, 6.25, 51),
  powerClass(7, 4, 75, 52, 6.25, 62),
  powerClass(8, 4, 90, 52, 6.25, 71.3),
];

/** The class with this number. @throws PhysicsError for anything but 0 to 8 */
export function powerClassOf(number: number): PowerClass {
  return POWER_CLASSES[requireWhole('class of powered devices', number, 0, 8)]!;
}

/** The channel that a class's resistance is for. */
const CHANNEL_M = 100;
const CONDUCTOR_SOURCE: Source = {
  source: 'conductor resistance of the cable, series and parallel',
  label: 'derived',
};

/**
 * Loop resistance of a length of cable, there and back: the class's channel resistance scaled with the length, which
 * allows for connectors; or, where that is more, what the conductors of a named cable have (a thin cord).
 *
 * @throws PhysicsError for a length or resistance that cannot be
 */
export function loopResistance_ohm(power: PowerClass, length_m: number, conductor_ohm_per_m = 0): number {
  const channel_ohm = (power.channel_ohm * requireLength(length_m)) / CHANNEL_M;
  return Math.max(channel_ohm, conductorLoop_ohm(power, length_m, conductor_ohm_per_m));
}

/** Half of the pairs carry each direction, two conductors a pair: as many conductors side by side as pairs (derived). */
function conductorLoop_ohm(power: PowerClass, length_m: number, conductor_ohm_per_m: number): number {
  return (
    (2 * requireWithin('conductor resistance', conductor_ohm_per_m, 0, 10, 'ohm per m') * length_m) /
    power.pairs
  );
}

/** What arrives at the far end. */
export interface Delivered {
  readonly device_w: number;
  readonly device_v: number;
  readonly current_a: number;
}

/** What the supply must give for a device. */
export interface Sourced extends Delivered {
  readonly supply_w: number;
}

/**
 * Power and voltage at the far end when the supply gives a power at a voltage: I = P / V; P - I² R; V - I R.
 *
 * @throws PhysicsError when the cable would use up all of it
 */
export function delivered(supply_w: number, supply_v: number, loop_ohm: number): Delivered {
  checkSupply(supply_v, loop_ohm);
  const current_a = requireWithin('supplied power', supply_w, 0, 1e6, 'W') / supply_v;
  const device_v = supply_v - current_a * loop_ohm;
  if (device_v <= 0) throw tooMuch(supply_w, supply_v, loop_ohm);
  return { device_w: device_v * current_a, device_v, current_a };
}

/**
 * Power that the supply must give so that the device gets its draw: the smaller current that solves
 * P = V I - I² R.
 *
 * @throws PhysicsError when the cable cannot deliver that much at all
 */
export function sourced(device_w: number, supply_v: number, loop_ohm: number): Sourced {
  checkSupply(supply_v, loop_ohm);
  requireWithin('drawn power', device_w, 0, 1e6, 'W');
  const under = supply_v * supply_v - 4 * loop_ohm * device_w;
  if (under < 0) throw tooMuch(device_w, supply_v, loop_ohm);
  // The same as (V - sqrt(V² - 4 R P)) / 2 R, without dividing by a resistance of 0.
  const current_a = (2 * device_w) / (supply_v + Math.sqrt(under));
  return { device_w, device_v: supply_v - current_a * loop_ohm, current_a, supply_w: supply_v * current_a };
}

function checkSupply(supply_v: number, loop_ohm: number): void {
  requireWithin('supply voltage', supply_v, 1, 1000, 'V');
  requireWithin('loop resistance', loop_ohm, 0, 1e9, 'ohm');
}

function tooMuch(power_w: number, supply_v: number, loop_ohm: number): PhysicsError {
  return new PhysicsError(
    'drawn power',
    `${formatPower(power_w)} cannot be had over ${formatResistance(loop_ohm)} from ${formatVoltage(supply_v)}; at most ${formatPower((supply_v * supply_v) / (4 * loop_ohm))} arrive`,
  );
}

/**
 * What a supply must give for a device of a class over a length of cable.
 *
 * @param draw_w What the device draws; undefined: all that its class allows.
 * @throws PhysicsError when the draw is above the class, or cannot be delivered over so long a cable
 */
export function poweredDevice(
  power: PowerClass,
  length_m: number,
  draw_w: number = power.device_w,
  conductor_ohm_per_m = 0,
): Sourced {
  requireWithin(`draw of a class ${power.class} device`, draw_w, 0, power.device_w, 'W');
  return sourced(draw_w, power.supply_v, loopResistance_ohm(power, length_m, conductor_ohm_per_m));
}

/** `poweredDevice` with its working. */
export function explainPoweredDevice(
  power: PowerClass,
  length_m: number,
  draw_w: number = power.device_w,
  conductor_ohm_per_m = 0,
): Explained<Sourced> {
  const value = poweredDevice(power, length_m, draw_w, conductor_ohm_per_m);
  const loop_ohm = loopResistance_ohm(power, length_m, conductor_ohm_per_m);
  const working = makeWorking({
    figure: `power that the supply gives for a class ${power.class} device`,
    rule: `the smaller current that solves P = V I - I² R; ${formatVoltage(value.device_v)} and ${formatCurrent(value.current_a)} at the device`,
    formula: 'V x (V - sqrt(V x V - 4 x R x P)) / (2 x R)',
    inputs: [
      ['V', formatVoltage(power.supply_v)],
      ['R', formatResistance(loop_ohm)],
      ['P', formatPower(draw_w)],
    ],
    result: formatPower(value.supply_w),
    ...POWER_CLASS_SOURCE,
    steps: [explainLoop(power, length_m, loop_ohm, conductor_ohm_per_m)],
  });
  return { value, working };
}

function explainLoop(
  power: PowerClass,
  length_m: number,
  loop_ohm: number,
  conductor_ohm_per_m: number,
): Working {
  const figure = `loop resistance of ${formatLength(length_m)}`;
  const result = formatResistance(loop_ohm);
  if (conductorLoop_ohm(power, length_m, conductor_ohm_per_m) < loop_ohm || conductor_ohm_per_m === 0) {
    return makeWorking({
      figure,
      rule: `the ${power.channel_ohm} ohm of a 100 m channel, scaled`,
      formula: 'channel x length / 100 m',
      inputs: [
        ['channel', formatResistance(power.channel_ohm)],
        ['length', formatLength(length_m)],
      ],
      result,
      ...CHANNEL_RESISTANCE_SOURCE,
    });
  }
  return makeWorking({
    figure,
    rule: `the cable's own conductors, there and back over ${power.pairs} pairs, because they have more than a channel of that length`,
    formula: '2 x conductor x length / pairs',
    inputs: [
      ['conductor', `${formatNumber(conductor_ohm_per_m)} ohm/m`],
      ['length', formatLength(length_m)],
      ['pairs', String(power.pairs)],
    ],
    result,
    ...CONDUCTOR_SOURCE,
  });
}
