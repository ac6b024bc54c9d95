import {
  type Choice,
  choicesOf,
  chooseInterface,
  chooseInterfaceOver,
  type Meeting,
} from './link-interface.ts';
import type { RawLink } from './links.ts';
import type { Cable, Chain, DirectionFault, Interface, Link, LinkEnd, Port } from './model.ts';

/** One link of a chain, and whether the chain runs against it as written. */
interface Piece {
  readonly link: RawLink;
  readonly reversed: boolean;
}

/**
 * Puts the links together that are joined without regenerating, decides what runs on them and which way.
 *
 * A link whose ends are both active is a chain of its own.
 */
export class ChainMaker {
  readonly chains: Chain[] = [];
  /** Answers already given for chains of one link, for most are alike. */
  readonly #choices = new Map<number, Choice>();

  constructor(links: readonly RawLink[]) {
    for (const link of links) {
      if (link.chain !== undefined) continue;
      if (isPass(link.from.port) || isPass(link.to.port)) this.#addJoined(piecesAround(link));
      else this.#addSingle(link);
    }
  }

  /** Decides anew what runs on a chain one of whose cables is another, or of another length. */
  decideAgain({ index, links, reversed, ends }: Chain): Chain {
    const pieces = links.map((link, i) => ({ link: link as RawLink, reversed: reversed[i]! }));
    const meeting = meetingOf(pieces, ends);
    const choice = choicesOf(meeting);
    const length_m = lengthOf(pieces);
    const face = chooseInterfaceOver(choice, meeting.cables, length_m);
    const chain = chainOf(index, links, reversed, ends, length_m, face, choice);
    this.chains[index] = chain;
    for (const { link } of pieces) link.chain = chain;
    return chain;
  }

  #addSingle(link: RawLink): void {
    const { from, to, pinned, cable, length } = link;
    const choice = this.#choicesOf(from.port?.interface, to.port?.interface, pinned, cable);
    const face = chooseInterface(choice, cable, length.length_m);
    this.#finish(this.#add([link], asWritten, [from, to], length.length_m, face, choice), link);
  }

  #addJoined(pieces: readonly Piece[]): void {
    const turned = sendsBackwards(pieces) ? turn(pieces) : pieces;
    const ends: [LinkEnd, LinkEnd] = [startOf(turned[0]!), endOf(turned[turned.length - 1]!)];
    const meeting = meetingOf(turned, ends);
    const choice = choicesOf(meeting);
    const length_m = lengthOf(turned);
    const face = chooseInterfaceOver(choice, meeting.cables, length_m);
    const links = turned.map(({ link }) => link);
    const reversed = turned.map((piece) => piece.reversed);
    const chain = this.#add(links, reversed, ends, length_m, face, choice);
    for (const link of links) this.#finish(chain, link);
  }

  #add(
    links: readonly RawLink[],
    reversed: readonly boolean[],
    ends: readonly [LinkEnd, LinkEnd],
    length_m: number | undefined,
    face: Interface | undefined,
    choice: Choice,
  ): Chain {
    const chain = chainOf(this.chains.length, links, reversed, ends, length_m, face, choice);
    this.chains.push(chain);
    return chain;
  }

  /** What a link has from its chain: whether it is the network's, and which ways round it carries. */
  #finish(chain: Chain, link: RawLink): void {
    const [start, end] = chain.ends;
    const isReversed = chain.reversed[chain.links.indexOf(link)]!;
    const isMixed = mixesNetwork(start.port, end.port);
    link.chain = chain;
    link.network = isNetwork(start) || isNetwork(end);
    if (isReversed) direct(link, end.port, start.port, isMixed);
    else direct(link, start.port, end.port, isMixed);
    link.directionFault = faultOf(link, isMixed && link === chain.links[0]);
  }

  /** Most chains of one link are alike, so each kind is thought over once. */
  #choicesOf(
    from: Interface | undefined,
    to: Interface | undefined,
    pinned: Interface | undefined,
    cable: Cable | undefined,
  ): Choice {
    const key = [from, to, pinned, cable].reduce(
      (sum, one) => sum * MOST_KINDS + (one ? one.index + 1 : 0),
      0,
    );
    let choice = this.#choices.get(key);
    if (!choice) {
      choice = choicesOf({ faces: [from, to], pinned, cables: [cable] });
      this.#choices.set(key, choice);
    }
    return choice;
  }
}

function chainOf(
  index: number,
  links: readonly Link[],
  reversed: readonly boolean[],
  ends: readonly [LinkEnd, LinkEnd],
  length_m: number | undefined,
  face: Interface | undefined,
  { fault, slowedFrom }: Choice,
): Chain {
  return {
    index,
    links,
    reversed,
    ends,
    length_m,
    interface: face,
    interfaceFault: fault,
    slowedFrom,
    capacity_bits_per_second: face?.rate_bits_per_second || undefined,
  };
}

/** So many kinds of interfaces and cables make one number with four of them; more are thought over each time. */
const MOST_KINDS = 8192;

/** Of a chain of one link; shared, for most chains are. */
const asWritten: readonly boolean[] = [false];

