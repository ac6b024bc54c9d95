import { faultCheck } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';

export const unknownUnit = faultCheck({
  name: 'unknown-unit',
  severity: 'error',
  summary: 'A unit is not one that the language knows, or is spelled in another way.',
  explanation: `Units are written as the SI writes them, so that \`Mb/s\` (megabits) and \`MB/s\` (megabytes) or \`m\` and
\`min\` cannot be confused. Where only the spelling differs the value is read as it was meant; an unknown unit leaves
the value out of the arithmetic.

**How it is judged.** By the list of units: m, cm, mm, km, ft; ns, us, ms, s, min, h, frames; b/s, kb/s, Mb/s, Gb/s; Hz to GHz; ohm;
W, kW; A; V; g, kg, lb; %; dB; C. Upper and lower case count.

**What mends it.** The spelling that the message offers.`,
  examples: [{ wrong: changedPlan('stage <-> desk 40 m', 'stage <-> desk 40 meters'), right: smallPlan() }],
});
