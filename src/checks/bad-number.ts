import { faultCheck } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';

export const badNumber = faultCheck({
  name: 'bad-number',
  severity: 'error',
  summary: 'A number is outside of what it can be.',
  explanation: `A class of power that does not exist, an address with 300 in it, a circuit of 0 V, a range of ports that counts
backwards: a slip of the pen that arithmetic would turn into a figure that looks right. The value is left out, or read
as it was probably meant where the message says so.

**How it is judged.** By what each value can be: the standard's own range where there is one (power classes 0 to 8 of
IEEE 802.3, timing domains 0 to 127 of SMPTE ST 2059-2: both second-hand), else a bound that no real plan reaches (common practice, no source).

**What mends it.** A value in the range that the message gives.`,
  examples: [{ wrong: changedPlan('net[1..2]', 'net[2..1]'), right: smallPlan() }],
});
