import type { Format, Per, Quantity } from '../language/generated/ast.ts';
import { PhysicsError } from '../physics/physics-error.ts';
import {
  type Dimension,
  EXPECTED,
  formatQuantity,
  requireQuantity,
  toSi,
  unitLike,
  unitOf,
} from '../physics/quantity.ts';
import { parseFormat } from '../physics/raster.ts';
import type { Duration, FormatFact } from './facts.ts';
import { type Fault, LONGEST_NAME } from './plan.ts';

/** An object without the keys whose value is undefined: a fact holds only what was written. */
export function written<T extends object>(values: { [K in keyof T]: T[K] | undefined }): T {
  // Not by deleting keys: V8 keeps an object that lost one as a hash table, which is large and slow to read.
  const result: Record<string, unknown> = {};
  for (const key in values) if (values[key] !== undefined) result[key] = values[key];
  return result as T;
}

/** More digits than any count of lines, samples or pictures has. */
const LONG_NUMBER = /\d{16}/;

/** Reads the values of one statement and keeps what is wrong with them. After an error any part may be missing. */
export class Reading {
  readonly faults: Fault[] = [];

  fault(check: string, part: string, message: string, fix?: Fault['fix']): void {
    this.faults.push(fix ? { check, part, message, fix } : { check, part, message });
  }

  /** A name that no paper could hold is told; it still names its thing. */
  checkName(name: string | undefined): void {
    const length = name?.length ?? 0;
    if (length <= LONGEST_NAME) return;
    this.fault(
      'name-long',
      'name',
      `This name has ${length} characters; a name has at most ${LONGEST_NAME}. Shorten it, and put the words in quotes behind it.`,
    );
  }

  /** The one item of a clause; the same clause a second time is told. */
  only<T>(items: readonly (T | undefined)[] | undefined, part: string, what: string): T | undefined {
    if (!items) return undefined;
    if (items.length > 1) {
      this.fault(
        'written-twice',
        `${part}/1`,
        `${what} is written ${items.length} times; the first is used. Delete the others.`,
      );
    }
    return items[0];
  }

  has(items: readonly unknown[] | undefined, part: string, what: string): boolean {
    return this.only(items, part, what) !== undefined;
  }

  /** The names of a list, those left out by an error dropped. */
  names(references: readonly ({ $refText: string } | undefined)[] | undefined): string[] {
    return (references ?? []).flatMap((reference) => (reference ? [reference.$refText] : []));
  }

  name(
    references: readonly ({ $refText: string } | undefined)[] | undefined,
    part: string,
    what: string,
  ): string | undefined {
    return this.only(references, part, what)?.$refText;
  }

  /** A quantity in SI units. Tells a wrong or missing unit, a wrong dimension and a value beyond reason. */
  quantity(node: Quantity | undefined, part: string, dimension: Dimension): number | undefined {
    const read = this.#measure(node, part, dimension);
    return read && this.#si(read, part, dimension);
  }

  onlyQuantity(
    nodes: readonly Quantity[] | undefined,
    part: string,
    what: string,
    dimension: Dimension,
  ): number | undefined {
    return this.quantity(this.only(nodes, part, what), `${part}/0`, dimension);
  }

  /** A value of which 0 would mean nothing: that is told, and it counts as not written. */
  aboveZero(value: number | undefined, part: string, message: string): number | undefined {
    if (value !== 0) return value;
    this.fault('bad-number', part, message);
    return undefined;
  }

  /** A delay: frames, or a time. */
  duration(node: Quantity | undefined, part: string): Duration | undefined {
    const read = this.#measure(node, part, 'frames');
    if (!read) return undefined;
    if (read.unit.dimension === 'frames') {
      const frames = this.#si(read, part, 'frames');
      return frames === undefined ? undefined : { frames };
    }
    if (read.unit.dimension === 'time') {
      const seconds = this.#si(read, part, 'time');
      return seconds === undefined ? undefined : { seconds };
    }
    this.fault(
      'wrong-dimension',
      part,
      `A delay is expected, for example 2 frames or 40 ms, not ${formatQuantity(read)}.`,
    );
    return undefined;
  }

