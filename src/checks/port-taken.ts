import type { Link, Port } from '../analysis/model.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { freePortFix } from './fixes/ports.ts';
import { endPart, linkSubject, linkText, shown } from './words.ts';

export const portTaken: Check = {
  name: 'port-taken',
  severity: 'error',
  summary: 'More than one cable is plugged into the same port.',
  explanation: `A socket takes one plug. On the day the second cable hangs there without a socket, or somebody pulls the
first to make room for it.

**How it is judged.** One link for each port; a standby may share the port of the link that it stands by for, because it
is plugged only when that one fails.

**What mends it.** A free port, a splitter, or a kit with a loop-through (\`outputs … follow …\`).`,
  examples: [
    {
      wrong: smallPlan(
        'destination second at desk takes 1080p50 as sdi_3g from box_d.out1 over rg6 5 m',
        'feed camera -> second',
      ),
      right: smallPlan(
        'destination second at desk takes 1080p50 as sdi_3g from box_d.out2 over rg6 5 m',
        'feed camera -> second',
      ),
    },
  ],

  find({ portsTaken }, report) {
    for (const { port, links } of portsTaken) {
      const [first, ...others] = links;
      if (!first) continue;
      for (const link of others) {
        report({
          statement: link.statement,
          part: partAt(link, port),
          subject: linkSubject(link),
          message: `${shown(port.text)} is taken already: ${linkText(first)} is plugged in there. Use a free port, a splitter or a loop-through.`,
          related: [
            {
              place: { statement: first.statement, part: partAt(first, port) },
              message: 'Plugged in here first.',
            },
          ],
          fixes: () => {
            const fix = freePortFix(link, port);
            return fix ? [fix] : [];
          },
        });
      }
    }
  },
};

function partAt(link: Link, port: Port): string | undefined {
  return endPart(link, link.from.port === port ? 'from' : 'to');
}
