import type { Text } from '../language/incremental/text.ts';

/** Where the lines of a text begin, kept while it is edited. Lines end with \n, \r\n or \r, as the protocol says. */
export class LineStarts {
  #starts: number[];

  constructor(text: string) {
    this.#starts = [0, ...startsIn(text, 0)];
  }

  get count(): number {
    return this.#starts.length;
  }

  startOf(line: number): number | undefined {
    return this.#starts[line];
  }

  /** The line that holds an offset. */
  lineAt(offset: number): number {
    return this.#firstBehind(offset) - 1;
  }

  /**
   * Follows an edit: [start, end) was replaced by `length` characters.
   *
   * @param text The text after it.
   */
  replace(text: Text, start: number, end: number, length: number): void {
    const starts = this.#starts;
    const delta = length - (end - start);
    // From the line of the character before the edit to that of the one after it: \r\n may form or break at the seams.
    const first = this.#firstBehind(Math.max(0, start - 1)) - 1;
    let last = this.#firstBehind(end + 1) - 1;
    if (last < first) last = first;
    const from = starts[first]!;
    const next = starts[last + 1];
    const to = next === undefined ? text.length : next + delta;
    const fresh = startsIn(text.slice(from, to), from);
    if (next !== undefined && fresh.at(-1) === to) fresh.pop();
    const behind = starts.slice(last + 1);
    if (delta !== 0) for (let i = 0; i < behind.length; i++) behind[i]! += delta;
    this.#starts = starts.slice(0, first + 1).concat(fresh, behind);
  }

  #firstBehind(offset: number): number {
    let low = 0;
    let high = this.#starts.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#starts[middle]! > offset) high = middle;
      else low = middle + 1;
    }
    return low;
  }
}

function startsIn(text: string, base: number): number[] {
  return Array.from(text.matchAll(/\r\n?|\n/g), (found) => base + found.index + found[0].length);
}
