import type { Analysis, Delivery, Feed, HowFar, Missing, NoRoute, Owner, Source } from '../analysis/model.ts';
import type { Check } from './check.ts';
import { feedTroubles, targetPart } from './deliveries.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import type { Fix } from './finding.ts';
import { addStatement } from './fixes/declare.ts';
import { howFarOf } from './how-far-asked.ts';
import { inSegments, linkText, listed, nodeText, shown } from './words.ts';

export const noRoute: Check = {
  name: 'no-route',
  severity: 'error',
  summary: 'A picture does not get to where it is wanted.',
  explanation: `There is no way from the source to the destination over the cables of the plan. On the day the screen is
black.

**How it is judged.** A picture runs along links from port to port. Inside a node it goes from an input out to the
network and from the network to outputs (where the kit \`carries\` something), from an input to the outputs that
\`follow\` it, through a switch (\`forwards\`), a matrix (\`routes inputs to outputs\`) or a join. A mixer ends its
inputs: its outputs begin new sources. Standbys are not used while the link that they stand by for is there. The message
says how far the picture gets and what is missing there.

**What mends it.** The missing cable, the right direction, or a kit that passes the picture on.`,
  examples: [
    { wrong: changedPlan('link trunk box_s.net1 <-> box_d.net1 over cat6a', ''), right: smallPlan() },
    {
      wrong: smallPlan('destination side at desk takes 1080p50 as sdi_3g', 'feed camera -> side'),
      right: smallPlan(
        'destination side at desk takes 1080p50 as sdi_3g from box_d.out2 over rg6 5 m',
        'feed camera -> side',
      ),
    },
  ],

  find(analysis, report) {
    const misused = new Set<Owner>(analysis.names.unknownPorts.map(({ node }) => node));
    const somethingIsBroken = analysis.remarkable.links.some(({ from, to }) => !from.port || !to.port);
    const unplugged = new Set<Source>();
    for (const { feed, delivery, trouble, segments } of feedTroubles(analysis, troubleOf)) {
      if (hasUnknownEnd(feed) || isBesideUnknownPort(feed, misused)) continue;
      if (trouble.kind === 'source not plugged in' && feed.source) {
        // The source is what is wrong: once, however many want its picture.
        if (unplugged.has(feed.source)) continue;
        unplugged.add(feed.source);
      }
      const far = trouble.kind === 'no way' ? howFarOf(analysis, delivery) : undefined;
      if (trouble.kind === 'no way' && !far && somethingIsBroken) continue;
      const why = trouble.kind === 'no way' ? whyItStops(far, misused) : reasons[trouble.kind](delivery);
      if (why === undefined) continue;
      const from = shown(feed.sourceName);
      report({
        statement: feed.statement,
        part: targetPart(feed),
        severity: trouble.kind === 'out of service' ? 'warning' : 'error',
        subject: feed.name,
        segment: segments[0]?.name ?? null,
        message: `${from} does not get to ${shown(feed.targetName)}${inSegments(segments)}${withoutText(delivery)}: ${why}`,
        fixes: () => (far ? missingLinkFixes(analysis, delivery, far.missing) : []),
      });
    }
  },
};

function troubleOf({ noRoute: none, twoPictures }: Delivery): NoRoute | undefined {
  return twoPictures ? undefined : none;
}

/** What the segment takes out of service, where that may be the reason. */
function withoutText({ segment }: Delivery): string {
  if (!segment || segment.without.length === 0) return '';
  return ` without ${listed(segment.without.map(({ name }) => name))}`;
}

