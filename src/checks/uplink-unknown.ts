import { streamsWithoutUplink, uplinkLoadsOf } from '../analysis/uplink-loads.ts';
import type { Check } from './check.ts';
import { changedPlan } from './example-plans.ts';
import { shown } from './words.ts';

const streaming = (streams: string, uplink: string) =>
  changedPlan('over rg6 5 m\nfeed', `over rg6 5 m ${streams}\n${uplink}feed`);

export const uplinkUnknown: Check = {
  name: 'uplink-unknown',
  severity: 'warning',
  when: 'idle',
  summary: 'Streams whose uplink, or the rate of it, is not known.',
  explanation: `Whether the streams fit is not judged, and that is the one thing that cannot be mended on the day.

**How it is judged.** Streams say \`over UPLINK\`, unless the plan has just one uplink; an uplink with streams has its
upload rate.

**What mends it.** \`over UPLINK\` behind the rates, an \`uplink\` statement, or its upload rate.`,
  examples: [
    {
      wrong: streaming('streams 6 Mb/s', ''),
      right: streaming('streams 6 Mb/s', 'uplink house_net at desk 40 Mb/s\n'),
    },
    {
      wrong: streaming('streams 6 Mb/s', 'uplink house_net at desk\n'),
      right: streaming('streams 6 Mb/s over house_net', 'uplink house_net at desk 40 Mb/s\n'),
    },
  ],

  find(analysis, report) {
    for (const { name, statement } of streamsWithoutUplink(analysis)) {
      const mend =
        analysis.uplinks.size === 0
          ? 'Write the `uplink` with its rate.'
          : 'Write `over` and the uplink behind the rates.';
      report({
        statement,
        part: 'name',
        subject: name,
        message: `${shown(name)} streams and does not say over which uplink, so nothing is judged. ${mend}`,
      });
    }
    for (const { uplink, destinations, usable_bits_per_second: usable } of uplinkLoadsOf(analysis)) {
      if (destinations.length === 0 || usable !== undefined || uplink.statement.faults.length > 0) continue;
      report({
        statement: uplink.statement,
        part: 'name',
        subject: uplink.name,
        message: `${shown(uplink.name)} does not say what it can upload, so its streams are not judged. Write its rate, best as measured on site.`,
      });
    }
  },
};
