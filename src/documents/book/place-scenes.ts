import type { Box, PictureKey, Ribbon, Room, Scene, SceneSituation, Wire } from '../drawing/scene.ts';

/** What stands in one place or is plugged into it. */
interface Part {
  readonly boxes: Set<string>;
  readonly wires: Set<string>;
  readonly ribbons: Set<string>;
}

/**
 * The scene of each place, cut out of the scene of the whole plan in one pass: what stands there, what is plugged into
 * it, and only the pictures that come by. A plan with hundreds of places must not be gone through for each of them.
 */
export function placeScenes(whole: Scene): Map<string, Scene> {
  const parts = new Map<string, Part>();
  const roomOf = new Map<string, string>();
  for (const { id, room } of whole.boxes) {
    if (room === undefined) continue;
    roomOf.set(id, room);
    partOf(parts, room).boxes.add(id);
  }
  const plug = ({ id, from, to }: Wire | Ribbon, kind: 'wires' | 'ribbons') => {
    for (const room of new Set([roomOf.get(from.box), roomOf.get(to.box)])) {
      if (room === undefined) continue;
      const part = partOf(parts, room);
      part[kind].add(id);
      part.boxes.add(from.box).add(to.box);
    }
  };
  for (const wire of whole.wires) plug(wire, 'wires');
  for (const ribbon of whole.ribbons) plug(ribbon, 'ribbons');
  const lookUp = new LookUp(whole);
  return new Map([...parts].map(([room, part]) => [room, lookUp.scene(part)]));
}

function partOf(parts: Map<string, Part>, room: string): Part {
  let part = parts.get(room);
  if (!part) {
    part = { boxes: new Set(), wires: new Set(), ribbons: new Set() };
    parts.set(room, part);
  }
  return part;
}

/** Everything of a scene by its id. */
class LookUp {
  readonly #whole: Scene;
  readonly #boxes: ReadonlyMap<string, Box>;
  readonly #wires: ReadonlyMap<string, Wire>;
  readonly #ribbons: ReadonlyMap<string, Ribbon>;
  readonly #rooms: ReadonlyMap<string, Room>;
  readonly #pictures: ReadonlyMap<number, PictureKey>;
  readonly #situations: readonly {
    readonly situation: SceneSituation;
    readonly wires: ReadonlyMap<string, SceneSituation['wires'][number]>;
    readonly ribbons: ReadonlyMap<string, SceneSituation['ribbons'][number]>;
    readonly watched: ReadonlyMap<string, SceneSituation['watched'][number]>;
    readonly lost: ReadonlySet<string>;
  }[];

  constructor(whole: Scene) {
    this.#whole = whole;
    this.#boxes = new Map(whole.boxes.map((one) => [one.id, one]));
    this.#wires = new Map(whole.wires.map((one) => [one.id, one]));
    this.#ribbons = new Map(whole.ribbons.map((one) => [one.id, one]));
    this.#rooms = new Map(whole.rooms.map((one) => [one.id, one]));
    this.#pictures = new Map(whole.pictures.map((one) => [one.number, one]));
    this.#situations = whole.situations.map((situation) => ({
      situation,
      wires: new Map(situation.wires.map((one) => [one.wire, one])),
      ribbons: new Map(situation.ribbons.map((one) => [one.ribbon, one])),
      watched: new Map(situation.watched.map((one) => [one.box, one])),
      lost: new Set(situation.lost),
    }));
  }

  scene(part: Part): Scene {
    const boxes = found(part.boxes, this.#boxes);
    const rooms = new Set(boxes.map(({ room }) => room));
    const situations = this.#situations.map(({ situation, wires, ribbons, watched, lost }) => ({
      ...situation,
      subtitle: '',
      wires: found(part.wires, wires),
      ribbons: found(part.ribbons, ribbons),
      watched: found(part.boxes, watched),
      lost: [...part.boxes, ...part.wires, ...part.ribbons].filter((id) => lost.has(id)),
      traces: [],
    }));
    const scene = {
      title: this.#whole.title,
      pictures: [],
      rooms: [...rooms].flatMap((id) => (id === undefined ? [] : (this.#rooms.get(id) ?? []))),
      boxes,
      wires: found(part.wires, this.#wires),
      ribbons: found(part.ribbons, this.#ribbons),
      situations,
    };
    return {
      ...scene,
      pictures: found(
        [...numbersIn(scene)].sort((a, b) => a - b),
        this.#pictures,
      ),
    };
  }
}

function found<K, T>(ids: Iterable<K>, byId: ReadonlyMap<K, T>): T[] {
  return [...ids].flatMap((id) => byId.get(id) ?? []);
}

/** The pictures that are to be seen anywhere in a scene. */
function numbersIn({ boxes, situations }: Scene): Set<number> {
  const numbers = new Set<number>();
  for (const { picture, ports } of boxes) {
    if (picture !== undefined) numbers.add(picture);
    for (const { begins } of ports) if (begins !== undefined) numbers.add(begins);
  }
  for (const { wires, ribbons, watched } of situations) {
    for (const { pictures } of wires) for (const picture of pictures) numbers.add(picture);
    for (const { forward, backward } of ribbons)
      for (const { strands } of [forward, backward]) for (const { picture } of strands) numbers.add(picture);
    for (const { picture } of watched) if (picture !== undefined) numbers.add(picture);
  }
  return numbers;
}
