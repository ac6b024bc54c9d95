/** Figures that cost, worked out once for an analysis however many checks ask for them. */
import { addressingOf } from '../analysis/addresses.ts';
import { cableStockOf } from '../analysis/cable-pieces.ts';
import { packingOf } from '../analysis/case-weights.ts';
import { poweringOf } from '../analysis/circuit-loads.ts';
import { firmwareOf } from '../analysis/firmware.ts';
import type { Analysis } from '../analysis/model.ts';

/** A function of the analysis that remembers its answer for as long as the analysis is there. */
export function once<T>(work: (analysis: Analysis) => T): (analysis: Analysis) => T {
  const answers = new WeakMap<Analysis, { readonly answer: T }>();
  return (analysis) => {
    let known = answers.get(analysis);
    if (!known) {
      known = { answer: work(analysis) };
      answers.set(analysis, known);
    }
    return known.answer;
  };
}

export const poweringFor = once(poweringOf);
export const addressingFor = once(addressingOf);
export const firmwareFor = once(firmwareOf);
export const cableStockFor = once(cableStockOf);
export const packingFor = once((analysis) => packingOf(analysis, cableStockFor(analysis)));
