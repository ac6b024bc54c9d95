import type { Check } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import { shown } from './words.ts';

export const formatUnknown: Check = {
  name: 'format-unknown',
  severity: 'warning',
  summary: 'A source that is used does not say what it sends.',
  explanation: `Without a format the picture counts nothing: not on the trunk, not on its cable, not in frames of delay.
A plan can look as if it fitted because its biggest picture is missing from the sum.

**How it is judged.** A source that a feed sends somewhere has a format behind \`sends\`.

**What mends it.** \`sends 1080p59.94\`, or what the device's menu says.`,
  examples: [{ wrong: changedPlan(' sends 1080p50', ''), right: smallPlan() }],

  find({ sourceFigures, unusedSources, settings }, report) {
    const unused = new Set(unusedSources);
    const example = `sends 1080p${settings.statement?.fact.rate ?? '50'}`;
    for (const { source, format } of sourceFigures.values()) {
      const { statement, name } = source;
      if (format || unused.has(source) || statement.fact.format) continue;
      // What could not be read is told as that.
      if (statement.faults.some(({ part }) => part.startsWith('formats'))) continue;
      report({
        statement,
        part: 'name',
        subject: name,
        message: `${shown(name)} does not say what it sends, so it counts nothing on any link. Write its format, such as \`${example}\`.`,
        fixes: [{ title: `It ${example}`, edits: [{ kind: 'append', statement, text: example }] }],
      });
    }
  },
};
