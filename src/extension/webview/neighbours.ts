export type Direction = 'left' | 'right' | 'up' | 'down';

/**
 * The thing that a person means who goes on from one into a direction: the nearest whose middle lies that way, what
 * lies aside counting as further.
 */
export function nextThing(
  from: Element,
  things: readonly SVGGElement[],
  direction: Direction,
): SVGGElement | undefined {
  const start = middleOf(from);
  let best: { thing: SVGGElement; distance: number } | undefined;
  for (const thing of things) {
    if (thing === from) continue;
    const at = middleOf(thing);
    const [dx, dy] = [at.x - start.x, at.y - start.y];
    const [ahead, aside] = {
      left: [-dx, dy],
      right: [dx, dy],
      up: [-dy, dx],
      down: [dy, dx],
    }[direction] as [number, number];
    if (ahead < 1) continue;
    const distance = ahead + 2.5 * Math.abs(aside);
    if (!best || distance < best.distance) best = { thing, distance };
  }
  return best?.thing;
}

function middleOf(thing: Element): { x: number; y: number } {
  const { left, top, width, height } = thing.getBoundingClientRect();
  return { x: left + width / 2, y: top + height / 2 };
}