  onlyDuration(nodes: readonly Quantity[] | undefined, part: string, what: string): Duration | undefined {
    return this.duration(this.only(nodes, part, what), `${part}/0`);
  }

  /** A bare number, such as a price or a class; a unit behind it is told. */
  plainNumber(node: Quantity | undefined, part: string, what: string): number | undefined {
    if (!node?.value) return undefined;
    if (node.unit !== undefined) {
      this.fault(
        'wrong-dimension',
        part,
        `${what} is a number without a unit, not ${node.value} ${node.unit}.`,
        { title: 'Delete the unit', text: point(node.value) },
      );
    }
    return this.number(node.value, part);
  }

  onlyNumber(nodes: readonly Quantity[] | undefined, part: string, what: string): number | undefined {
    return this.plainNumber(this.only(nodes, part, what), `${part}/0`, what);
  }

  /** A number as written, with a decimal point. */
  number(text: string | undefined, part: string): number | undefined {
    if (text === undefined) return undefined;
    if (text.includes(',')) this.#tellComma(part, text, point(text));
    const value = this.#finite(text, part);
    return value !== undefined && value < 0 ? this.#tellMinus(part, text, undefined) : value;
  }

  /** A count, such as connections on a fibre. */
  wholeNumber(
    text: string | undefined,
    part: string,
    what: string,
    least: number,
    most: number,
  ): number | undefined {
    const value = this.number(text, part);
    if (value === undefined) return undefined;
    if (Number.isInteger(value) && value >= least && value <= most) return value;
    const told = LONG_NUMBER.test(text!) ? `${text!.slice(0, 20)}…` : text;
    this.fault('bad-number', part, `${what} is a whole number from ${least} to ${most}, not ${told}.`);
    return undefined;
  }

  format(node: Format | undefined, part: string): FormatFact | undefined {
    if (!node || (node.raster === undefined && node.audio === undefined)) return undefined;
    const endless = [node.raster, node.sampling].find((text) => text && LONG_NUMBER.test(text));
    if (endless) {
      this.fault('bad-format', part, `${endless.slice(0, 20)}… has too large a number.`);
      return undefined;
    }
    const depth_bits = this.number(node.depth, part);
    const audioChannels = this.number(node.audio, part);
    const text = [
      node.raster,
      node.sampling,
      depth_bits === undefined ? undefined : `${depth_bits} bit`,
      audioChannels === undefined ? undefined : `audio ${audioChannels}`,
    ]
      .filter((word) => word !== undefined)
      .join(' ');
    try {
      parseFormat(text);
    } catch (error) {
      if (!(error instanceof PhysicsError)) throw error;
      this.fault('bad-format', part, `\`${text}\` is no format: ${error.message}.`);
      return undefined;
    }
    return written<FormatFact>({
      text,
      raster: node.raster,
      sampling: node.sampling,
      depth_bits,
      audioChannels,
    });
  }

  /** The metres of `per 100 m`, `per m`, `per km`. */
  perLength_m(per: Per | undefined, part: string): number | undefined {
    if (!per?.unit) return undefined;
    const count = per.count === undefined ? 1 : this.number(per.count, part);
    const unit = unitOf(per.unit);
    if (unit?.dimension !== 'length') {
      this.fault(
        'wrong-dimension',
        part,
        `A length is expected after \`per\`, for example \`per 100 m\`, not \`${per.unit}\`.`,
      );
      return undefined;
    }
    const length_m = count === undefined ? 0 : toSi(count, unit);
    if (length_m > 0) return length_m;
    this.fault('bad-number', part, 'A value per 0 m means nothing; write `per 100 m`.');
    return undefined;
  }

  /** One of the words that a setting knows. */
  word<W extends string>(
    text: string | undefined,
    part: string,
    what: string,
    words: readonly W[],
  ): W | undefined {
    if (text === undefined) return undefined;
    if ((words as readonly string[]).includes(text)) return text as W;
    this.fault('unknown-word', part, `${what} is ${either(words)}, not \`${text}\`.`);
    return undefined;
  }

