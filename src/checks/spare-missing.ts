import { cableStockFor } from './asked.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { shown } from './words.ts';

export const spareMissing: Check = {
  name: 'spare-missing',
  severity: 'info',
  when: 'idle',
  summary: 'A kind of network cable has no piece to spare.',
  explanation: `A trunk that is trodden on or rolled over is replaced by another piece of the same kind, if there is one. It
carries many pictures at once, so it matters more than a patch lead.

**How it is judged.** For each kind of cable in a network link one more piece is carried that is long enough: left over in
\`stock\`, a spare of the plan's \`spares\`, a standby, or pieces of \`any\` number. A plan without any \`stock\` is not
judged.

**What mends it.** One more piece in stock, or \`spares 10 %\` in the plan.`,
  examples: [
    {
      wrong: smallPlan('stock cat6a 1 of 50 m', 'stock rg6 any of 5 m'),
      right: smallPlan('stock cat6a 2 of 50 m', 'stock rg6 any of 5 m'),
    },
  ],

  find(analysis, report) {
    if (analysis.stock.length === 0) return;
    const { withoutSpare, pieces } = cableStockFor(analysis);
    // Of what is missing altogether a spare is no question yet.
    const missing = new Set(pieces.filter(({ from }) => from === 'get').map(({ cable }) => cable));
    for (const cable of withoutSpare) {
      if (missing.has(cable)) continue;
      const longest = pieces
        .filter((piece) => piece.cable === cable && piece.link.network)
        .sort((a, b) => (b.needed_m ?? 0) - (a.needed_m ?? 0))[0];
      if (!longest) continue;
      report({
        statement: longest.link.statement,
        subject: cable.name,
        message: `No piece of ${shown(cable.name)} is left to replace one of its network links. Bring one more, or write \`spares\` in the plan.`,
      });
    }
  },
};
