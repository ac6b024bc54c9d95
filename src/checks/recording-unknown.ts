import { recordingsOf } from '../analysis/recordings.ts';
import { formatRate } from '../physics/display.ts';
import type { Check } from './check.ts';
import { changedPlan } from './example-plans.ts';
import { shown } from './words.ts';

const recording = (plan: string) => plan.replace('over rg6 5 m\nfeed', 'over rg6 5 m records 50 Mb/s\nfeed');

export const recordingUnknown: Check = {
  name: 'recording-unknown',
  severity: 'info',
  when: 'idle',
  summary: 'Something records, and the plan does not say for how long.',
  explanation: `The storage to bring follows from rate and time; without the time nobody knows whether the disk lasts.

**How it is judged.** A destination with \`records\` needs \`lasts\` in the plan.

**What mends it.** \`lasts 8 h\` in the plan, with rehearsal and overrun.`,
  examples: [
    {
      wrong: recording(changedPlan('', '')),
      right: recording(changedPlan('rate 50', 'rate 50\n  lasts 8 h')),
    },
  ],

  find(analysis, report) {
    const { settings } = analysis;
    for (const { destination, bytes } of recordingsOf(analysis)) {
      if (bytes !== undefined || settings.lasts_s !== undefined) continue;
      const { statement, name } = destination;
      const rate = statement.fact.records_bits_per_second ?? 0;
      report({
        statement,
        part: 'records/0',
        subject: name,
        message: `${shown(name)} records ${formatRate(rate)}, and the plan does not say for how long, so the storage is not known. Write \`lasts 8 h\`, or how long it is, in the plan.`,
        fixes: settings.statement
          ? [
              {
                title: 'Plan for 8 hours',
                edits: [{ kind: 'insertInside', statement: settings.statement, text: 'lasts 8 h' }],
              },
            ]
          : [],
      });
    }
  },
};
