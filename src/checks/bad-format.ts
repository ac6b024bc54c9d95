import { faultCheck } from './check.ts';
import { changedPlan } from './example-plans.ts';

export const badFormat = faultCheck({
  name: 'bad-format',
  severity: 'error',
  summary: 'A picture or sound format cannot exist or cannot be read.',
  explanation: `From a format follow the load on every network link, the rate on every cable and the length of a frame. A source
whose format is not understood counts nothing.

**How it is judged.** Raster, scan and rate as one word (\`1080p59.94\`, \`1920x1200p60\`; the number after \`i\`
counts fields), then sampling (4:2:2, 4:4:4, 4:2:0, RGB), depth (8, 10, 12, 16 bit: the sizes of RFC 4175 §4.3,
published) and channels of sound. An interlaced raster has an even number of rows.

**What mends it.** The format as the device's data sheet or its menu gives it.`,
  examples: [
    {
      wrong: changedPlan('takes 1080p50', 'takes 1080p50, 1081i50'),
      right: changedPlan('takes 1080p50', 'takes 1080p50, 1080i50'),
    },
  ],
});
