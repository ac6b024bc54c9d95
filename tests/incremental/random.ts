/** Numbers that only look random: the same start gives the same run, so that a failure can be repeated. */
export class Random {
  #state: number;

  constructor(start: number) {
    this.#state = start >>> 0;
  }

  /** A whole number from 0 up to, but not, `below`. */
  below(below: number): number {
    // A linear congruential generator with the constants of Numerical Recipes (Press et al., section 7.1).
    this.#state = (Math.imul(this.#state, 1664525) + 1013904223) >>> 0;
    return Math.floor((this.#state / 2 ** 32) * below);
  }

  pick<T>(items: readonly T[]): T {
    return items[this.below(items.length)]!;
  }
}