function meetingOf(pieces: readonly Piece[], ends: readonly [LinkEnd, LinkEnd]): Meeting {
  return {
    faces: facesOf(pieces, ends),
    pinned: pieces.find(({ link }) => link.pinned)?.link.pinned,
    cables: pieces.map(({ link }) => link.cable),
  };
}

/** What the two ends and the joins between are made for. */
function facesOf(pieces: readonly Piece[], ends: readonly [LinkEnd, LinkEnd]): (Interface | undefined)[] {
  const joins = pieces.slice(0, -1).map((piece) => endOf(piece).port?.interface);
  return [ends[0].port?.interface, ...joins, ends[1].port?.interface];
}

/** What would stand against each other on a chain if one of its links were another cable. */
export function meetingWith({ links, reversed, ends }: Chain, link: Link, cable: Cable): Meeting {
  const pieces = links.map((one, i) => ({ link: one as RawLink, reversed: reversed[i]! }));
  return { ...meetingOf(pieces, ends), cables: links.map((one) => (one === link ? cable : one.cable)) };
}

/** Follows the joins from a link both ways, until an active port, a free socket, or round a circle. */
function piecesAround(link: RawLink): Piece[] {
  const seen = new Set<Link>([link]);
  const onwards = followed({ link, reversed: false }, seen);
  const back = followed({ link, reversed: true }, seen);
  return [...turn(back), { link, reversed: false }, ...onwards];
}

function followed(start: Piece, seen: Set<Link>): Piece[] {
  const pieces: Piece[] = [];
  let at = endOf(start).port;
  for (;;) {
    const across = at?.joined;
    const next = across?.links.find((one) => one.chain === undefined && !seen.has(one)) as
      | RawLink
      | undefined;
    if (across === undefined || next === undefined) return pieces;
    seen.add(next);
    const piece = { link: next, reversed: next.from.port !== across };
    pieces.push(piece);
    at = endOf(piece).port;
  }
}

function turn(pieces: readonly Piece[]): Piece[] {
  return pieces.map(({ link, reversed }) => ({ link, reversed: !reversed })).reverse();
}

function startOf({ link, reversed }: Piece): LinkEnd {
  return reversed ? link.to : link.from;
}

function endOf({ link, reversed }: Piece): LinkEnd {
  return reversed ? link.from : link.to;
}

/** A chain begins where the picture comes from; where it runs both ways, at the end of the link written first. */
function sendsBackwards(pieces: readonly Piece[]): boolean {
  if (pieces.length === 1) return false;
  const first = startOf(pieces[0]!).port;
  const last = endOf(pieces[pieces.length - 1]!).port;
  if (last?.role === 'output' || first?.role === 'input') return true;
  if (first?.role === 'output' || last?.role === 'input') return false;
  const oneWay = pieces.find(({ link }) => !link.bothWays);
  if (oneWay) return oneWay.reversed;
  let earliest = pieces[0]!;
  for (const piece of pieces) if (piece.link.index < earliest.link.index) earliest = piece;
  return earliest !== pieces[0] && earliest === pieces[pieces.length - 1];
}

function lengthOf(pieces: readonly Piece[]): number | undefined {
  let sum = 0;
  for (const { link } of pieces) {
    if (link.length.length_m === undefined) return undefined;
    sum += link.length.length_m;
  }
  return sum;
}

/** Which ways round a picture can go over a link that lies between these two active ports. */
function direct(link: RawLink, from: Port | undefined, to: Port | undefined, isMixed: boolean): void {
  const isClosed = !from || !to || isMixed || isOntoItself(link);
  link.carriesForward = !isClosed && canSend(from) && canTake(to);
  link.carriesBackward = !isClosed && link.bothWays && canSend(to) && canTake(from);
}

/** What is wrong with how the link is written, judged by its own two ports. */
function faultOf(link: RawLink, isMixed: boolean): DirectionFault | undefined {
  const from = link.from.port;
  const to = link.to.port;
  if (isOntoItself(link)) return 'onto itself';
  if (isMixed) return 'a network port with another kind of port';
  if (link.bothWays) return isOneWay(from) || isOneWay(to) ? 'both ways on a one-way port' : undefined;
  if (from && !canSend(from)) return 'from an input';
  return to && !canTake(to) ? 'to an output' : undefined;
}

function isOntoItself({ from, to }: RawLink): boolean {
  return from.port !== undefined && from.port === to.port;
}

function isOneWay(port: Port | undefined): boolean {
  return port?.role === 'input' || port?.role === 'output';
}

function canSend({ role }: Port): boolean {
  return role !== 'input';
}

function canTake({ role }: Port): boolean {
  return role !== 'output';
}

function mixesNetwork(a: Port | undefined, b: Port | undefined): boolean {
  return (isOneWay(a) && b?.role === 'network') || (isOneWay(b) && a?.role === 'network');
}

function isPass(port: Port | undefined): boolean {
  return port?.role === 'pass';
}

function isNetwork({ port }: LinkEnd): boolean {
  return port?.role === 'network';
}
