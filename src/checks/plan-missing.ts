import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';

export const planMissing: Check = {
  name: 'plan-missing',
  severity: 'error',
  summary: 'The file has no plan statement.',
  explanation: `A file without a \`plan\` is a part, such as a list of kits, that plans import. Without the statement
there is no title for the sheets, no house rate, no slack and no headroom: those of a part are not known.

**How it is judged.** The file that is checked as a plan needs one \`plan\` statement. Where its beginning could not be
read, that alone is told.

**What mends it.** \`plan "Title" { … }\` at the top of the file; or check the plan that imports this file.`,
  examples: [
    { wrong: 'place stage\nplace desk\n', right: 'plan "Two places"\n\nplace stage\nplace desk\n' },
    { wrong: smallPlan().replace(/^plan[^}]*}\n/, ''), right: smallPlan() },
  ],

  find({ plan, settings }, report, unreadables) {
    if (settings.statement) return;
    const first = plan.statements.find(({ source }) => source.file === plan.file);
    // What could not be read there may be the plan statement, and is told.
    const begins = first?.source.range().line ?? Number.POSITIVE_INFINITY;
    if (unreadables.some(({ file, range }) => file === plan.file && range.line <= begins)) return;
    report({
      ...(first ? { statement: first } : { file: plan.file }),
      message:
        'This file has no `plan` statement, so it is a part and no plan. Begin it with `plan "Title"`, or check the plan that imports it.',
      fixes: [
        {
          title: 'Begin with a plan statement',
          edits: [{ kind: 'insertOnTop', file: plan.file, text: 'plan "Untitled"\n' }],
        },
      ],
    });
  },
};
