import { type Mark, type SceneMarks, seatOf } from './marks.ts';
import { renameScene, type SceneNames } from './rename-scene.ts';
import type {
  Box,
  BoxPort,
  Lane,
  Ribbon,
  RibbonLoad,
  Scene,
  SceneSituation,
  Watched,
  Wire,
} from './scene.ts';

/** One show at two times, to be drawn with everything in the same places. */
export interface ComparedScenes {
  readonly before: Scene;
  /**
   * With what is gone still in its place, and with figures as before → after where they differ. It has everything of both,
   * so it is the one that is laid out.
   */
  readonly after: Scene;
  readonly marks: { readonly before: SceneMarks; readonly after: SceneMarks };
}

/** Puts two scenes over each other. @param names What the things of the old one are called in the new one. */
export function compareScenes(old: Scene, fresh: Scene, names: SceneNames): ComparedScenes {
  return new Comparing(renameScene(old, names, fresh.pictures), fresh).compared();
}

type Link = Wire | Ribbon;

class Comparing {
  readonly #fresh: Scene;
  readonly #old: Scene;
  readonly #freshBoxes: ReadonlyMap<string, Box>;
  readonly #oldBoxes: ReadonlyMap<string, Box>;
  readonly #freshLinks: ReadonlyMap<string, Link>;
  readonly #oldLinks: ReadonlyMap<string, Link>;
  readonly #before: [string, Mark][] = [];
  readonly #after: [string, Mark][] = [];

  constructor(old: Scene, fresh: Scene) {
    this.#fresh = fresh;
    this.#freshBoxes = byId(fresh.boxes);
    this.#freshLinks = byId([...fresh.wires, ...fresh.ribbons]);
    this.#old = this.#seated(old);
    this.#oldBoxes = byId(this.#old.boxes);
    this.#oldLinks = byId([...this.#old.wires, ...this.#old.ribbons]);
  }

