/** Typing that stops for so long is a pause. */
const PAUSE_MS = 150;
/** No answer waits longer than that for work that is done meanwhile. */
const SLICE_MS = 8;

/** Work that waits until the typing pauses and is then done in slices, so that every request comes between. */
export class Rest {
  #timer: ReturnType<typeof setTimeout> | undefined;
  #finish: (() => void) | undefined;
  readonly #onFault: (error: unknown) => void;

  constructor(onFault: (error: unknown) => void) {
    this.#onFault = onFault;
  }

  /** Gives up what was begun before. */
  begin(work: Iterator<undefined, void>, done: () => void): void {
    clearTimeout(this.#timer);
    this.#finish = () => {
      if (finishesWithin(Number.POSITIVE_INFINITY, work)) done();
    };
    const slice = () => {
      try {
        if (finishesWithin(SLICE_MS, work)) done();
        else this.#timer = setTimeout(slice, 0);
      } catch (error) {
        this.#onFault(error);
      }
    };
    this.#timer = setTimeout(slice, PAUSE_MS);
  }

  /** Does at once what waits. */
  finish(): void {
    clearTimeout(this.#timer);
    this.#finish?.();
    this.#finish = undefined;
  }
}

function finishesWithin(time_ms: number, work: Iterator<undefined, void>): boolean {
  const until = performance.now() + time_ms;
  while (performance.now() < until) if (work.next().done) return true;
  return false;
}
