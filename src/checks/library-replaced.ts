import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { isOfLibrary, quoted } from './words.ts';

export const libraryReplaced: Check = {
  name: 'library-replaced',
  severity: 'info',
  summary: 'A declaration of the plan takes the place of one in the shipped library.',
  explanation: `The plan's own declaration goes before the library's, everywhere in the plan: every reach and loss is
now judged by it. That is right for a cable of which you have the data sheet, and surprising where only the name
happens to be the same.

**How it is judged.** A cable or an interface of the plan has the name of one in the library.

**What mends it.** Nothing, where it is meant. Else a name of its own, with \`like\` for what it has in common.`,
  examples: [
    {
      wrong: smallPlan(
        'cable rg11 "Our RG-11" {',
        '  medium coax',
        '  loss 11.8 dB per 100 m at 742.5 MHz "its data sheet"',
        '}',
      ),
      right: smallPlan(
        'cable our_rg11 "Our RG-11" {',
        '  like rg11',
        '  loss 11.8 dB per 100 m at 742.5 MHz "its data sheet"',
        '}',
      ),
    },
  ],

  find(analysis, report) {
    for (const { name, first, others } of analysis.names.duplicates) {
      const replaced = others.find((statement) => isOfLibrary(analysis, statement));
      if (!replaced || isOfLibrary(analysis, first)) continue;
      report({
        statement: first,
        part: 'name',
        subject: name,
        message: `This ${first.fact.kind} takes the place of ${quoted(name)} in the library, wherever the plan uses it. Give it a name of its own if that is not meant.`,
        related: [{ place: { statement: replaced, part: 'name' }, message: 'The one in the library.' }],
      });
    }
  },
};
