import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';

export const planTwice: Check = {
  name: 'plan-twice',
  severity: 'error',
  summary: 'The file has more than one plan statement.',
  explanation: `One file is the plan of one event. Of two statements only the first counts, so half of the settings are
not what somebody believes them to be.

**How it is judged.** One \`plan\` statement in the plan's own file.

**What mends it.** One statement with all settings; another event gets a file of its own, and what both share goes into
a file without a plan that both import.`,
  examples: [{ wrong: smallPlan('plan "Second day"'), right: smallPlan() }],

  find({ settings }, report) {
    const first = settings.statement;
    if (!first) return;
    for (const statement of settings.uncounted) {
      report({
        statement,
        part: 'title',
        message:
          'A second `plan` in the same file does not count. Move its settings into the first, or give this event a file of its own.',
        related: [{ place: { statement: first, part: 'title' }, message: 'The first one, which counts.' }],
        fixes: [{ title: 'Delete this plan statement', edits: [{ kind: 'delete', statement }] }],
      });
    }
  },
};
