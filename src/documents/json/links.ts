import type { Analysis, DirectionLoad, Link, Load, Segment } from '../../analysis/model.ts';
import { loadIn } from '../../analysis/traffic.ts';
import {
  figure,
  list,
  number,
  object,
  oneOf,
  orNull,
  rounded,
  text,
  type ValueOf,
  whole,
  yesNo,
} from './schema.ts';

const directionWords = ['forward', 'backward'] as const;

const loadShape = object('What a link carries in one segment', {
  segment: orNull(text('Name of the segment; null: the feeds that always hold, without any segment')),
  forward_bits_per_second: whole('From the first end to the second, every bit that occupies the wire'),
  backward_bits_per_second: whole('From the second end to the first'),
  forward_flows: list('Pictures from the first end to the second, each once', text('Name of a source')),
  backward_flows: list('Pictures from the second end to the first', text('Name of a source')),
});

export const linkShape = object('A cable between two sockets', {
  name: text('Its own name, or one from its ends: `scores>mixer.in1`'),
  from: text('First end as written: `box_d.net1`, or the name of a source'),
  to: text('Second end as written: `box_p.net1`, or the name of a destination'),
  both_ways: yesNo('Whether pictures can go both ways'),
  interface: orNull(text('What runs over it: the fastest that both ends accept and the cable lists')),
  cable: orNull(text('Kind of cable')),
  length_m: orNull(number('Length in metres: as measured, else as stated, else as computed from runs')),
  length_from: orNull(oneOf('Where the length comes from', ['stated', 'runs', 'measured'])),
  planned_length_m: orNull(number('Length in metres without anything measured')),
  reach_m: orNull(number('The longest that it may be, in metres')),
  loss_db: orNull(
    number('Loss of this cable in dB, on coax and fibre; null for one of several joined fibres'),
  ),
  loss_limit_db: orNull(
    number('The greatest loss allowed in dB, for all cables between the two active ports'),
  ),
  joined_with: list('The other cables between the same two active ports', text('Name of a link')),
  joined_length_m: orNull(number('All cables between the two active ports together, in metres')),
  joined_loss_db: orNull(number('Loss of all cables between the two active ports, in dB')),
  capacity_bits_per_second: orNull(whole('Line rate of one direction')),
  loads: list('Its load without segments, then in each segment', loadShape),
  worst: object('Where it is fullest', {
    segment: orNull(text('Name of the segment; null: without segments')),
    direction: oneOf('forward: from the first end to the second', directionWords),
    share: orNull(number('Load over capacity: 1 is full; null where it has no capacity')),
  }),
});

export function linkJson(analysis: Analysis, link: Link): ValueOf<typeof linkShape> {
  const traffic = analysis.traffic[link.index]!;
  const reach = analysis.reaches[link.chain.index]!;
  const { chain, length } = link;
  const others = chain.links.filter((other) => other !== link);
  return {
    name: link.name,
    from: link.from.text,
    to: link.to.text,
    both_ways: link.bothWays,
    interface: chain.interface?.name ?? null,
    cable: link.cable?.name ?? null,
    length_m: figure(length.length_m),
    length_from: length.from ?? null,
    planned_length_m: figure(length.planned_m),
    reach_m: figure(reach.reach_m),
    loss_db: figure(others.length === 0 ? reach.loss_db : reach.losses_db[chain.links.indexOf(link)]),
    loss_limit_db: figure(reach.loss_limit_db),
    joined_with: others.map((other) => other.name),
    joined_length_m: figure(chain.length_m),
    joined_loss_db: figure(reach.loss_db),
    capacity_bits_per_second: rounded(chain.capacity_bits_per_second),
    loads: analysis.situations.map(({ segment }) => loadJson(loadIn(traffic, segment), segment)),
    worst: {
      segment: traffic.worst.segment?.name ?? null,
      direction: traffic.worst.direction,
      share: figure(traffic.worst.share),
    },
  };
}

function loadJson({ forward, backward }: Load, segment: Segment | undefined): ValueOf<typeof loadShape> {
  return {
    segment: segment?.name ?? null,
    forward_bits_per_second: rounded(forward.load_bits_per_second),
    backward_bits_per_second: rounded(backward.load_bits_per_second),
    forward_flows: sourcesOn(forward),
    backward_flows: sourcesOn(backward),
  };
}

/** Names of the sources whose pictures go one way; one that goes there in two copies stands twice. */
export function sourcesOn({ flows, pictures }: DirectionLoad): string[] {
  return [...flows.map((flow) => flow.source.name), ...pictures.map((source) => source.name)];
}
