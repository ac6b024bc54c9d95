import { cableChoices } from '../../analysis/cable-choices.ts';
import type { Analysis, Link, Reach } from '../../analysis/model.ts';
import { formatLength, formatShare } from '../../physics/display.ts';
import type { Asked, Offer } from './asked.ts';
import { nameOffers } from './names.ts';

/** How well a cable does, the best first. */
const verdictGroups: Record<Reach['verdict'], number> = {
  good: 1,
  'near the limit': 2,
  doubtful: 2,
  'not known': 3,
  beyond: 4,
};

/**
 * Cables for the link that is being written: only those that carry what its two ends have in common, those that
 * reach first, with what they reach and what is left. All cables where the link is not known yet.
 */
export function cableOffers(asked: Asked): Offer[] {
  const { analysis, statement } = asked;
  const all = nameOffers(asked, 'Cable');
  const link = analysis?.links.find((one) => one.statement === statement);
  const choices = analysis && link ? cableChoices(analysis, link) : [];
  if (!analysis || !link || choices.length === 0) return all;
  const byName = new Map(all.map((offer) => [offer.label, offer]));
  return choices.flatMap(({ cable, reach }) => {
    const offer = byName.get(cable.name);
    return offer
      ? [{ ...offer, detail: reachText(analysis, link, reach), group: verdictGroups[reach.verdict] }]
      : [];
  });
}

/** `reaches 78 m, 20 m to spare` or `at most 55 m, 64 m needed`. */
function reachText(
  { settings: { units } }: Analysis,
  link: Link,
  { reach_m, verdict, share }: Reach,
): string {
  const { length_m } = link.chain;
  if (reach_m === undefined)
    return share === undefined ? 'reach not known' : `${formatShare(share)} of the loss allowed`;
  const reach = formatLength(reach_m, units, length_m);
  if (length_m === undefined) return `reaches ${reach}`;
  if (verdict === 'beyond') return `too short: ${reach} of ${formatLength(length_m, units, reach_m)} needed`;
  const doubt =
    verdict === 'doubtful' ? ', doubtful' : verdict === 'near the limit' ? ', near its limit' : '';
  return `reaches ${reach}, ${formatLength(reach_m - length_m, units)} to spare${doubt}`;
}
