/** Finds what lies where it should not in a laid-out drawing: words over words, cables through boxes. */
import { drawParts } from '../../src/documents/drawing/draw-svg.ts';
import { fonts, measureBox } from '../../src/documents/drawing/measures.ts';
import type { Placement, Point, Rectangle } from '../../src/documents/drawing/placement.ts';
import type { Scene } from '../../src/documents/drawing/scene.ts';
import { textWidth } from '../../src/documents/drawing/text-size.ts';

export interface Words {
  /** Kind and id of the thing that they belong to. */
  readonly thing: string;
  readonly text: string;
  readonly at: Rectangle;
}

/** All that is wrong, in words; nothing when the drawing is good. */
export function faultsOf(scene: Scene, placement: Placement): string[] {
  const words = [null, ...scene.situations.map(({ segment }) => segment)]
    .filter((segment, i, all) => all.indexOf(segment) === i)
    .map((segment) => wordsOf(scene, placement, segment));
  return [
    ...words.flatMap((one) => [...overlappingWords(one), ...wordsOutside(one, scene, placement)]),
    ...overlappingThings(scene, placement),
    ...cablesThroughThings(scene, placement),
    ...portFaults(scene, placement),
  ].filter((fault, i, all) => all.indexOf(fault) === i);
}

const TEXT =
  /<text x="([-\d.]+)" y="([-\d.]+)" font-size="([\d.]+)" fill="[^"]+"( text-anchor="\w+")?( font-weight="700")?[^>]*>([^<]*)<\/text>/g;

