import type { Destination, Link, LinkEnd, Node, Source } from '../../analysis/model.ts';
import type { Comparison, LinkPair } from './comparison.ts';

/** Something that hands can set up, carry and take away. */
export type Box = Node | Source | Destination;

/** One end of a cable goes into another socket of the same place. */
export interface EndMove {
  readonly before: Link;
  readonly after: Link;
  /** The other end; undefined: it goes elsewhere too, by a move of its own. */
  readonly stays: LinkEnd | undefined;
  readonly leaves: LinkEnd;
  readonly goesTo: LinkEnd;
}

type Leaving = Pick<EndMove, 'leaves' | 'goesTo'>;

/** A box before and after. */
export interface BoxPair {
  readonly before: Box;
  readonly after: Box;
}

/** All that hands have to do with boxes and cables, in no order yet. */
export interface Patching {
  readonly newBoxes: readonly Box[];
  readonly oldBoxes: readonly Box[];
  readonly carried: readonly BoxPair[];
  /** Boxes that take their power elsewhere. */
  readonly repowered: readonly BoxPair[];
  /** Boxes that are there before and after, and stay. */
  readonly staying: readonly BoxPair[];
  /** Plugged cables that come out, and cables that are plugged. */
  readonly gone: readonly Link[];
  readonly come: readonly Link[];
  readonly moves: readonly EndMove[];
  /** Spares that lie unplugged. */
  readonly sparesLaid: readonly Link[];
  readonly sparesTakenUp: readonly Link[];
  /** Main cables before that are spares now, and the other way round: they lie already. */
  readonly unpluggedOnly: ReadonlySet<Link>;
  readonly laidAlready: ReadonlySet<Link>;
  /** Boxes in whose place another kind of box stands under the same name: the old ones, and the new ones. */
  readonly replaced: ReadonlySet<Box>;
  readonly replacing: ReadonlySet<Box>;
  /** A socket of the old plan by its new name; a box that is replaced keeps its sockets to itself. */
  oldSocket(end: LinkEnd): string;
}

/** Compares sockets, cables and boxes of two plans. */
export function patchingOf(comparison: Comparison): Patching {
  const boxes = pairBoxes(comparison);
  const cables = new CableSorting(comparison, boxes);
  for (const pair of comparison.links) cables.sort(pair);
  return {
    newBoxes: boxes.come,
    oldBoxes: boxes.gone,
    carried: boxes.carried,
    repowered: boxes.staying.filter((pair) => isRepowered(comparison, pair)),
    staying: boxes.staying,
    replaced: boxes.replaced,
    replacing: boxes.replacing,
    ...cables,
    oldSocket: (end) => cables.socketOf(end),
  };
}

interface Boxes {
  readonly come: readonly Box[];
  readonly gone: readonly Box[];
  readonly carried: readonly BoxPair[];
  readonly staying: readonly BoxPair[];
  /** Old boxes in whose place another kind of box stands under the same name. */
  readonly replaced: ReadonlySet<Box>;
  readonly replacing: ReadonlySet<Box>;
  readonly moving: ReadonlySet<Box>;
}

function pairBoxes({ was, is, renames }: Comparison): Boxes {
  const old = new Map(boxesOf(was).map((box) => [`${box.kind} ${renames.of('things', box.name)}`, box]));
  const come: Box[] = [];
  const carried: BoxPair[] = [];
  const staying: BoxPair[] = [];
  const replaced = new Set<Box>();
  const replacing = new Set<Box>();
  const goesOn = new Set<Box>();
  for (const after of boxesOf(is)) {
    const before = old.get(`${after.kind} ${after.name}`);
    if (!before) come.push(after);
    else if (before.kit && after.kit && renames.of('kits', before.kit.name) !== after.kit.name) {
      replaced.add(before);
      replacing.add(after);
      come.push(after);
    } else {
      goesOn.add(before);
      const elsewhere =
        before.place && after.place && renames.of('places', before.place.name) !== after.place.name;
      (elsewhere ? carried : staying).push({ before, after });
    }
  }
  const gone = boxesOf(was).filter((box) => !goesOn.has(box));
  const moving = new Set(carried.flatMap(({ before, after }) => [before, after]));
  return { come, gone, carried, staying, replaced, replacing, moving };
}

/** A source that is the output of a box is nothing that anybody carries. */
function boxesOf({ nodes, sources, destinations }: Comparison['is']): Box[] {
  return [...nodes.values(), ...[...sources.values()].filter(({ from }) => !from), ...destinations.values()];
}

function isRepowered({ renames }: Comparison, { before, after }: BoxPair): boolean {
  const was = before.poweredBy.map(({ name }) => renames.of('things', name));
  const is = after.poweredBy.map(({ name }) => name);
  return [...was].sort().join('\n') !== [...is].sort().join('\n');
}

