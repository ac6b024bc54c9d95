/** Coaxial cable: loss by frequency, and how far a signal reaches within a loss budget. */
import { formatFrequency, formatLength, formatLoss, formatNumber } from './display.ts';
import { PhysicsError, requireLength, requireWithin } from './physics-error.ts';
import { type Explained, makeWorking, type Source } from './working.ts';

/** A loss that somebody measured or stated. */
export interface StatedLoss {
  readonly frequency_hz: number;
  readonly loss_db_per_m: number;
}

/**
 * Loss of 100 m: `skin_db` x sqrt(f) + `dielectric_db` x f, with f in GHz. The first part is the skin effect, the
 * second the dielectric.
 */
export interface CoaxLoss {
  readonly skin_db: number;
  readonly dielectric_db: number;
  /** How many stated losses it was fitted to. One gives the skin effect alone: too small a loss above its frequency. */
  readonly stated: number;
}

/** What a receiver makes good: so much loss at half the clock. */
export interface LossBudget {
  readonly budget_db: number;
  readonly frequency_hz: number;
}

export const COAX_SOURCE: Source = {
  source:
    'skin effect and dielectric loss, k1 sqrt(f) + k2 f (engineering model, as in pa3fwm.nl technote 33b)',
  label: 'published',
};
export const FASTER_REACHES_NO_FURTHER: Source = {
  source: 'loss budgets of SMPTE ST 292-1, 424, 2081-1 and 2082-1 come from different receiver generations',
  label: 'common practice',
};

/** Reach beyond this share is doubtful: the picture fails suddenly (common practice: 10 to 20 % in hand). */
export const COAX_NEAR_LIMIT = 0.9;

/**
 * Fits the loss model to stated losses by least squares; through two points it runs exactly. With one point all of
 * it is taken for skin effect. A part that would come out negative is left out: no cable loses less at a higher
 * frequency.
 *
 * @throws PhysicsError without any point, or with one that has no positive frequency and loss.
 */
export function fitCoaxLoss(points: readonly StatedLoss[]): CoaxLoss {
  if (points.length === 0)
    throw new PhysicsError('cable loss', 'a coax cable needs a stated loss at one frequency at least');
  let [ff, fr, yr, yf, rr] = [0, 0, 0, 0, 0];
  for (const { frequency_hz, loss_db_per_m } of points) {
    const f = requireWithin('frequency', frequency_hz, 1, 1e12, 'Hz') / 1e9;
    const loss = requireWithin('cable loss', loss_db_per_m, 1e-6, 100, 'dB per m') * 100;
    const root = Math.sqrt(f);
    rr += f;
    fr += f * root;
    ff += f * f;
    yr += loss * root;
    yf += loss * f;
  }
  const stated = points.length;
  const determinant = rr * ff - fr * fr;
  // Points at one frequency only leave the determinant at nothing but rounding.
  if (determinant <= rr * ff * 1e-12) return { skin_db: yr / rr, dielectric_db: 0, stated };
  const skin_db = (yr * ff - yf * fr) / determinant;
  const dielectric_db = (rr * yf - fr * yr) / determinant;
  if (dielectric_db < 0) return { skin_db: yr / rr, dielectric_db: 0, stated };
  if (skin_db < 0) return { skin_db: 0, dielectric_db: yf / ff, stated };
  return { skin_db, dielectric_db, stated };
}

/** Loss of one metre at a frequency. @throws PhysicsError for a frequency of 0 or NaN */
export function coaxLoss_db_per_m(cable: CoaxLoss, frequency_hz: number): number {
  const f = requireWithin('frequency', frequency_hz, 1, 1e12, 'Hz') / 1e9;
  return (cable.skin_db * Math.sqrt(f) + cable.dielectric_db * f) / 100;
}

/** Loss of a length at a frequency. @throws PhysicsError for a frequency of 0, a negative length, NaN */
export function coaxLoss_db(cable: CoaxLoss, frequency_hz: number, length_m: number): number {
  return coaxLoss_db_per_m(cable, frequency_hz) * requireLength(length_m);
}

/** How long the cable may be within a budget: budget / loss. @throws PhysicsError for a negative budget */
export function budgetReach_m(cable: CoaxLoss, { budget_db, frequency_hz }: LossBudget): number {
  return requireWithin('loss budget', budget_db, 0, 1000, 'dB') / coaxLoss_db_per_m(cable, frequency_hz);
}

/**
 * Reach of an interface on one cable: that of its own budget, but never further than any slower interface reaches
 * there.
 *
 * @param slower Budgets of the slower interfaces of the same family.
 * @throws PhysicsError for a negative budget or a frequency of 0
 */
export function coaxReach_m(cable: CoaxLoss, own: LossBudget, slower: readonly LossBudget[] = []): number {
  let reach_m = budgetReach_m(cable, own);
  for (const budget of slower) {
    if (budget.frequency_hz < own.frequency_hz) reach_m = Math.min(reach_m, budgetReach_m(cable, budget));
  }
  return reach_m;
}

/** Half the clock of a serial rate, the frequency that budgets speak of: 1485 MHz for 2.97 Gb/s. */
export function halfClock_hz(rate_bits_per_second: number): number {
  return rate_bits_per_second / 2;
}

/** `coaxLoss_db` with its working. `stated` says where the cable's stated losses come from. */
export function explainCoaxLoss(
  cable: CoaxLoss,
  frequency_hz: number,
  length_m: number,
  stated: Source,
): Explained {
  const value = coaxLoss_db(cable, frequency_hz, length_m);
  const working = makeWorking({
    figure: `loss of ${formatLength(length_m)} of coax at ${formatFrequency(frequency_hz)}`,
    rule:
      cable.stated === 1
        ? 'skin effect alone, from one stated loss'
        : `fitted to ${cable.stated} stated losses`,
    formula: '(k1 x sqrt(f) + k2 x f) x length / 100',
    inputs: [
      ['k1', formatNumber(cable.skin_db, 3)],
      ['k2', formatNumber(cable.dielectric_db, 3)],
      ['f', formatNumber(frequency_hz / 1e9)],
      ['length', formatLength(length_m)],
    ],
    result: formatLoss(value),
    source: `${stated.source}; ${COAX_SOURCE.source}`,
    label: stated.label,
  });
  return { value, working };
}

/** `coaxReach_m` with its working. `stated` says where the cable's losses come from, `budget` the receiver's. */
export function explainCoaxReach(
  cable: CoaxLoss,
  own: LossBudget,
  slower: readonly LossBudget[],
  stated: Source,
  budget: Source,
): Explained {
  const value = coaxReach_m(cable, own, slower);
  const decides = [own, ...slower].find((one) => budgetReach_m(cable, one) === value) ?? own;
  const loss_db = coaxLoss_db(cable, decides.frequency_hz, 100);
  const capped = decides !== own;
  const working = makeWorking({
    figure: 'reach on this coax',
    rule: capped
      ? `the reach at ${formatFrequency(decides.frequency_hz)}: a faster interface is never given more reach than a slower one`
      : `loss at half the clock, ${formatFrequency(decides.frequency_hz)}, within the receiver's budget`,
    formula: 'budget / loss x 100 m',
    inputs: [
      ['budget', formatLoss(decides.budget_db)],
      ['loss', `${formatLoss(loss_db)} per 100 m`],
    ],
    result: formatLength(value),
    ...(capped ? FASTER_REACHES_NO_FURTHER : budget),
    steps: [explainCoaxLoss(cable, decides.frequency_hz, 100, stated).working],
  });
  return { value, working };
}
