import {
  judgeDisplay,
  tmdsCharacterRate_hz,
  tmdsTotal_bits_per_second,
  usableRate_bits_per_second,
} from '../physics/display-interface.ts';
import { type FlowLoads, flowLoads } from '../physics/flows.ts';
import {
  completeFormat,
  type Format,
  formatFormat,
  parseFormat,
  resample,
  type SignalKind,
  type StatedFormat,
} from '../physics/raster.ts';
import type { FrameRate } from '../physics/rate.ts';
import { sdiRate_bits_per_second } from '../physics/sdi.ts';
import type { FormatFact } from '../plan/facts.ts';
import { attempt } from './attempt.ts';
import type { Carried, Interface, Signal } from './model.ts';

/** Why a format does not go over an interface, or only perhaps. */
export interface Misfit {
  readonly kind: 'too big' | 'doubtful' | 'not carried';
  /** In `unit`, when the interface has such a limit. */
  readonly needs: number | undefined;
  readonly limit: number | undefined;
  readonly unit: 'bits_per_second' | 'hz';
}

/** A format of the plan with everything that is worked out about it, each once. */
export interface KnownFormat {
  readonly index: number;
  readonly format: Format;
  /** Frames a second, undefined for sound alone. */
  readonly rate: FrameRate | undefined;
  /** On SDI; undefined when SDI does not carry it. */
  readonly sdi_bits_per_second: number | undefined;
  /** On a display link; null until somebody asks. */
  display_bits_per_second: number | undefined | null;
  /** Answers already given, by the index of the interface or of the kind of carriage. */
  readonly misfits: (Misfit | null | undefined)[];
  readonly carried: (KnownFormat | null | undefined)[];
  readonly loads: (FlowLoads | null | undefined)[];
}

/** SD pictures ride on SD interfaces only; the slowest of the others has 1.485 Gb/s. */
const FASTEST_SD_BITS_PER_SECOND = 1e9;
const FIRST_HD_ROWS = 720;
/** Without their coding, three characters of eight bit stand for a pixel of 24. */
const BITS_ON_LANES = 24;

/** The formats of a plan, each kept once, so that what is asked of one again costs nothing. */
export class FormatTable {
  readonly #tagged: boolean;
  readonly #blanking: 1 | 2;
  readonly #stated = new Map<string, StatedFormat | undefined>();
  readonly #alone = new Map<string, readonly StatedFormat[]>();
  readonly #completed = new Map<StatedFormat, Map<SignalKind, KnownFormat | undefined>>();
  readonly #known = new Map<string, KnownFormat>();
  readonly #byFormat = new Map<Format, KnownFormat>();

  constructor(tagged: boolean, blanking: 1 | 2) {
    this.#tagged = tagged;
    this.#blanking = blanking;
  }

