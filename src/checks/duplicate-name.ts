import type { Check } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import { isOfLibrary, kindText, quoted } from './words.ts';

export const duplicateName: Check = {
  name: 'duplicate-name',
  severity: 'error',
  summary: 'Two statements declare the same name.',
  explanation: `One name stands for one thing, in the plan as on the label of the case. Of two declarations the first
counts and the other is read as if it were not there: a second camera of that name is in no load, on no packing list.

**How it is judged.** Nodes, sources, destinations, links, circuits and uplinks share one space of names; places, kits,
cables, interfaces, segments and cases have one each. Names of all files of a plan count together; a cable or
interface of the plan goes before one of the library.

**What mends it.** Another name for one of the two, or deleting the one that is too much.`,
  examples: [
    { wrong: smallPlan('place desk "Front desk"'), right: smallPlan('place front_desk "Front desk"') },
    {
      wrong: changedPlan('destination screen', 'destination camera').replace('-> screen', '-> camera'),
      right: smallPlan(),
    },
  ],

  find(analysis, report) {
    for (const { name, first, others } of analysis.names.duplicates) {
      for (const statement of others) {
        if (isOfLibrary(analysis, statement)) continue;
        report({
          statement,
          part: 'name',
          message: `${quoted(name)} is ${kindText(first)} already; this one does not count. Give one of the two another name, or delete one.`,
          related: [{ place: { statement: first, part: 'name' }, message: 'The first one, which counts.' }],
          // Of another kind it is used as that kind; without it those uses would have nothing.
          fixes:
            statement.fact.kind === first.fact.kind
              ? [{ title: 'Delete this one', edits: [{ kind: 'delete', statement }] }]
              : [],
        });
      }
    }
  },
};
