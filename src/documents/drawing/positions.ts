import type { Analysis, Port } from '../../analysis/model.ts';
import type { DrawnLink, PortOwner } from './choose-things.ts';
import { leftToRight } from './sides.ts';

/** Who stands left of whom: settled for the plan as a whole, so that the drawing of a part looks like its part. */
export class Positions {
  readonly #positions: ReadonlyMap<string, number>;

  constructor({ nodes, sources, destinations, places }: Analysis, drawable: readonly DrawnLink[]) {
    const owners: PortOwner[] = [...nodes.values(), ...sources.values(), ...destinations.values()];
    this.#positions = leftToRight(
      owners.map(({ name, place }) => ({ id: name, room: place?.index ?? places.size })),
      drawable.map(({ from, to }) => ({ from: from.owner.name, to: to.owner.name })),
    );
  }

  isLeft(one: Port, other: Port): boolean {
    return this.#of(one) < this.#of(other);
  }

  /** The side where its cable leaves; undefined for a port without one. */
  sideOf(port: Port): 'west' | 'east' | undefined {
    for (const link of port.links) {
      const far = link.from.port === port ? link.to.port : link.from.port;
      if (far && far.owner !== port.owner) return this.isLeft(port, far) ? 'east' : 'west';
    }
    return undefined;
  }

  #of({ owner }: Port): number {
    return this.#positions.get(owner.name) ?? 0;
  }
}