  /** A day of the calendar, as ISO 8601 writes it. */
  date(text: string | undefined, part: string): string | undefined {
    if (text === undefined) return undefined;
    const [year = '', month = '', day = ''] = text.split('-');
    const full = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
    const real = new Date(`${full}T00:00:00Z`);
    if (Number.isNaN(real.getTime()) || real.toISOString().slice(0, 10) !== full) {
      this.fault('bad-date', part, `There is no day ${text}; a date is year-month-day, such as 2027-05-14.`);
      return undefined;
    }
    if (full !== text)
      this.fault('bad-date', part, `Write the date as ${full}: year, month and day with all their digits.`, {
        title: `Write ${full}`,
        text: full,
      });
    return full;
  }

  #measure(node: Quantity | undefined, part: string, dimension: Dimension) {
    if (!node?.value) return undefined;
    const value = this.#finite(node.value, part);
    if (value === undefined) return undefined;
    if (node.value.includes(','))
      this.#tellComma(part, spaced(node.value, node.unit), spaced(point(node.value), node.unit));
    if (node.unit === undefined) {
      this.fault(
        'unit-missing',
        part,
        `${node.value} of what? ${capital(EXPECTED[dimension])}, is expected.`,
      );
      return undefined;
    }
    const unit = unitOf(node.unit) ?? unitLike(node.unit);
    if (!unit) {
      this.fault(
        'unknown-unit',
        part,
        `\`${node.unit}\` is no unit. ${capital(EXPECTED[dimension])}, is expected.`,
      );
      return undefined;
    }
    if (unit.symbol !== node.unit) {
      this.fault('unknown-unit', part, `Write \`${unit.symbol}\`, not \`${node.unit}\`.`, {
        title: `Write ${unit.symbol}`,
        text: `${point(node.value)} ${unit.symbol}`,
      });
    }
    // Only a temperature may be below 0.
    if (value < 0 && dimension !== 'temperature') return this.#tellMinus(part, node.value, node.unit);
    return { value, unit };
  }

  #si(
    quantity: Parameters<typeof requireQuantity>[0],
    part: string,
    dimension: Dimension,
  ): number | undefined {
    try {
      return requireQuantity(quantity, dimension);
    } catch (error) {
      if (!(error instanceof PhysicsError)) throw error;
      const check = quantity.unit.dimension === dimension ? 'bad-number' : 'wrong-dimension';
      this.fault(check, part, `${capital(error.message)}.`);
      return undefined;
    }
  }

  /** It counts as not written: nobody knows what was meant. */
  #tellMinus(part: string, value: string, unit: string | undefined): undefined {
    const without = spaced(point(value).replace('-', ''), unit);
    this.fault(
      'bad-number',
      part,
      `${spaced(value, unit)} is less than 0: write ${without}, without \`-\`.`,
      {
        title: `Write ${without}`,
        text: without,
      },
    );
  }

  /** A number that has so many digits that arithmetic knows it as endless is told. */
  #finite(text: string, part: string): number | undefined {
    const value = Number(point(text));
    if (Number.isFinite(value)) return value;
    this.fault('bad-number', part, `${text.slice(0, 20)}… is too large a number.`);
    return undefined;
  }

  #tellComma(part: string, found: string, mended: string): void {
    this.fault(
      'decimal-comma',
      part,
      `Write ${mended} with a decimal point: a comma separates items of a list.`,
      { title: `Write ${mended}`, text: mended === found ? found : mended },
    );
  }
}

function point(number: string): string {
  return number.replace(',', '.').replace(/^-[ \t]/, '-');
}

function spaced(value: string, unit: string | undefined): string {
  return unit === undefined ? value : `${value} ${unit}`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function either(words: readonly string[]): string {
  return words.length < 2
    ? `\`${words[0]}\``
    : `${words
        .slice(0, -1)
        .map((w) => `\`${w}\``)
        .join(', ')} or \`${words.at(-1)}\``;
}
