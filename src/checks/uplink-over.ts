import { uplinkLoadsOf } from '../analysis/uplink-loads.ts';
import { formatRate, formatShare } from '../physics/display.ts';
import type { Check } from './check.ts';
import { changedPlan } from './example-plans.ts';
import { listed, shown } from './words.ts';

const streaming = (rate: string) =>
  changedPlan(
    'over rg6 5 m\nfeed',
    `over rg6 5 m streams ${rate} over house_net\nuplink house_net at desk 20 Mb/s\nfeed`,
  );

export const uplinkOver: Check = {
  name: 'uplink-over',
  severity: 'error',
  when: 'idle',
  summary: 'The streams are more than half of the upload.',
  explanation: `An upload is shared with the house, sags in the evening, and lost packets are sent again. A stream that fills
it stutters when everybody watches.

**How it is judged.** The rates of all streams that go over the uplink, 25 % more for recovery and the headers (SRT
documentation, published), against half of the upload, the measured one where there is one (half of the sustained
upload: common practice).

**What mends it.** A lower rate, fewer streams, another uplink, or a measurement that shows that more is there.`,
  examples: [{ wrong: streaming('6 Mb/s, 3 Mb/s'), right: streaming('6 Mb/s, 1 Mb/s') }],

  find(analysis, report) {
    for (const load of uplinkLoadsOf(analysis)) {
      const { uplink, share, needed_bits_per_second: needed, usable_bits_per_second: usable } = load;
      if (share === undefined || usable === undefined || share <= 1) continue;
      const { measured_bits_per_second: measured, stated_bits_per_second: stated } = load;
      const upload = formatRate(measured ?? stated ?? 0);
      const streams = listed(load.destinations.map(({ name }) => name));
      report({
        statement: uplink.statement,
        part: 'name',
        subject: uplink.name,
        message: `${shown(uplink.name)} is to take ${formatRate(needed, usable)} of streams (${streams}, with recovery and headers); half of its ${measured === undefined ? '' : 'measured '}${upload}, ${formatRate(usable, needed)}, can be relied on (${formatShare(share)}). Send less, or use another uplink.`,
      });
    }
  },
};
