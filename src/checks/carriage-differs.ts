import type { Delivery, Missing } from '../analysis/model.ts';
import type { Check } from './check.ts';
import { feedTroubles, targetPart } from './deliveries.ts';
import { smallPlan } from './example-plans.ts';
import { howFarOf } from './how-far-asked.ts';
import { inSegments, nodeText, shown } from './words.ts';

type OtherCarriage = Extract<Missing, { kind: 'other carriage' }>;

export const carriageDiffers: Check = {
  name: 'carriage-differs',
  severity: 'error',
  summary: 'A picture enters the network in one form and is to leave it in another.',
  explanation: `A box that compresses and one that expects uncompressed pictures do not understand each other, whatever the
network between them.

**How it is judged.** What the kit \`carries\` must be the same where a picture enters the network and where it leaves
it: uncompressed in the same sampling and depth, or compressed in the same way.

**What mends it.** Boxes of the same kind at both ends.`,
  examples: [
    {
      wrong: smallPlan(
        'kit small_box {',
        '  outputs out1 as sdi_3g',
        '  network net as ethernet_10g_t',
        '  carries compressed 8:1',
        '}',
        'node box_c : small_box at desk',
        'link box_s.net2 <-> box_c.net over cat6a',
        'destination side at desk takes 1080p50 as sdi_3g from box_c.out1 over rg6 5 m',
        'feed camera -> side',
      ),
      right: smallPlan(
        'node box_c : edge_box at desk',
        'link box_s.net2 <-> box_c.net1 over cat6a',
        'destination side at desk takes 1080p50 as sdi_3g from box_c.out1 over rg6 5 m',
        'feed camera -> side',
      ),
    },
  ],

  find(analysis, report) {
    const look = (delivery: Delivery): OtherCarriage | undefined => {
      if (delivery.noRoute?.kind !== 'no way' || delivery.twoPictures) return undefined;
      const missing = howFarOf(analysis, delivery)?.missing;
      if (missing?.kind !== 'other carriage') return undefined;
      // What one of the kits carries could not be read: that is told.
      const { source } = delivery.feed;
      const entry = (source?.from ?? source?.link?.to.port)?.owner;
      const isUnread = [entry, missing.node].some((one) => (one?.kit?.statement.faults.length ?? 0) > 0);
      return isUnread ? undefined : missing;
    };
    for (const { feed, trouble, segments } of feedTroubles(analysis, look)) {
      const { entry, node, exit } = trouble;
      const takes = exit ? `takes only what is ${exit.text}` : 'takes nothing off the network';
      report({
        statement: feed.statement,
        part: targetPart(feed),
        subject: feed.name,
        segment: segments[0]?.name ?? null,
        message: `${shown(feed.sourceName)} does not get to ${shown(feed.targetName)}${inSegments(segments)}: it enters the network ${entry.text}, and ${nodeText(node)} ${takes}. Use boxes of the same kind at both ends.`,
      });
    }
  },
};