  /** A format as written; undefined when it cannot be, which is told with its statement. */
  stated(fact: FormatFact): StatedFormat | undefined {
    const known = this.#stated.get(fact.text);
    if (known || this.#stated.has(fact.text)) return known;
    const stated = attempt(() => parseFormat(fact.text));
    this.#stated.set(fact.text, stated);
    return stated;
  }

  /** Formats as written; lists that are written alike are one list. */
  allStated(facts: readonly FormatFact[]): readonly StatedFormat[] {
    const [first] = facts;
    if (facts.length > 1 || first === undefined) return facts.flatMap((fact) => this.stated(fact) ?? []);
    const known = this.#alone.get(first.text);
    if (known) return known;
    const stated = this.stated(first);
    const list = stated ? [stated] : [];
    this.#alone.set(first.text, list);
    return list;
  }

  /** What is known of a format. */
  known(format: Format): KnownFormat | undefined {
    return this.#byFormat.get(format) ?? this.#know(() => format);
  }

  /** What was left out filled in, by the signal that it rides on. */
  complete(stated: StatedFormat, signal: Signal): KnownFormat | undefined {
    const kind: SignalKind = signal === 'display' ? 'hdmi' : signal === 'network' ? 'network' : 'sdi';
    let bySignal = this.#completed.get(stated);
    if (!bySignal) {
      bySignal = new Map();
      this.#completed.set(stated, bySignal);
    }
    if (bySignal.has(kind)) return bySignal.get(kind);
    const known = this.#know(() => completeFormat(stated, kind));
    bySignal.set(kind, known);
    return known;
  }

  /** As it rides on the network: in the sampling and depth of the kit that carries it. */
  carry(known: KnownFormat, carried: Carried): KnownFormat | undefined {
    const before = known.carried[carried.index];
    if (before !== undefined) return before ?? undefined;
    const after = this.#know(() => resample(known.format, carried.sampling, carried.depth_bits));
    known.carried[carried.index] = after ?? null;
    return after;
  }

  /** As SDI carries what a display link delivered: 4:2:2, 10 bit. */
  ontoSdi(known: KnownFormat): KnownFormat | undefined {
    return this.#know(() => resample(known.format));
  }

  /** What an output gives that changes the picture: as stated there, with the sound that came in. */
  give(gives: StatedFormat, incoming: KnownFormat, signal: Signal): KnownFormat | undefined {
    if (gives.kind === 'sound' || incoming.format.kind === 'sound') return incoming;
    const audio_channels = gives.audio_channels ?? incoming.format.audio_channels;
    const full = this.complete(gives, signal);
    if (full?.format.kind !== 'picture' || full.format.audio_channels === audio_channels) return full;
    const { format } = full;
    return this.#know(() => ({ ...format, audio_channels }));
  }

  /** What it puts on a network link; undefined when it cannot be carried so. */
  loads(known: KnownFormat, carried: Carried): FlowLoads | undefined {
    const before = known.loads[carried.index];
    if (before !== undefined) return before ?? undefined;
    const loads = attempt(() => flowLoads(known.format, carried.carriage, this.#tagged));
    known.loads[carried.index] = loads ?? null;
    return loads;
  }

  /** Why it does not go over an interface; undefined when it does, and when the interface does not say. */
  misfit(known: KnownFormat, face: Interface): Misfit | undefined {
    const before = known.misfits[face.index];
    if (before !== undefined) return before ?? undefined;
    const misfit = this.#judge(known, face);
    known.misfits[face.index] = misfit ?? null;
    return misfit;
  }

  /** On the cable of an interface that is no network; undefined when that has no such figure. */
  onInterface_bits_per_second(known: KnownFormat, signal: Signal): number | undefined {
    if (signal === 'sdi') return known.sdi_bits_per_second;
    const { format } = known;
    if (signal !== 'display' || format.kind !== 'picture') return undefined;
    if (known.display_bits_per_second === null) {
      known.display_bits_per_second = attempt(() => tmdsTotal_bits_per_second(format, this.#blanking));
    }
    return known.display_bits_per_second;
  }

  #judge({ format, sdi_bits_per_second }: KnownFormat, face: Interface): Misfit | undefined {
    const { signal } = face;
    if (signal === 'unknown' || signal === 'network') return undefined;
    const isSound = format.kind === 'sound';
    if (isSound !== (signal === 'sound')) return notCarried;
    if (isSound) return undefined;
    if (signal === 'display') return this.#judgeOnDisplay(format, face);
    if (sdi_bits_per_second === undefined) return notCarried;
    const limit = face.rate_bits_per_second;
    if (sdiInterfaceFor(sdi_bits_per_second, format.height, face)) return undefined;
    if (format.height < FIRST_HD_ROWS) return notCarried;
    return { kind: 'too big', needs: sdi_bits_per_second, limit, unit: 'bits_per_second' };
  }

  #judgeOnDisplay(format: Format & { kind: 'picture' }, face: Interface): Misfit | undefined {
    const { clock_hz, lanes } = face.statement.fact;
    if (clock_hz === undefined && lanes === undefined) return undefined;
    const fit = attempt(() => judgeDisplay(format, { character_rate_hz: clock_hz, lanes }, this.#blanking));
    if (fit === 'fits') return undefined;
    const characters_hz = attempt(() => tmdsCharacterRate_hz(format, this.#blanking));
    if (fit === undefined || characters_hz === undefined) return notCarried;
    if (lanes === undefined) return { kind: fit, needs: characters_hz, limit: clock_hz, unit: 'hz' };
    const usable = attempt(() => usableRate_bits_per_second(lanes.count, lanes.rate_bits_per_second));
    const needs = characters_hz * BITS_ON_LANES;
    return { kind: fit, needs, limit: usable, unit: 'bits_per_second' };
  }

  #know(make: () => Format): KnownFormat | undefined {
    const format = attempt(make);
    if (format === undefined) return undefined;
    const text = formatFormat(format);
    let known = this.#known.get(text);
    if (!known) {
      known = {
        index: this.#known.size,
        format,
        rate: format.kind === 'picture' ? format.rate : undefined,
        sdi_bits_per_second:
          format.kind === 'picture' ? attempt(() => sdiRate_bits_per_second(format)) : undefined,
        display_bits_per_second: null,
        misfits: [],
        carried: [],
        loads: [],
      };
      this.#known.set(text, known);
      this.#byFormat.set(known.format, known);
    }
    return known;
  }
}

const notCarried: Misfit = {
  kind: 'not carried',
  needs: undefined,
  limit: undefined,
  unit: 'bits_per_second',
};

/** The slowest interface among those accepted that carries so fast a picture. */
export function sdiInterfaceFor(
  rate_bits_per_second: number,
  height: number,
  face: Interface,
): Interface | undefined {
  let slowest: Interface | undefined;
  for (const one of face.accepts) {
    if (one.signal !== 'sdi' || one.rate_bits_per_second < rate_bits_per_second) continue;
    if (height < FIRST_HD_ROWS !== one.rate_bits_per_second < FASTEST_SD_BITS_PER_SECOND) continue;
    if (slowest === undefined || one.rate_bits_per_second < slowest.rate_bits_per_second) slowest = one;
  }
  return slowest;
}
