/** Sound against picture: when it is heard, and whether that is near enough to what is seen. */
import { formatLength, formatNumber, formatTemperature, formatTime } from './display.ts';
import { requireWithin } from './physics-error.ts';
import { type Explained, makeWorking, type Source } from './working.ts';

export const SOUND_SPEED_SOURCE: Source = { source: 'ISO 9613-1:1993', label: 'second-hand' };
export const USUAL_TEMPERATURE_C = 20;

/**
 * Speed of sound in air: 343.2 x sqrt((273.15 + T) / 293.15) m/s (ISO 9613-1:1993, second-hand).
 *
 * @throws PhysicsError outside -60 to 60 °C
 */
export function soundSpeed_m_per_s(temperature_c: number = USUAL_TEMPERATURE_C): number {
  requireWithin('air temperature', temperature_c, -60, 60, '°C');
  return 343.2 * Math.sqrt((273.15 + temperature_c) / 293.15);
}

/** The straight line 331.3 + 0.606 T m/s that is often used instead (common practice; within 0.25 % from 0 to 40 °C). */
export function soundSpeedByLine_m_per_s(temperature_c: number): number {
  return 331.3 + 0.606 * requireWithin('air temperature', temperature_c, -60, 60, '°C');
}

/** Time from a loudspeaker to a listener. @throws PhysicsError beyond 100 km */
export function soundFlight_s(distance_m: number, temperature_c: number = USUAL_TEMPERATURE_C): number {
  return requireWithin('distance', distance_m, 0, 100_000, 'm') / soundSpeed_m_per_s(temperature_c);
}

/** `soundFlight_s` with its working. */
export function explainSoundFlight(
  distance_m: number,
  temperature_c: number = USUAL_TEMPERATURE_C,
): Explained {
  const value = soundFlight_s(distance_m, temperature_c);
  const working = makeWorking({
    figure: `flight of sound over ${formatLength(distance_m)}`,
    rule: `speed of sound in air at ${formatTemperature(temperature_c)}`,
    formula: 'distance / speed',
    inputs: [
      ['distance', formatLength(distance_m)],
      ['speed', `${formatNumber(soundSpeed_m_per_s(temperature_c), 1)} m/s`],
    ],
    result: formatTime(value),
    ...SOUND_SPEED_SOURCE,
  });
  return { value, working };
}

/** Rules for sound against picture. They measure different things and are never mixed. */
export type LipSyncRule = 'bt1359' | 'r37' | 'is191';

/** How far sound may be early and late. */
export interface Window {
  readonly early_s: number;
  readonly late_s: number;
}

export interface LipSyncLimits extends Source {
  /** Within it nobody notices; outside it is doubtful. Undefined where the rule has one window only. */
  readonly notice?: Window;
  /** Outside it is an error. */
  readonly tolerate: Window;
}

export const LIP_SYNC_LIMITS: Readonly<Record<LipSyncRule, LipSyncLimits>> = {
  bt1359: {
    notice: { early_s: 0.045, late_s: 0.125 },
    tolerate: { early_s: 0.09, late_s: 0.185 },
    source: 'ITU-R BT.1359-1 (1998), considering g) and recommends 2',
    label: 'published',
  },
  r37: {
    tolerate: { early_s: 0.04, late_s: 0.06 },
    source: 'EBU R37-2007 Table 1, end to end',
    label: 'second-hand',
  },
  is191: {
    tolerate: { early_s: 0.015, late_s: 0.045 },
    source: 'ATSC IS-191 (26 June 2003), at the encoder input',
    label: 'second-hand',
  },
};

/** `good`: within the rule; `noticed`: it is seen (a warning); `bad`: outside what the rule tolerates (an error). */
export type LipSyncJudgement = 'good' | 'noticed' | 'bad';

export interface LipSync {
  readonly judgement: LipSyncJudgement;
  /** Positive: the sound is late. */
  readonly offset_s: number;
  /** Delay to give the sound so that it meets the picture; 0 when the sound is late already. */
  readonly delay_to_set_s: number;
}

/** What kilometres of cable add, and nobody notices: 45 ms and a trunk are still within 45 ms. */
const TOLERANCE_S = 0.00005;

function within(offset_s: number, { early_s, late_s }: Window): boolean {
  return offset_s >= -early_s - TOLERANCE_S && offset_s <= late_s + TOLERANCE_S;
}

/**
 * Judges sound against picture by a named rule. Both times count from the moment in front of the camera.
 *
 * @throws PhysicsError for times that are negative or NaN
 */
export function judgeLipSync(picture_s: number, sound_s: number, rule: LipSyncRule = 'bt1359'): LipSync {
  requireWithin('delay of the picture', picture_s, 0, 1e6, 's');
  requireWithin('delay of the sound', sound_s, 0, 1e6, 's');
  const offset_s = sound_s - picture_s;
  const { notice, tolerate } = LIP_SYNC_LIMITS[rule];
  let judgement: LipSyncJudgement = 'good';
  if (!within(offset_s, tolerate)) judgement = 'bad';
  else if (notice !== undefined && !within(offset_s, notice)) judgement = 'noticed';
  return { judgement, offset_s, delay_to_set_s: Math.max(0, -offset_s) };
}

/** `judgeLipSync` with its working. */
export function explainLipSync(
  picture_s: number,
  sound_s: number,
  rule: LipSyncRule = 'bt1359',
): Explained<LipSync> {
  const value = judgeLipSync(picture_s, sound_s, rule);
  const { notice, tolerate, source, label } = LIP_SYNC_LIMITS[rule];
  const describe = ({ early_s, late_s }: Window) =>
    `${formatTime(early_s)} early to ${formatTime(late_s)} late`;
  const size = formatTime(Math.abs(value.offset_s));
  const working = makeWorking({
    figure: 'sound against picture',
    rule: `${notice === undefined ? '' : `unnoticed from ${describe(notice)}; `}tolerated from ${describe(tolerate)}`,
    formula: 'sound - picture',
    inputs: [
      ['sound', formatTime(sound_s)],
      ['picture', formatTime(picture_s)],
    ],
    result: value.offset_s === 0 ? 'together' : `${size} ${value.offset_s > 0 ? 'late' : 'early'}`,
    source,
    label,
  });
  return { value, working };
}
