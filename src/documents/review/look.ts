import { arrivingIn } from '../../analysis/holding.ts';
import { add } from '../../analysis/lists.ts';
import type { Delivery } from '../../analysis/model.ts';
import type { Comparison } from './comparison.ts';
import type { Step } from './review.ts';

/**
 * Every screen that shows something else, or the same by another way, or was dark meanwhile, is looked at last: one step
 * a place. What was proved before is named, because that proof is of the old way.
 */
export function lookSteps(comparison: Comparison, interrupted: ReadonlySet<string>): Step[] {
  const { was, is, renames, titles } = comparison;
  const [old, fresh] = [was.situations[0], is.situations[0]];
  if (!old || !fresh) return [];
  const before = new Map(
    arrivingIn(was, old).map((delivery) => [renames.socket(delivery.feed.targetName), delivery]),
  );
  const looks = new Map<string, string[]>();
  for (const delivery of arrivingIn(is, fresh)) {
    const { target, source, targetName, proofs } = delivery.feed;
    if (!target || !source) continue;
    const title = comparison.target(target);
    const known = before.get(targetName);
    if (known && !interrupted.has(title) && isSame(comparison, known, delivery)) continue;
    const place = 'kind' in target ? target.place : target.owner.place;
    const dates = proofs.flatMap(({ fact }) => fact.date ?? []);
    const again = dates.length > 0 ? ` (proved on ${dates.join(', ')}: prove it again)` : '';
    add(looks, titles.is.place(place), `${title} shows ${comparison.source(source).title}${again}`);
  }
  return [...looks].map(
    ([place, texts]): Step => ({
      kind: 'look',
      place,
      text: `Look: ${texts.join('; ')}.`,
      cable: null,
      sockets: [],
      dark: [],
      back: [],
      ends: [],
    }),
  );
}

/** The same picture over the same cables through the same sockets. */
function isSame(comparison: Comparison, before: Delivery, after: Delivery): boolean {
  if (!before.feed.source || !after.feed.source) return true;
  if (comparison.oldSource(before.feed.source).name !== after.feed.source.name) return false;
  const { renames } = comparison;
  const was = before.routes.map(({ ports }) => ports.map(({ text }) => renames.socket(text)).join());
  const is = after.routes.map(({ ports }) => ports.map(({ text }) => text).join());
  if (was.join('\n') !== is.join('\n')) return false;
  const cables = before.routes.flatMap(({ steps }) => steps.map(({ link }) => comparison.linkNow(link)));
  const now = new Set(after.routes.flatMap(({ steps }) => steps.map(({ link }) => link)));
  return cables.every((link) => link !== undefined && now.has(link));
}
