import type { Statement } from '../plan/plan.ts';

/**
 * Finds the circles in which things point at each other where they may not, each once. Every thing points at one
 * other at most.
 *
 * @returns the members of each circle, in the order of pointing, the first in order of statements first.
 */
export function circlesOf<T extends { readonly statement: Statement }>(
  things: Iterable<T>,
  next: (thing: T) => T | undefined,
): T[][] {
  const circles: T[][] = [];
  const done = new Set<T>();
  for (const start of things) {
    if (next(start) === undefined) continue;
    const path = new Set<T>();
    let at: T | undefined = start;
    while (at !== undefined && !done.has(at) && !path.has(at)) {
      path.add(at);
      at = next(at);
    }
    if (at !== undefined && path.has(at)) {
      const members = [...path];
      circles.push(members.slice(members.indexOf(at)));
    }
    for (const one of path) done.add(one);
  }
  return circles;
}