class CableSorting {
  readonly gone: Link[] = [];
  readonly come: Link[] = [];
  readonly moves: EndMove[] = [];
  readonly sparesLaid: Link[] = [];
  readonly sparesTakenUp: Link[] = [];
  readonly unpluggedOnly = new Set<Link>();
  readonly laidAlready = new Set<Link>();
  readonly #comparison: Comparison;
  readonly #boxes: Boxes;

  constructor(comparison: Comparison, boxes: Boxes) {
    this.#comparison = comparison;
    this.#boxes = boxes;
  }

  sort(pair: LinkPair): void {
    const before = pair.before && isPluggable(pair.before) ? pair.before : undefined;
    const after = pair.after && isPluggable(pair.after) ? pair.after : undefined;
    if (before && after) this.#sortBoth(before, after);
    else {
      if (before) this.#takeAway(before);
      if (after) this.#bring(after);
    }
  }

  #sortBoth(before: Link, after: Link): void {
    if (!this.#isSameCable(before, after)) {
      this.#takeAway(before);
      this.#bring(after);
      return;
    }
    const { stays, moves } = this.#ends(before, after);
    if (moves.length === 0) {
      if (before.standbyFor && !after.standbyFor) {
        this.come.push(after);
        this.laidAlready.add(after);
      } else if (!before.standbyFor && after.standbyFor) {
        this.gone.push(before);
        this.unpluggedOnly.add(before);
      }
    } else if (
      !before.standbyFor === !after.standbyFor &&
      moves.every(({ leaves, goesTo }) => this.#isSamePlace(leaves, goesTo))
    ) {
      // The ends of a spare lie beside their sockets: there is nothing to do.
      if (!after.standbyFor)
        this.moves.push(...moves.map((move): EndMove => ({ before, after, stays, ...move })));
    } else {
      this.#takeAway(before);
      this.#bring(after);
    }
  }

  #takeAway(link: Link): void {
    (link.standbyFor ? this.sparesTakenUp : this.gone).push(link);
  }

  #bring(link: Link): void {
    (link.standbyFor ? this.sparesLaid : this.come).push(link);
  }

  /** The same kind of cable along the same way, with no box at its ends that is carried elsewhere. */
  #isSameCable(before: Link, after: Link): boolean {
    const { renames } = this.#comparison;
    const way = (link: Link) => ('by' in link.statement.fact ? link.statement.fact.by : []);
    const wasBy = way(before).map((place) => renames.of('places', place));
    return (
      (before.cable && renames.of('cables', before.cable.name)) === after.cable?.name &&
      (wasBy.join() === way(after).join() || wasBy.reverse().join() === way(after).join()) &&
      ![before.from, before.to, after.from, after.to].some(({ port }) => this.#boxes.moving.has(port!.owner))
    );
  }

  /** Which end goes where; an end that has its socket already stays. A cable may be written from its other end. */
  #ends(before: Link, after: Link): { stays: LinkEnd | undefined; moves: readonly Leaving[] } {
    const staying = ({ leaves, goesTo }: Leaving) => this.socketOf(leaves) === goesTo.text;
    const ways: readonly (readonly Leaving[])[] = [
      [
        { leaves: before.from, goesTo: after.from },
        { leaves: before.to, goesTo: after.to },
      ],
      [
        { leaves: before.from, goesTo: after.to },
        { leaves: before.to, goesTo: after.from },
      ],
    ];
    const way =
      ways.find((ends) => ends.every(staying)) ??
      ways.find((ends) => ends.some(staying)) ??
      ways.find((ends) => ends.every(({ leaves, goesTo }) => this.#isSamePlace(leaves, goesTo))) ??
      ways[0]!;
    return {
      stays: way.find(staying)?.goesTo,
      moves: way.filter((end) => !staying(end)),
    };
  }

  /** A socket of the old plan by its new name; a box that is replaced keeps its sockets to itself. */
  socketOf(end: LinkEnd): string {
    const socket = this.#comparison.renames.socket(end.text);
    return end.port && this.#boxes.replaced.has(end.port.owner) ? `old ${socket}` : socket;
  }

  #isSamePlace(before: LinkEnd, after: LinkEnd): boolean {
    const [was, is] = [before.port?.owner.place, after.port?.owner.place];
    return (
      was !== undefined && is !== undefined && this.#comparison.renames.of('places', was.name) === is.name
    );
  }
}

/** Both ends are known. */
function isPluggable({ from, to }: Link): boolean {
  return from.port !== undefined && to.port !== undefined;
}