/** Reasons that show on the feed itself. Undefined where another check has told the mistake behind it. */
const reasons: Record<NoRoute['kind'], (delivery: Delivery) => string | undefined> = {
  'source not known': () => undefined,
  'target not known': () => undefined,
  'via cannot be met': () => undefined,
  'no way': () => undefined,
  'target is no input': ({ feed }) =>
    `${shown(feed.targetName)} is no input. A feed ends at a destination or at an input of a node.`,
  'source not plugged in': ({ feed }) => {
    const fact = feed.source?.statement.fact;
    if (fact?.into || fact?.from) return undefined;
    return `the source is plugged into nothing. Write \`into node.port\` at it, or \`from node.port\` where it comes out of a node.`;
  },
  'target not plugged in': ({ feed }) => {
    const { target } = feed;
    if (target && 'takes' in target && target.statement.fact.from) return undefined;
    return target && 'takes' in target
      ? 'the destination is plugged into nothing. Write `from node.port` at it.'
      : `nothing is plugged into ${shown(feed.targetName)}. Write a \`link\` to it.`;
  },
  'out of service': () =>
    'one of its ends is out of service then. Write `black` or `instead of` for that segment if this is meant.',
};

/** Whether the cable of the source or the destination ends at something unknown, which is told as such. */
function hasUnknownEnd({ source, target }: Feed): boolean {
  const fact = source?.statement.fact;
  if (fact?.from && !source?.from) return true;
  if (source?.link && !source.link.to.port) return true;
  if (!target) return false;
  if ('takes' in target) return target.link !== undefined && !target.link.from.port;
  return target.owner.kind === 'node' && !target.owner.kit;
}

/** Whether the source or the destination hangs on a node of which a port is used that it does not have. */
function isBesideUnknownPort({ source, target }: Feed, misused: ReadonlySet<Owner>): boolean {
  const last = target && 'takes' in target ? target.link?.from.port : target;
  return [source?.from ?? source?.link?.to.port, last].some((port) => port && misused.has(port.owner));
}

function whyItStops(far: HowFar | undefined, misused: ReadonlySet<Owner>): string | undefined {
  if (!far) return 'no way leads there. Write the `link` that is missing.';
  const { reaches, missing } = far;
  const last = reaches.at(-1);
  const node = missing.kind === 'passes nothing' ? missing.node : last?.owner;
  // A kit of which a part could not be read, or that lacks a port that is used, is told as that.
  if ((node && misused.has(node)) || (node?.kit?.statement.faults.length ?? 0) > 0) return undefined;
  const what = whatIsMissing(missing);
  if (what === undefined) return undefined;
  return last ? `it gets as far as ${shown(last.text)}, and ${what}` : what;
}

function whatIsMissing(missing: Missing): string | undefined {
  switch (missing.kind) {
    case 'nothing':
      return 'no cable leads on from there. Write the `link` that is missing.';
    case 'no cable':
      return `nothing is plugged into ${shown(missing.port.text)}. Write a \`link\` from there.`;
    case 'passes nothing':
      return `${nodeText(missing.node)} passes it to no port that leads there. Use another port, put a switch between, or say in its kit what it \`carries\`, \`forwards\`, \`routes\` or lets \`follow\`.`;
    case 'standby':
      return `only ${linkText(missing.link)} leads on, which is a standby. Use a link that is always there.`;
    case 'not joined':
      return `the network there is not joined to the network at ${shown(missing.to.text)}. Write a \`link\` between ${shown(missing.from.text)} and ${shown(missing.to.text)}.`;
    case 'wrong way':
      return missing.link.directionFault === undefined
        ? `${linkText(missing.link)} leads the other way only. Write \`<->\`, or turn it round.`
        : undefined;
    // Told by carriage-differs, unknown-name, unknown-port or kit-missing.
    case 'other carriage':
    case 'kit not known':
    case 'broken link':
      return undefined;
  }
}

/** A link between two networks that are not joined, of the cable that other network links have. */
function missingLinkFixes(analysis: Analysis, { feed }: Delivery, missing: Missing): readonly Fix[] {
  if (missing.kind !== 'not joined') return [];
  const { from, to } = missing;
  const face = from.interface;
  const alike = analysis.links.find(
    (link) => link.network && link.cable && (!face || link.chain.interface === face),
  );
  const cable = alike?.cable ?? analysis.cables.get('cat6a');
  const text = `link ${from.text} <-> ${to.text}${cable ? ` over ${cable.name}` : ''}`;
  return [
    {
      title: `Join ${shown(from.text)} and ${shown(to.text)}`,
      edits: [addStatement(analysis, 'link', text, feed.statement)],
    },
  ];
}
