import type { Building } from './building.ts';
import { type Choice, choicesOf, chooseInterface, type Meeting } from './link-interface.ts';
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
  readonly chains: Building<Chain>[] = [];
  /** Answers already given for chains of one link, for most are alike. */
  readonly #choices = new Map<string, Choice>();

  constructor(links: readonly RawLink[]) {
    for (const link of links) {
      if (link.chain !== undefined) continue;
      const single = !isPass(link.from.port) && !isPass(link.to.port);
      this.#add(single ? [{ link, reversed: false }] : piecesAround(link));
    }
  }

  #add(pieces: readonly Piece[]): void {
    const turned = sendsBackwards(pieces) ? turn(pieces) : pieces;
    const first = turned[0]!;
    const last = turned[turned.length - 1]!;
    const ends: [LinkEnd, LinkEnd] = [startOf(first), endOf(last)];
    const choice = this.#choicesOf(turned, ends);
    const length_m = lengthOf(turned);
    const cables = turned.map(({ link }) => link.cable);
    const face = chooseInterface(choice, cables, length_m);
    const chain: Building<Chain> = {
      index: this.chains.length,
      links: turned.map(({ link }) => link),
      reversed: turned.length === 1 && !first.reversed ? asWritten : turned.map(({ reversed }) => reversed),
      ends,
      length_m,
      interface: face,
      interfaceFault: choice.fault,
      slowedFrom: choice.slowedFrom,
      capacity_bits_per_second: face?.rate_bits_per_second || undefined,
    };
    this.chains.push(chain);
    const network = isNetwork(ends[0]) || isNetwork(ends[1]);
    const isMixed = mixesNetwork(ends[0].port, ends[1].port);
    for (const { link, reversed } of turned) {
      link.chain = chain;
      link.network = network;
      const [from, to] = reversed ? [ends[1], ends[0]] : ends;
      direct(link, from.port, to.port, isMixed);
      link.directionFault = faultOf(link, isMixed && link === first.link);
    }
  }

  #choicesOf(pieces: readonly Piece[], ends: readonly [LinkEnd, LinkEnd]): Choice {
    if (pieces.length > 1) return choicesOf(meetingOf(pieces, ends));
    const { pinned, cable } = pieces[0]!.link;
    const key = [ends[0].port?.interface, ends[1].port?.interface, pinned, cable]
      .map((one) => one?.index ?? '')
      .join();
    let choice = this.#choices.get(key);
    if (!choice) {
      choice = choicesOf(meetingOf(pieces, ends));
      this.#choices.set(key, choice);
    }
    return choice;
  }
}

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