  compared(): ComparedScenes {
    const after = this.#merged();
    this.#mark();
    const [situations, changed] = this.#situations();
    const whole = { ...after, situations, fastest_bits_per_second: this.#fastest() };
    return {
      before: { ...this.#old, fastest_bits_per_second: this.#fastest() },
      after: whole,
      marks: {
        before: { always: this.#before, bySegment: changed },
        after: { always: this.#after, bySegment: changed },
      },
    };
  }

  #fastest(): number {
    const ribbons = [...this.#old.ribbons, ...this.#fresh.ribbons];
    return ribbons.reduce(
      (most, { capacity_bits_per_second = 0 }) => Math.max(most, capacity_bits_per_second),
      0,
    );
  }

  /** What stands or is plugged elsewhere now gets an id of its own, for the seat that it had. */
  #seated(old: Scene): Scene {
    const moved = new Set(
      old.boxes
        .filter((box) => {
          const now = this.#freshBoxes.get(box.id);
          return now !== undefined && (now.kind !== box.kind || now.room !== box.room);
        })
        .map(({ id }) => id),
    );
    const box = (id: string) => (moved.has(id) ? seatOf(id) : id);
    const portOwner = new Map(
      old.boxes.flatMap(({ id, ports }) => ports.map((port) => [port.id, id] as const)),
    );
    const port = (id: string) => (moved.has(portOwner.get(id) ?? '') ? seatOf(id) : id);
    const end = (one: Link['from']) => ({ box: box(one.box), port: port(one.port) });
    const turned = new Set<string>();
    const seats = new Map<string, string>();
    const link = <L extends Link>(one: L): L => {
      const [from, to] = [end(one.from), end(one.to)];
      const now = this.#freshLinks.get(one.id);
      const straight = now && now.from.port === from.port && now.to.port === to.port;
      const isTurned = now && now.from.port === to.port && now.to.port === from.port;
      const sameKind = now && isRibbon(now) === isRibbon(one);
      if (isTurned && sameKind) {
        turned.add(one.id);
        return { ...one, from: to, to: from, fromLeft: now.fromLeft };
      }
      if (straight && sameKind) return { ...one, from, to, fromLeft: now.fromLeft };
      if (now) seats.set(one.id, seatOf(one.id));
      return { ...one, id: now ? seatOf(one.id) : one.id, from, to };
    };
    const wires = old.wires.map(link);
    const ribbons = old.ribbons.map(link);
    const linkId = (id: string) => seats.get(id) ?? id;
    return {
      ...old,
      boxes: old.boxes.map((one) => ({
        ...one,
        id: box(one.id),
        ports: one.ports.map((each) => ({ ...each, id: port(each.id) })),
      })),
      wires,
      ribbons,
      situations: old.situations.map((situation) => ({
        ...situation,
        wires: situation.wires.map((load) => ({ ...load, wire: linkId(load.wire) })),
        ribbons: situation.ribbons.map((load) => ({
          ribbon: linkId(load.ribbon),
          forward: turned.has(load.ribbon) ? load.backward : load.forward,
          backward: turned.has(load.ribbon) ? load.forward : load.backward,
        })),
        watched: situation.watched.map((one) => ({ ...one, box: box(one.box) })),
        arrivals: situation.arrivals.map((one) => ({ ...one, box: port(one.box) })),
        lost: situation.lost.map((id) => linkId(box(id))),
      })),
    };
  }

  /** The new scene with what is gone. */
  #merged(): Scene {
    const { rooms, boxes, wires, ribbons } = this.#fresh;
    const roomIds = new Set(rooms.map(({ id }) => id));
    return {
      ...this.#fresh,
      rooms: [...rooms, ...this.#old.rooms.filter(({ id }) => !roomIds.has(id))],
      boxes: [
        ...boxes.map((box) => mergedBox(this.#oldBoxes.get(box.id), box)),
        ...this.#old.boxes.filter(({ id }) => !this.#freshBoxes.has(id)),
      ],
      wires: [
        ...wires.map((wire) => mergedWire(this.#oldLinks.get(wire.id), wire)),
        ...this.#old.wires.filter(({ id }) => !this.#freshLinks.has(id)),
      ],
      ribbons: [
        ...ribbons.map((ribbon) => mergedRibbon(this.#oldLinks.get(ribbon.id), ribbon)),
        ...this.#old.ribbons.filter(({ id }) => !this.#freshLinks.has(id)),
      ],
    };
  }

  #mark(): void {
    const pairs: [ReadonlyMap<string, Box | Link>, ReadonlyMap<string, Box | Link>][] = [
      [this.#oldBoxes, this.#freshBoxes],
      [this.#oldLinks, this.#freshLinks],
    ];
    for (const [old, fresh] of pairs) {
      for (const [id, thing] of fresh) {
        const was = old.get(id);
        if (!was) this.#after.push([id, 'added']);
        else if (wordsOf(was) !== wordsOf(thing)) {
          this.#after.push([id, 'changed']);
          this.#before.push([id, 'changed']);
        }
      }
      for (const id of old.keys()) {
        if (fresh.has(id)) continue;
        this.#before.push([id, 'removed']);
        this.#after.push([id, 'removed']);
      }
    }
  }

  /** The new situations with figures as before → after, and what of each differs. */
  #situations(): [SceneSituation[], SceneMarks['bySegment']] {
    const before = new Map(this.#old.situations.map((situation) => [situation.segment, situation]));
    const changes: { segment: string | null; changed: string[] }[] = [];
    const situations = this.#fresh.situations.map((situation) => {
      const old = before.get(situation.segment) ?? before.get(null);
      const changed = new Set<string>();
      const merged = old
        ? mergedSituation(old, situation, this.#oldLinks, this.#oldBoxes, changed)
        : situation;
      changes.push({ segment: situation.segment, changed: [...changed] });
      return merged;
    });
    return [situations, changes];
  }
}

function byId<T extends { readonly id: string }>(things: readonly T[]): Map<string, T> {
  return new Map(things.map((thing) => [thing.id, thing]));
}

function isRibbon(link: Link): link is Ribbon {
  return 'detail' in link;
}

/** What is written on a thing whatever part of the show it is. */
function wordsOf(thing: Box | Link): string {
  if ('ports' in thing) return [thing.title, thing.subtitle].join('\n');
  const { trouble, standbyFor } = thing;
  const own = isRibbon(thing) ? [thing.title, thing.detail, thing.capacity_bits_per_second] : [thing.text];
  return [...own, trouble?.text, standbyFor].join('\n');
}

/** Ports that were in use are drawn, though nothing is plugged into them any more. */
function mergedBox(old: Box | undefined, fresh: Box): Box {
  if (!old) return fresh;
  const known = new Set(fresh.ports.map(({ id }) => id));
  const left = old.ports.filter(({ id, free }) => !known.has(id) && !free);
  const ports: BoxPort[] = [
    ...fresh.ports,
    ...left.map((port) => ({ ...port, free: true, begins: undefined })),
  ];
  const noteLines = Math.max(old.noteLines, fresh.noteLines) + (fresh.kind === 'destination' ? 1 : 0);
  return {
    ...fresh,
    title: arrow(old.title, fresh.title),
    subtitle: arrow(old.subtitle, fresh.subtitle),
    ports,
    noteLines: Math.min(3, noteLines),
  };
}

function mergedWire(old: Link | undefined, fresh: Wire): Wire {
  if (!old || isRibbon(old)) return fresh;
  return { ...fresh, text: arrow(old.text, fresh.text), numbers: Math.max(old.numbers, fresh.numbers) };
}

function mergedRibbon(old: Link | undefined, fresh: Ribbon): Ribbon {
  if (!old || !isRibbon(old)) return fresh;
  return { ...fresh, title: arrow(old.title, fresh.title), detail: arrow(old.detail, fresh.detail) };
}

function mergedSituation(
  old: SceneSituation,
  fresh: SceneSituation,
  oldLinks: ReadonlyMap<string, Link>,
  oldBoxes: ReadonlyMap<string, Box>,
  changed: Set<string>,
): SceneSituation {
  const wires = new Map(old.wires.map((load) => [load.wire, load]));
  for (const { wire, pictures } of fresh.wires) {
    const was = wires.get(wire);
    if (was && oldLinks.has(wire) && was.pictures.join() !== pictures.join()) changed.add(wire);
  }
  const ribbons = new Map(old.ribbons.map((load) => [load.ribbon, load]));
  const watched = (was: readonly Watched[], is: readonly Watched[], idOf: (box: string) => string) => {
    const before = new Map(was.map((one) => [one.box, one]));
    return is.map((one) => {
      const known = before.get(one.box);
      if (!known || !oldBoxes.has(idOf(one.box))) return one;
      if (known.text === one.text && known.picture === one.picture) return one;
      changed.add(idOf(one.box));
      return { ...one, text: arrow(known.text, one.text) };
    });
  };
  return {
    ...fresh,
    ribbons: fresh.ribbons.map((load) => mergedLoad(ribbons.get(load.ribbon), load, changed)),
    watched: watched(old.watched, fresh.watched, (box) => box),
    arrivals: watched(old.arrivals, fresh.arrivals, (port) => port.slice(0, port.lastIndexOf('.'))),
  };
}

function mergedLoad(old: RibbonLoad | undefined, fresh: RibbonLoad, changed: Set<string>): RibbonLoad {
  if (!old) return fresh;
  const lane = (was: Lane, is: Lane): Lane => {
    const same = was.text === is.text && strandsOf(was) === strandsOf(is);
    if (!same) changed.add(fresh.ribbon);
    return same || was.text === is.text ? is : { ...is, text: arrow(was.text, is.text) };
  };
  return {
    ...fresh,
    forward: lane(old.forward, fresh.forward),
    backward: lane(old.backward, fresh.backward),
  };
}

function strandsOf({ strands }: Lane): string {
  return strands.map(({ picture, load_bits_per_second }) => `${picture} ${load_bits_per_second}`).join();
}

/** `T1 · 58 m → 64 m`: only the parts that differ have an arrow, where the parts can be told apart. */
export function arrow(before: string, after: string): string {
  if (before === after) return after;
  if (!before || !after) return `${before || 'nothing'} → ${after || 'nothing'}`;
  const [was, is] = [before.split(' · '), after.split(' · ')];
  if (was.length !== is.length) return `${before} → ${after}`;
  return is.map((part, i) => (part === was[i] ? part : `${was[i]} → ${part}`)).join(' · ');
}
