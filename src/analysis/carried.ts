import type { Packing } from '../physics/packing.ts';
import { SAMPLINGS } from '../physics/raster.ts';
import type { CarriesFact } from '../plan/facts.ts';
import type { Carried } from './model.ts';

/** What SDI and network carry unless the kit says otherwise. */
const USUAL_SAMPLING = '4:2:2';
const USUAL_DEPTH_BITS = 10;

/** The ways in which the plan's kits put pictures onto the network, each once. */
export class CarriedKinds {
  readonly all: Carried[] = [];
  readonly #byText = new Map<string, Carried>();
  readonly #packing: Packing;

  constructor(packing: Packing) {
    this.#packing = packing;
  }

  /** For a source that sends by itself and whose kit does not say how; and for what nobody has decided yet. */
  usual(): Carried {
    return this.of({ kind: 'uncompressed' });
  }

  of(fact: CarriesFact): Carried {
    const sampling = samplingOf('sampling' in fact ? fact.sampling : undefined);
    const depth_bits = ('depth_bits' in fact ? fact.depth_bits : undefined) ?? USUAL_DEPTH_BITS;
    const text = textOf(fact, sampling, depth_bits);
    const known = this.#byText.get(text);
    if (known) return known;
    const carried: Carried = {
      index: this.all.length,
      text,
      carriage: this.#carriage(fact),
      sampling,
      depth_bits,
    };
    this.all.push(carried);
    this.#byText.set(text, carried);
    return carried;
  }

  #carriage(fact: CarriesFact): Carried['carriage'] {
    if (fact.kind === 'uncompressed') return { kind: 'uncompressed', packing: this.#packing };
    if ('ratio' in fact) return { kind: 'compressed', ratio: fact.ratio };
    if ('bitsPerPixel' in fact) return { kind: 'compressed', bits_per_pixel: fact.bitsPerPixel };
    return { kind: 'compressed', rate_bits_per_second: fact.rate_bits_per_second };
  }
}

function samplingOf(text: string | undefined): Carried['sampling'] {
  return SAMPLINGS.find((one) => one === text) ?? USUAL_SAMPLING;
}

function textOf(fact: CarriesFact, sampling: string, depth_bits: number): string {
  if (fact.kind === 'uncompressed') {
    const usual = sampling === USUAL_SAMPLING && depth_bits === USUAL_DEPTH_BITS;
    return usual ? 'uncompressed' : `uncompressed ${sampling} ${depth_bits} bit`;
  }
  if ('ratio' in fact) return `compressed ${fact.ratio}:1`;
  if ('bitsPerPixel' in fact) return `compressed to ${fact.bitsPerPixel} bit per pixel`;
  return `compressed at ${fact.rate_bits_per_second / 1e6} Mb/s`;
}
