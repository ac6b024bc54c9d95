import { type FrameRate, frameRateOf } from '../physics/rate.ts';
import type { StatementOf } from '../plan/plan.ts';
import type { Settings } from './model.ts';

/** Share of a network link that is kept free (common practice, no source). */
export const DEFAULT_HEADROOM_SHARE = 0.1;

/** The settings of the plan's first plan statement, what it leaves out filled in. */
export function settingsOf(statements: readonly StatementOf<'plan'>[]): Settings {
  const [statement, ...uncounted] = statements;
  const fact = statement?.fact;
  return {
    statement,
    uncounted,
    title: fact?.title ?? '',
    headroomShare: Math.min(1, Math.max(0, fact?.headroomShare ?? DEFAULT_HEADROOM_SHARE)),
    slack_m: fact?.slack_m ?? 0,
    slackStated: fact?.slack_m !== undefined,
    sparesShare: fact?.sparesShare ?? 0,
    units: fact?.units ?? 'metric',
    currency: fact?.currency,
    rate: rateOf(fact?.rate),
    packing: fact?.packing ?? 'equal',
    tagged: fact?.tagged ?? false,
    blanking: fact?.blanking ?? 1,
    lasts_s: fact?.lasts_s,
    lipsync: fact?.lipsync ?? 'bt1359',
  };
}

function rateOf(text: string | undefined): FrameRate | undefined {
  if (text === undefined) return undefined;
  try {
    return frameRateOf(text);
  } catch {
    // What cannot be read is told with the statement.
    return undefined;
  }
}
