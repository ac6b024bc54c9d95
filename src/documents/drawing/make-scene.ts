import { add } from '../../analysis/lists.ts';
import type { Analysis, Link, Node, Port, Source } from '../../analysis/model.ts';
import { bareSocket, socketsOf } from '../../analysis/ports.ts';
import { formatLength, formatLoss } from '../../physics/display.ts';
import { Titles } from '../sheets/titles.ts';
import {
  type Chosen,
  chooseThings,
  type DrawnLink,
  drawableLinks,
  type PortOwner,
  type SceneChoice,
} from './choose-things.ts';
import { makeSituation } from './make-situation.ts';
import { noteLines } from './measures.ts';
import type {
  Box,
  BoxPort,
  PictureKey,
  Ribbon,
  Room,
  Scene,
  SceneEnd,
  SceneSituation,
  Trouble,
  Watched,
  Wire,
} from './scene.ts';
import { leftToRight } from './sides.ts';
import { apart, joined, nameText, outOf } from './words.ts';

export type { SceneChoice } from './choose-things.ts';

/** So many free ports of each side are drawn; the others are counted. */
const FREE_PORTS_DRAWN = 3;

/** Everything that a drawing of a plan shows, figures in words included. */
export function makeScene(analysis: Analysis, choice: SceneChoice = {}): Scene {
  const drawable = drawableLinks(analysis);
  const chosen = chooseThings(analysis, drawable, choice);
  return new SceneMaker(analysis, chosen, positionsOf(analysis, drawable)).make(choice);
}

/** Who stands left of whom is settled for the plan as a whole, so that the drawing of a part looks like its part. */
function positionsOf(analysis: Analysis, drawable: readonly DrawnLink[]): ReadonlyMap<string, number> {
  const owners: PortOwner[] = [
    ...analysis.nodes.values(),
    ...analysis.sources.values(),
    ...analysis.destinations.values(),
  ];
  return leftToRight(
    owners.map(({ name, place }) => ({ id: name, room: place?.index ?? analysis.places.size })),
    drawable.map(({ from, to }) => ({ from: from.owner.name, to: to.owner.name })),
  );
}

class SceneMaker {
  readonly #analysis: Analysis;
  readonly #titles: Titles;
  readonly #chosen: Chosen;
  readonly #positions: ReadonlyMap<string, number>;

  constructor(analysis: Analysis, chosen: Chosen, positions: ReadonlyMap<string, number>) {
    this.#analysis = analysis;
    this.#titles = new Titles(analysis);
    this.#chosen = chosen;
    this.#positions = positions;
  }

