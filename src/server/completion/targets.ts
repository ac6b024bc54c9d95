import { analyse } from '../../analysis/analyse.ts';
import type { Delivery } from '../../analysis/model.ts';
import type { FeedFact } from '../../plan/facts.ts';
import type { Plan, Statement } from '../../plan/plan.ts';
import { delayText } from '../delay-text.ts';
import type { Asked, Offer } from './asked.ts';
import { nameOffers } from './names.ts';

/** Above this size a plan is not worked out once more for the sake of a list. */
const LARGEST_PLAN_TRIED = 4000;

/** Where a picture can be sent: what nothing feeds yet first, with the delay that it would get. */
export function targetOffers(asked: Asked): Offer[] {
  const { analysis, where, plan, statement } = asked;
  const offers = nameOffers(asked, 'Target');
  if (!analysis || !plan || where.before[0]?.image !== 'feed') return offers;
  const source = where.before[1]?.image ?? '';
  const fed = new Map<string, string>();
  for (const feed of analysis.feeds) {
    if (feed.statement !== statement && !fed.has(feed.targetName)) fed.set(feed.targetName, feed.sourceName);
  }
  const unfed = [...analysis.destinations.keys()].filter((name) => !fed.has(name));
  const tried = tryFeeds(plan.assembled.plan, statement, source, unfed);
  return offers.map((offer): Offer => {
    if (!analysis.destinations.has(offer.label)) return { ...offer, group: 4 };
    const by = fed.get(offer.label);
    if (by !== undefined) return { ...offer, detail: `fed by ${by}`, group: 3 };
    const delivery = tried.get(offer.label);
    return {
      ...offer,
      detail: ['not fed yet', delivery && outcome(delivery)].filter((part) => part).join(' · '),
      group: 1,
    };
  });
}

/** Works the plan out as if the source were fed to each of these destinations. */
function tryFeeds(
  plan: Plan,
  written: Statement | undefined,
  source: string,
  destinations: readonly string[],
): ReadonlyMap<string, Delivery> {
  const outcomes = new Map<string, Delivery>();
  const [first] = plan.statements;
  if (plan.statements.length > LARGEST_PLAN_TRIED || destinations.length === 0 || !first) return outcomes;
  const fact: FeedFact = {
    kind: 'feed',
    source,
    targets: destinations.map((thing) => ({ thing })),
    via: [],
    redundant: false,
    seamless: false,
    segments: [],
  };
  const feed: Statement<FeedFact> = { ...first, fact, label: undefined, description: undefined, faults: [] };
  const statements = [...plan.statements.filter((one) => one !== written), feed];
  for (const delivery of analyse({ ...plan, statements }).deliveries) {
    if (delivery.feed.statement === feed && !delivery.segment)
      outcomes.set(delivery.feed.targetName, delivery);
  }
  return outcomes;
}

function outcome({ noRoute, delay, feed }: Delivery): string {
  if (noRoute) return 'no way there yet';
  return `${delayText(delay, feed) ?? 'reached'}${delay.over ? ', too late' : ''}`;
}
