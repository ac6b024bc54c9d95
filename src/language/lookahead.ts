import type { ILookaheadStrategy } from 'chevrotain';

type Alternation = Parameters<ILookaheadStrategy['buildLookaheadForAlternation']>[0];
type Optional = Parameters<ILookaheadStrategy['buildLookaheadForOptional']>[0];

/**
 * Works out where the grammar forks when a text first comes to the fork. Most plans come to few of them, and working
 * them all out takes longer than reading a small plan.
 */
export class LookaheadWhenAsked implements ILookaheadStrategy {
  readonly #strategy: ILookaheadStrategy;
  #begin: () => void = () => {};

  constructor(strategy: ILookaheadStrategy) {
    this.#strategy = strategy;
  }

  validate(options: Parameters<ILookaheadStrategy['validate']>[0]) {
    return this.#strategy.validate(options);
  }

  initialize(options: { rules: Alternation['rule'][] }): void {
    this.#begin = () => {
      this.#begin = () => {};
      this.#strategy.initialize?.(options);
    };
  }

  buildLookaheadForAlternation(options: Alternation) {
    return whenAsked(() => {
      this.#begin();
      return this.#strategy.buildLookaheadForAlternation(options);
    });
  }

  buildLookaheadForOptional(options: Optional) {
    return whenAsked(() => {
      this.#begin();
      return this.#strategy.buildLookaheadForOptional(options);
    });
  }
}

/** The parser is the `this` of the function. */
function whenAsked<A extends unknown[], R>(build: () => (...args: A) => R): (...args: A) => R {
  let built: ((...args: A) => R) | undefined;
  return function (this: unknown, ...args: A): R {
    built ??= build();
    return built.apply(this, args);
  };
}
