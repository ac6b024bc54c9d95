import type { Cycle } from '../analysis/model.ts';
import type { Statement } from '../plan/plan.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { capital, shown } from './words.ts';

/** The part that closes the circle, and what the circle means. */
const circles: Record<Cycle['kind'], { readonly part: string; readonly says: string }> = {
  like: { part: 'likes', says: 'each of these cables is like the next, so none says what it is' },
  accepts: { part: 'accepts', says: 'these interfaces accept each other in a circle' },
  shares: {
    part: 'shares',
    says: 'each of these cables lies in the sheath of the next, so there is no sheath',
  },
  'standby for': {
    part: 'standbyFor',
    says: 'each of these links stands by for the next, so none is a main',
  },
  from: { part: 'supplies', says: 'each of these circuits is fed by the next, so none is fed at all' },
  of: { part: 'madeOf', says: 'each of these pictures is made of the next, so none begins anywhere' },
};

export const cycle: Check = {
  name: 'cycle',
  severity: 'error',
  summary: 'Statements point at each other in a circle.',
  explanation: `A cable that is like a cable that is like the first one says nothing; a circuit that feeds itself has no
supply. The circle is cut, and what follows from it is not worked out.

**How it is judged.** \`like\`, \`accepts\`, \`shares\`, \`standby for\`, \`from\` between circuits and \`of\` between
sources must lead to an end.

**What mends it.** Taking the clause out of the one that is the beginning: the real cable, the main link, the
circuit that comes from the house.`,
  examples: [
    {
      wrong: smallPlan(
        'circuit left at stage 16 A 230 V from right',
        'circuit right at desk 16 A 230 V from left',
      ),
      right: smallPlan('circuit left at stage 16 A 230 V from right', 'circuit right at desk 16 A 230 V'),
    },
  ],

  find({ cycles }, report) {
    for (const { kind, statements } of cycles) {
      const [first, ...others] = statements;
      if (!first) continue;
      const { part, says } = circles[kind];
      const names = [...statements, first].map((one) => shown(nameOf(one)));
      const round = names.length > 6 ? [...names.slice(0, 5), '…', names.at(-1)!] : names;
      report({
        statement: first,
        part: `${part}/0`,
        message: `${capital(says)}: ${round.join(' → ')}. Take the clause out of the one that is the beginning.`,
        related: others.map((statement) => ({
          place: { statement, part: `${part}/0` },
          message: 'This one is part of the circle.',
        })),
      });
    }
  },
};

function nameOf({ fact }: Statement): string {
  if ('name' in fact && fact.name !== undefined) return fact.name;
  return fact.kind === 'link' ? `${fact.from.node}.${fact.from.port}` : fact.kind;
}