/** Every line of text of the things that are drawn, as wide as a wide face sets it. */
export function wordsOf(scene: Scene, placement: Placement, segment: string | null): Words[] {
  const { things } = drawParts(scene, placement, { segment });
  return [...things].flatMap(([thing, markup]) =>
    [...markup.matchAll(TEXT)].map(([, x, y, size, anchor = '', bold, escaped = '']) => {
      const text = escaped.replace(/&(lt|gt|amp|quot|#39);/g, (_, name) => entities[name]!);
      const fontSize = Number(size);
      const width = textWidth(text, fontSize, bold !== undefined);
      const left = Number(x) - (anchor.includes('middle') ? width / 2 : anchor.includes('end') ? width : 0);
      // From the top of its capitals to the line that it stands on.
      return { thing, text, at: { x: left, y: Number(y) - fontSize * 0.73, width, height: fontSize * 0.73 } };
    }),
  );
}

const entities: Record<string, string> = { lt: '<', gt: '>', amp: '&', quot: '"', '#39': "'" };

function overlappingWords(words: readonly Words[]): string[] {
  return pairs(words, ({ at }) => at)
    .filter(([a, b]) => overlap(a.at, b.at))
    .map(([a, b]) => `“${a.text}” of ${a.thing} lies over “${b.text}” of ${b.thing}`);
}

/** Words stay in their own thing. */
function wordsOutside(words: readonly Words[], scene: Scene, placement: Placement): string[] {
  return words.flatMap(({ thing, text, at }) => {
    const home = homeOf(thing, scene, placement);
    return home && !contains(home, at) ? [`“${text}” of ${thing} leaves its place`] : [];
  });
}

function homeOf(thing: string, scene: Scene, placement: Placement): Rectangle | undefined {
  const kind = thing.slice(0, thing.indexOf(' '));
  const id = thing.slice(kind.length + 1);
  if (kind === 'room') return placement.rooms.get(id);
  if (kind === 'ribbon') return placement.ribbons.get(id);
  if (kind === 'wire') return placement.wires.get(id)?.label;
  const at = placement.boxes.get(id);
  const box = scene.boxes.find((one) => one.id === id);
  // A late delay may be longer than its chip is wide; it has the room between chips.
  return at && box?.kind === 'destination' && measureBox(box).height > at.height ? undefined : at;
}

function overlappingThings(scene: Scene, placement: Placement): string[] {
  const solid = solidThings(placement);
  const faults = pairs(solid, ({ at }) => at)
    .filter(([a, b]) => overlap(a.at, b.at))
    .map(([a, b]) => `${a.thing} lies over ${b.thing}`);
  const rooms = [...placement.rooms].map(([id, at]) => ({ thing: `room ${id}`, at }));
  faults.push(
    ...pairs(rooms, ({ at }) => at)
      .filter(([a, b]) => overlap(a.at, b.at))
      .map(([a, b]) => `${a.thing} lies over ${b.thing}`),
  );
  for (const box of scene.boxes) {
    const at = placement.boxes.get(box.id);
    if (!at) faults.push(`box ${box.id} lies nowhere`);
    for (const [room, around] of placement.rooms) {
      if (!at) continue;
      if (box.room === room && !contains(around, at)) faults.push(`box ${box.id} leaves room ${room}`);
      if (box.room !== room && overlap(around, at)) faults.push(`box ${box.id} lies in room ${room}`);
    }
  }
  return faults;
}

function solidThings(placement: Placement): { thing: string; at: Rectangle }[] {
  return [
    ...[...placement.boxes].map(([id, at]) => ({ thing: `box ${id}`, at })),
    ...[...placement.ribbons].map(([id, at]) => ({ thing: `ribbon ${id}`, at })),
    ...[...placement.wires].flatMap(([id, { label }]) =>
      label ? [{ thing: `label ${id}`, at: label }] : [],
    ),
  ];
}

function cablesThroughThings(scene: Scene, placement: Placement): string[] {
  const solid = [
    ...solidThings(placement),
    ...scene.rooms.flatMap(({ id, title }) => {
      const at = placement.rooms.get(id);
      const width = Math.min(textWidth(title, fonts.box, true), (at?.width ?? 0) - 24);
      return at
        ? [{ thing: `title of room ${id}`, at: { x: at.x + 16, y: at.y + 14, width, height: 10 } }]
        : [];
    }),
  ];
  const cables = [
    ...[...placement.wires].map(([id, { points }]) => ({ id, own: `label ${id}`, points })),
    ...[...placement.stubs].flatMap(([id, stubs]) => stubs.map(({ points }) => ({ id, own: '', points }))),
  ];
  return cables.flatMap(({ id, own, points }) =>
    segmentsOf(points).flatMap((segment) =>
      solid
        .filter(({ thing, at }) => thing !== own && overlap(segment, at))
        .map(({ thing }) => `cable ${id} goes through ${thing}`),
    ),
  );
}

function portFaults(scene: Scene, placement: Placement): string[] {
  const faults: string[] = [];
  for (const box of scene.boxes) {
    const at = placement.boxes.get(box.id);
    if (!at) continue;
    for (const side of ['west', 'east'] as const) {
      const spots = box.ports.filter((port) => port.side === side).map(({ id }) => placement.ports.get(id));
      const edge = side === 'west' ? at.x : at.x + at.width;
      for (const spot of spots)
        if (!spot || Math.abs(spot.x - edge) > 0.5 || spot.y < at.y || spot.y > at.y + at.height)
          faults.push(`a port of ${box.id} is not on its edge`);
      const heights = spots.flatMap((spot) => (spot ? [spot.y] : [])).sort((a, b) => a - b);
      for (const [i, y] of heights.entries())
        if (i > 0 && y - heights[i - 1]! < 15) faults.push(`two ports of ${box.id} lie together`);
    }
  }
  for (const { id, from, to } of scene.wires) {
    const points = placement.wires.get(id)?.points ?? [];
    const ends = [from, to].map(({ port }) => placement.ports.get(port));
    const lies = ends.every(
      (end) => end && [points[0], points.at(-1)].some((point) => point && near(point, end)),
    );
    if (!lies) faults.push(`wire ${id} does not reach its ports`);
  }
  return faults;
}

function segmentsOf(points: readonly Point[]): Rectangle[] {
  return points.slice(1).map((point, i) => {
    const before = points[i]!;
    return {
      x: Math.min(before.x, point.x),
      y: Math.min(before.y, point.y),
      width: Math.abs(before.x - point.x),
      height: Math.abs(before.y - point.y),
    };
  });
}

function near(a: Point, b: Point): boolean {
  return Math.hypot(a.x - b.x, a.y - b.y) < 1;
}

/** So little is none: edges may touch. */
const SLACK = 0.75;

function overlap(a: Rectangle, b: Rectangle): boolean {
  return (
    a.x + a.width > b.x + SLACK &&
    b.x + b.width > a.x + SLACK &&
    a.y + a.height > b.y + SLACK &&
    b.y + b.height > a.y + SLACK
  );
}

function contains(outer: Rectangle, inner: Rectangle): boolean {
  return (
    inner.x >= outer.x - SLACK &&
    inner.y >= outer.y - SLACK &&
    inner.x + inner.width <= outer.x + outer.width + SLACK &&
    inner.y + inner.height <= outer.y + outer.height + SLACK
  );
}

/** Pairs whose heights meet, by sweeping from top to bottom. */
function pairs<T>(things: readonly T[], rectangleOf: (thing: T) => Rectangle): [T, T][] {
  const sorted = [...things].sort((a, b) => rectangleOf(a).y - rectangleOf(b).y);
  const found: [T, T][] = [];
  for (const [i, a] of sorted.entries()) {
    const { y, height } = rectangleOf(a);
    for (let j = i + 1; j < sorted.length && rectangleOf(sorted[j]!).y < y + height; j++)
      found.push([a, sorted[j]!]);
  }
  return found;
}
