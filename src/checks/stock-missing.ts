import type { Analysis, Cable, CablePiece } from '../analysis/model.ts';
import { cableStockFor } from './asked.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { counted, lengthPart, lengthText, linkText, listedWords, shown } from './words.ts';

const shelf = (longest: number) => smallPlan(`stock cat6a 2 of ${longest} m`, 'stock rg6 any of 5 m');

export const stockMissing: Check = {
  name: 'stock-missing',
  severity: 'warning',
  when: 'idle',
  summary: 'The shelf has no piece for a cable that is needed.',
  explanation: `The plan needs a cable that none of the pieces at hand can be: it has to be bought, hired or made before the
van leaves.

**How it is judged.** The needs are matched with \`stock\`: the longest need first, the shortest piece that is long
enough; pieces of \`any\` number never run out. Cables of one sheath are one piece; what is \`installed\` needs none. A
plan without any \`stock\` is not judged. It is told once for each kind of cable.

**What mends it.** A longer piece in stock, another cable for the link, or accepting it as a thing to buy.`,
  examples: [{ wrong: shelf(40), right: shelf(50) }],

  find(analysis, report) {
    if (analysis.stock.length === 0) return;
    for (const [cable, missing] of missingPieces(analysis)) {
      const [first] = missing;
      if (!first) continue;
      const needs = missing.map(
        ({ link, needed_m }) => `${lengthText(analysis, needed_m ?? 0)} for ${linkText(link)}`,
      );
      report({
        statement: first.link.statement,
        part: lengthPart(first.link),
        subject: cable.name,
        message: `${counted(missing.length, 'piece')} of ${shown(cable.name)} ${missing.length === 1 ? 'is' : 'are'} missing from the stock: ${listedWords(needs, 4)}. Put ${missing.length === 1 ? 'it' : 'them'} on the list to get, or use what is there.`,
        related: missing.slice(1, 20).map(({ link }) => ({
          place: { statement: link.statement, part: lengthPart(link) },
          message: 'Missing for this too.',
        })),
      });
    }
  },
};

/** Needs without a piece, by cable; what has no length is told as that. */
function missingPieces(analysis: Analysis): Map<Cable, CablePiece[]> {
  const byCable = new Map<Cable, CablePiece[]>();
  for (const piece of cableStockFor(analysis).pieces) {
    if (piece.from !== 'get' || piece.needed_m === undefined) continue;
    const known = byCable.get(piece.cable);
    if (known) known.push(piece);
    else byCable.set(piece.cable, [piece]);
  }
  return byCable;
}
