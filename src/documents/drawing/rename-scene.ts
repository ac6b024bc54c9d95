import type { Box, PictureKey, Ribbon, Scene, SceneEnd, SceneSituation, Watched, Wire } from './scene.ts';

/** What the things of one scene are called in another, which shows the same show at another time. */
export interface SceneNames {
  room(id: string): string;
  /** A node, source or destination. */
  box(id: string): string;
  /** `box_d.net1`, or the one connector of a source or destination. */
  port(id: string): string;
  link(id: string): string;
  /** The source of a picture. */
  picture(name: string): string;
  segment(name: string): string;
}

/**
 * A scene with the ids of another, and its pictures with the numbers that they have there; those that the other does not
 * have come after its last.
 */
export function renameScene(scene: Scene, names: SceneNames, pictures: readonly PictureKey[]): Scene {
  const renaming = new Renaming(names, renumber(scene, names, pictures));
  return renaming.scene(scene);
}

function renumber(
  scene: Scene,
  names: SceneNames,
  pictures: readonly PictureKey[],
): ReadonlyMap<number, number> {
  const known = new Map(pictures.map(({ name, number }) => [name, number]));
  let last = Math.max(0, ...known.values());
  return new Map(
    scene.pictures.map(({ name, number }) => [number, known.get(names.picture(name)) ?? ++last] as const),
  );
}

class Renaming {
  readonly #names: SceneNames;
  readonly #numbers: ReadonlyMap<number, number>;

  constructor(names: SceneNames, numbers: ReadonlyMap<number, number>) {
    this.#names = names;
    this.#numbers = numbers;
  }

  scene(scene: Scene): Scene {
    return {
      ...scene,
      pictures: scene.pictures.map((picture) => ({
        ...picture,
        name: this.#names.picture(picture.name),
        number: this.#number(picture.number),
      })),
      rooms: scene.rooms.map((room) => ({ ...room, id: this.#names.room(room.id) })),
      boxes: scene.boxes.map((box) => this.#box(box)),
      wires: scene.wires.map((wire) => this.#link(wire)),
      ribbons: scene.ribbons.map((ribbon) => this.#link(ribbon)),
      situations: scene.situations.map((situation) => this.#situation(situation)),
    };
  }

  #number(number: number): number {
    return this.#numbers.get(number) ?? number;
  }

  #maybe(number: number | undefined): number | undefined {
    return number === undefined ? undefined : this.#number(number);
  }

  #box(box: Box): Box {
    return {
      ...box,
      id: this.#names.box(box.id),
      room: box.room === undefined ? undefined : this.#names.room(box.room),
      picture: this.#maybe(box.picture),
      ports: box.ports.map((port) => ({
        ...port,
        id: this.#names.port(port.id),
        begins: this.#maybe(port.begins),
      })),
    };
  }

  #link<L extends Wire | Ribbon>(link: L): L {
    return {
      ...link,
      id: this.#names.link(link.id),
      from: this.#end(link.from),
      to: this.#end(link.to),
    };
  }

  #end({ box, port }: SceneEnd): SceneEnd {
    return { box: this.#names.box(box), port: this.#names.port(port) };
  }

  #situation(situation: SceneSituation): SceneSituation {
    const strands = (lane: SceneSituation['ribbons'][number]['forward']) => ({
      ...lane,
      strands: lane.strands.map((strand) => ({ ...strand, picture: this.#number(strand.picture) })),
    });
    const watched = (one: Watched, name: (id: string) => string): Watched => ({
      ...one,
      box: name(one.box),
      picture: this.#maybe(one.picture),
    });
    return {
      ...situation,
      segment: situation.segment === null ? null : this.#names.segment(situation.segment),
      wires: situation.wires.map(({ wire, pictures }) => ({
        wire: this.#names.link(wire),
        pictures: pictures.map((number) => this.#number(number)),
      })),
      ribbons: situation.ribbons.map((load) => ({
        ribbon: this.#names.link(load.ribbon),
        forward: strands(load.forward),
        backward: strands(load.backward),
      })),
      watched: situation.watched.map((one) => watched(one, this.#names.box)),
      arrivals: situation.arrivals.map((one) => watched(one, this.#names.port)),
      lost: situation.lost.map((id) => this.#names.link(this.#names.box(id))),
      traces: [],
    };
  }
}