  make(choice: SceneChoice): Scene {
    const { settings, situations, places, sources } = this.#analysis;
    const { links, owners } = this.#chosen;
    const shown = situations.map((situation) =>
      makeSituation(this.#analysis, this.#titles, this.#chosen, situation),
    );
    const numbers = mostNumbers(shown);
    const notes = notesOf(shown);
    const boxes = [...owners].map((owner) => this.#box(owner)).map((box) => withNotes(box, notes));
    const used = new Set(boxes.map((box) => box.room));
    const isPart = Object.values(choice).some((one) => one !== undefined);
    const seen = isPart ? numbersIn(boxes, shown) : undefined;
    return {
      title: nameText(settings.title),
      edition: joined([editionOf(this.#analysis), this.#partOf(choice)]),
      pictures: [...sources.values()].flatMap((source) => this.#pictureKey(source, seen)),
      rooms: [...places.values()]
        .filter((place) => used.has(place.name))
        .map((place): Room => ({ id: place.name, title: nameText(this.#titles.of(place)) })),
      boxes,
      wires: links
        .filter(({ link }) => !link.network)
        .map((drawn) => this.#wire(drawn, numbers.get(drawn.link.name) ?? 0)),
      ribbons: links.filter(({ link }) => link.network).map((drawn) => this.#ribbon(drawn)),
      situations: shown,
    };
  }

  /** What of the plan is drawn, when that is not all. */
  #partOf({ place, source, feed }: SceneChoice): string {
    const [room, picture] = [
      place === undefined ? undefined : this.#analysis.places.get(place),
      source === undefined ? undefined : this.#analysis.sources.get(source),
    ];
    return joined([
      room && apart(this.#titles.of(room)),
      picture && `only ${apart(this.#titles.of(picture))}`,
      feed && `only ${apart(feed)}`,
    ]);
  }

  #pictureKey(source: Source, seen: ReadonlySet<number> | undefined): PictureKey[] {
    const number = this.#titles.numberOf(source);
    if (number === undefined || (seen && !seen.has(number))) return [];
    return [{ number, name: source.name, title: nameText(this.#titles.of(source)) }];
  }

  #box(owner: PortOwner): Box {
    const common = { id: owner.name, title: nameText(this.#titles.of(owner)), room: owner.place?.name };
    if (owner.kind === 'node')
      return {
        ...common,
        kind: 'node',
        subtitle: kitTitle(owner),
        ...this.#ports(owner),
        noteLines: 0,
        picture: undefined,
      };
    const { kind, port } = owner;
    const only: BoxPort = {
      id: owner.name,
      title: '',
      side: (port && this.#sideOf(port)) ?? (kind === 'source' ? 'east' : 'west'),
      free: false,
      begins: undefined,
    };
    const picture = kind === 'source' ? this.#titles.numberOf(owner) : undefined;
    return { ...common, kind, subtitle: '', ports: [only], moreFree: 0, noteLines: 0, picture };
  }

  #ports(node: Node): Pick<Box, 'ports' | 'moreFree'> {
    const begins = this.#beginnings(node);
    const freeDrawn = { west: 0, east: 0 };
    let moreFree = 0;
    const ports: BoxPort[] = [];
    const known = socketsOf(node).map(({ kitPort, label, port }) => ({
      port: port ?? bareSocket(node, kitPort),
      label,
    }));
    for (const { port, label } of [
      ...known,
      ...node.loosePorts.map((port) => ({ port, label: port.label })),
    ]) {
      const begun = begins.get(port);
      const free = port.links.length === 0 && begun === undefined;
      const side = this.#sideOf(port) ?? (port.role === 'input' ? 'west' : 'east');
      if (free && freeDrawn[side]++ >= FREE_PORTS_DRAWN) {
        moreFree++;
        continue;
      }
      const title = joined([port.name, label && apart(label)], ' ');
      ports.push({ id: port.text, title, side, free, begins: begun });
    }
    return { ports, moreFree };
  }

  /** The pictures that come out of a node's own ports. */
  #beginnings(node: Node): ReadonlyMap<Port, number> {
    this.#sourcesFrom ??= sourcesByPort(this.#analysis);
    const begins = new Map<Port, number>();
    for (const source of this.#sourcesFrom.get(node) ?? []) {
      const number = this.#titles.numberOf(source);
      if (source.from && number !== undefined) begins.set(source.from, number);
    }
    return begins;
  }
  #sourcesFrom: ReadonlyMap<PortOwner, readonly Source[]> | undefined;

  /** The side where its cable leaves; undefined for a port without one. */
  #sideOf(port: Port): 'west' | 'east' | undefined {
    for (const link of port.links) {
      const far = link.from.port === port ? link.to.port : link.from.port;
      if (far && far.owner !== port.owner) return this.#isLeft(port, far) ? 'east' : 'west';
    }
    return undefined;
  }

  #isLeft(one: Port, other: Port): boolean {
    return (this.#positions.get(one.owner.name) ?? 0) < (this.#positions.get(other.owner.name) ?? 0);
  }

  #wire({ link, from, to }: DrawnLink, most: number): Wire {
    return {
      id: link.name,
      from: sceneEnd(from),
      to: sceneEnd(to),
      text: joined([this.#ownLabel(link), this.#length(link)]),
      bothWays: link.bothWays,
      fromLeft: this.#isLeft(from, to),
      numbers: endsAtChip(from, to) ? (most > 1 ? most : 0) : Math.max(1, most),
      trouble: this.#reachTrouble(link),
      standbyFor: this.#standbyFor(link),
    };
  }

  #ribbon({ link, from, to }: DrawnLink): Ribbon {
    const reach = this.#analysis.reaches[link.chain.index]?.reach_m;
    const measured = link.length.from === 'measured' ? ' measured' : '';
    const length = this.#length(link);
    const trouble = this.#reachTrouble(link);
    const reachText = reach === undefined || trouble ? '' : `, ${this.#metres(reach)} reach`;
    return {
      id: link.name,
      from: sceneEnd(from),
      to: sceneEnd(to),
      title: joined([this.#ownLabel(link), link.cable && apart(this.#titles.cable(link.cable))]),
      detail: length === undefined ? '' : `${length}${measured}${reachText}`,
      capacity_bits_per_second: link.chain.capacity_bits_per_second,
      bothWays: link.bothWays,
      fromLeft: this.#isLeft(from, to),
      standbyFor: this.#standbyFor(link),
      trouble,
    };
  }

  #ownLabel(link: Link): string | undefined {
    const label = this.#titles.ownLabel(link);
    return label && apart(label);
  }

  #standbyFor({ standbyFor }: Link): string | undefined {
    return standbyFor && apart(this.#titles.link(standbyFor));
  }

  #length({ length }: Link): string | undefined {
    return length.length_m === undefined ? undefined : this.#metres(length.length_m);
  }

  #metres(length_m: number, beside_m?: number): string {
    return formatLength(length_m, this.#analysis.settings.units, beside_m);
  }

  #reachTrouble(link: Link): Trouble | undefined {
    const reach = this.#analysis.reaches[link.chain.index];
    if (!reach || reach.verdict === 'good' || reach.verdict === 'not known') return undefined;
    const { loss_db, loss_limit_db, reach_m, decidedBy } = reach;
    const { length_m } = link.chain;
    let figures: string | undefined;
    if (decidedBy === 'loss' && loss_db !== undefined && loss_limit_db !== undefined)
      figures = outOf(formatLoss(loss_db, loss_limit_db), formatLoss(loss_limit_db, loss_db));
    else if (length_m !== undefined && reach_m !== undefined)
      figures = outOf(this.#metres(length_m, reach_m), this.#metres(reach_m, length_m));
    return { grave: reach.verdict === 'beyond', text: joined([verdictWords[reach.verdict], figures], ' ') };
  }
}

const verdictWords = { beyond: 'too long:', doubtful: 'doubtful:', 'near the limit': 'near its limit:' };

function editionOf({ settings }: Analysis): string {
  const { revision, date } = settings.statement?.fact ?? {};
  return joined([revision && `revision ${apart(revision)}`, date]);
}

function kitTitle({ kit }: Node): string {
  return nameText(kit?.statement.label ?? kit?.name ?? '');
}

/** In one room with the source or destination that it is plugged into, whose number stands at its end. */
function endsAtChip(from: Port, to: Port): boolean {
  return (
    from.owner.place === to.owner.place && (from.owner.kind === 'source' || to.owner.kind === 'destination')
  );
}

function sceneEnd({ owner, text }: Port): SceneEnd {
  return { box: owner.name, port: text };
}

function sourcesByPort({ sources }: Analysis): Map<PortOwner, Source[]> {
  const byNode = new Map<PortOwner, Source[]>();
  for (const source of sources.values()) {
    if (!source.from) continue;
    add(byNode, source.from.owner, source);
  }
  return byNode;
}

/** What each destination shows in all parts of the show. */
function notesOf(situations: readonly SceneSituation[]): Map<string, Watched[]> {
  const notes = new Map<string, Watched[]>();
  for (const { watched } of situations) for (const one of watched) add(notes, one.box, one);
  return notes;
}

function withNotes(box: Box, notes: ReadonlyMap<string, readonly Watched[]>): Box {
  const lines = (notes.get(box.id) ?? []).map((watched) => noteLines(box, watched).length);
  return lines.length === 0 ? box : { ...box, noteLines: Math.max(...lines) };
}

/** The pictures that are to be seen anywhere. */
function numbersIn(boxes: readonly Box[], situations: readonly SceneSituation[]): ReadonlySet<number> {
  const numbers = new Set<number>();
  const see = (number: number | undefined) => {
    if (number !== undefined) numbers.add(number);
  };
  for (const { picture, ports } of boxes) {
    see(picture);
    for (const { begins } of ports) see(begins);
  }
  for (const { wires, ribbons, watched } of situations) {
    for (const { pictures } of wires) pictures.forEach(see);
    for (const { forward, backward } of ribbons)
      for (const { strands } of [forward, backward]) for (const { picture } of strands) see(picture);
    for (const { picture } of watched) see(picture);
  }
  return numbers;
}

/** For each wire the most pictures that ride on it at once. */
function mostNumbers(situations: readonly SceneSituation[]): Map<string, number> {
  const most = new Map<string, number>();
  for (const { wires } of situations) {
    for (const { wire, pictures } of wires)
      most.set(wire, Math.max(most.get(wire) ?? 0, Math.min(pictures.length, MOST_NUMBERS)));
  }
  return most;
}

/** More numbers than these on one wire are told in words alone. */
const MOST_NUMBERS = 4;
