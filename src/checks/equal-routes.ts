import type { Delivery, Link, Tie } from '../analysis/model.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { counted, linkSubject, linkText, listedWords, shown } from './words.ts';

export const equalRoutes: Check = {
  name: 'equal-routes',
  severity: 'info',
  summary: 'Two ways are equally short, and the plan has chosen the one that is written first.',
  explanation: `Nothing is wrong, but a choice was made for you: with the two links written the other way round the
pictures would go the other way, and its loads would be others.

**How it is judged.** The way with the fewest links is taken, then the one through the fewest nodes, then the one written
first. There is no sharing of loads: every picture takes one way. A tie is told once for each link that was chosen.

**What mends it.** Nothing has to. \`via node.port\` on a feed says which way you mean; \`standby for\` on the other link
says that it is not to be used.`,
  examples: [
    {
      wrong: smallPlan(
        'link trunk_b box_s.net2 <-> box_d.net2 over cat6a',
        'source camera_2 at stage sends 1080p50 as sdi_3g into box_s.in2 over rg6 5 m',
        'destination screen_2 at desk takes 1080p50 as sdi_3g from box_d.out2 over rg6 5 m',
        'feed camera_2 -> screen_2 via box_d.net2',
      ),
      right: smallPlan(
        'link trunk_b box_s.net2 <-> box_d.net2 over cat6a',
        'source camera_2 at stage sends 1080p50 as sdi_3g into box_s.in2 over rg6 5 m',
        'destination screen_2 at desk takes 1080p50 as sdi_3g from box_d.out2 over rg6 5 m',
        'feed camera_2 -> screen_2 via box_d.net2',
      ).replace('feed camera -> screen\n', 'feed camera -> screen via box_d.net1\n'),
    },
  ],

  find({ remarkable }, report) {
    for (const { tie, delivery, feeds } of byChoice(remarkable.deliveries)) {
      const { chosen, others, port } = tie;
      report({
        statement: delivery.feed.statement,
        part: 'source',
        subject: linkSubject(chosen),
        message: `From ${shown(port.text)} two ways are equally short. ${counted(feeds.size, 'feed takes', 'feeds take')} ${linkText(chosen)} because it is written first, not ${listedWords(others.map(linkText))}. Pin the way with \`via\` if you mean one of them.`,
        related: [
          { place: { statement: chosen.statement }, message: 'Chosen.' },
          ...others.map((link) => ({ place: { statement: link.statement }, message: 'Not chosen.' })),
        ],
      });
    }
  },
};

interface Choice {
  readonly tie: Tie;
  readonly delivery: Delivery;
  readonly feeds: Set<unknown>;
}

/** Every tie once, with the feeds that it decides for. */
function byChoice(deliveries: readonly Delivery[]): Choice[] {
  const choices = new Map<Link, Choice>();
  for (const delivery of deliveries) {
    for (const tie of delivery.ties) {
      if (takesBoth(delivery, tie) || tie.others.every(isMeantAsStandby)) continue;
      const known = choices.get(tie.chosen);
      if (known) known.feeds.add(delivery.feed);
      else choices.set(tie.chosen, { tie, delivery, feeds: new Set([delivery.feed]) });
    }
  }
  return [...choices.values()];
}

/** Written as a standby for something that is not known, which is told. */
function isMeantAsStandby({ statement, standbyFor }: Link): boolean {
  return statement.fact.kind === 'link' && statement.fact.standbyFor !== undefined && !standbyFor;
}

/** The second copy of a seamless feed goes the other way: then nothing was left out. */
function takesBoth({ routes }: Delivery, { others }: Tie): boolean {
  const [, second] = routes;
  return second !== undefined && others.every((link) => second.steps.some((step) => step.link === link));
}
