/**
 * Which box stands left of which. Ports lie on the side where their cable leaves, so that cables run straight on and
 * none goes around a box: rooms stand from left to right in the order in which their places are written; in a room,
 * what has cables to other rooms stands by that side, as at a door, and everything else behind it, step by step.
 */

/** A box, its room and its place in the order of rooms. */
export interface Standing {
  readonly id: string;
  /** Position among the rooms; what stands nowhere has the last. */
  readonly room: number;
}

export interface Joint {
  readonly from: string;
  readonly to: string;
}

interface Neighbour {
  readonly id: string;
  /** Pictures go there from here. */
  readonly onward: boolean;
}

type Neighbours = ReadonlyMap<string, readonly Neighbour[]>;

/** The boxes from left to right: a cable between two leaves the first to the right and the other to the left. */
export function leftToRight(
  boxes: readonly Standing[],
  joints: readonly Joint[],
): ReadonlyMap<string, number> {
  const roomOf = new Map(boxes.map(({ id, room }) => [id, room]));
  const neighbours = new Map(boxes.map(({ id }) => [id, [] as Neighbour[]]));
  const leftDoors = new Set<string>();
  const rightDoors = new Set<string>();
  for (const { from, to } of joints) {
    const [here, there] = [roomOf.get(from), roomOf.get(to)];
    if (here === undefined || there === undefined) continue;
    if (here === there) {
      neighbours.get(from)?.push({ id: to, onward: true });
      neighbours.get(to)?.push({ id: from, onward: false });
    } else {
      (here < there ? rightDoors : leftDoors).add(from);
      (here < there ? leftDoors : rightDoors).add(to);
    }
  }
  const ranks = ranksInRooms(boxes, neighbours, leftDoors, rightDoors);
  const sorted = boxes
    .map(({ id, room }, index) => ({ id, room, index, rank: ranks.get(id) ?? 0 }))
    .sort((a, b) => a.room - b.room || a.rank - b.rank || a.index - b.index);
  return new Map(sorted.map(({ id }, position) => [id, position]));
}

/** How far right a box stands among those that it is joined to in its room. */
function ranksInRooms(
  boxes: readonly Standing[],
  neighbours: Neighbours,
  leftDoors: ReadonlySet<string>,
  rightDoors: ReadonlySet<string>,
): ReadonlyMap<string, number> {
  const fromLeft = distances(leftDoors, neighbours);
  const fromRight = distances(rightDoors, neighbours);
  const ranks = passages(boxes, neighbours, fromLeft, fromRight);
  const step = 1 / (boxes.length + 1);
  // Behind a door on the right things stand to the left of it; behind any other, and behind a passage, to the right.
  const queue = [...ranks.keys()];
  for (const id of queue) {
    const outward = fromLeft.has(id) ? step : -step;
    for (const { id: next } of neighbours.get(id) ?? []) {
      if (ranks.has(next)) continue;
      ranks.set(next, ranks.get(id)! + outward);
      queue.push(next);
    }
  }
  alongPictures(boxes, neighbours, ranks);
  return ranks;
}

/** Doors, and what lies on a shortest way from a door on the left to one on the right. */
function passages(
  boxes: readonly Standing[],
  neighbours: Neighbours,
  fromLeft: ReadonlyMap<string, number>,
  fromRight: ReadonlyMap<string, number>,
): Map<string, number> {
  const ranks = new Map<string, number>();
  for (const { id } of boxes) {
    const [left, right] = [fromLeft.get(id), fromRight.get(id)];
    const isDoor = left === 0 || right === 0;
    if (left === undefined || right === undefined) {
      if (isDoor) ranks.set(id, 0);
      continue;
    }
    const way = left + right;
    const isOnTheWay = (neighbours.get(id) ?? []).every(
      (next) => fromLeft.get(next.id)! + fromRight.get(next.id)! >= way,
    );
    if (isDoor || isOnTheWay) ranks.set(id, left - right);
  }
  return ranks;
}

/** The number of cables from the nearest start. */
function distances(starts: ReadonlySet<string>, neighbours: Neighbours): ReadonlyMap<string, number> {
  const found = new Map([...starts].map((id) => [id, 0]));
  const queue = [...starts];
  for (const id of queue) {
    for (const { id: next } of neighbours.get(id) ?? []) {
      if (found.has(next)) continue;
      found.set(next, found.get(id)! + 1);
      queue.push(next);
    }
  }
  return found;
}

/**
 * Where no cable leaves the room, things stand as the pictures go: each behind all that it gets pictures from, apart
 * from what would close a circle.
 */
function alongPictures(boxes: readonly Standing[], neighbours: Neighbours, ranks: Map<string, number>): void {
  const done: string[] = [];
  const seen = new Set(ranks.keys());
  for (const { id } of boxes) {
    if (seen.has(id)) continue;
    seen.add(id);
    const open = [{ id, next: 0 }];
    for (let top = open.at(-1); top; top = open.at(-1)) {
      const neighbour = neighbours.get(top.id)?.[top.next++];
      if (!neighbour) {
        done.push(top.id);
        open.pop();
      } else if (neighbour.onward && !seen.has(neighbour.id)) {
        seen.add(neighbour.id);
        open.push({ id: neighbour.id, next: 0 });
      }
    }
  }
  for (const [i, id] of done.entries()) ranks.set(id, -i);
}
