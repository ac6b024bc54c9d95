/** The usual cautions. They never replace local codes and licensed practice. */

export const verifyCaution =
  'Verify on site: computed values are planning values. Measure lengths, delays and uplinks, and write down what you find.';
export const mainsCaution =
  'Mains: circuits and distribution are set up and tested by a qualified electrician. Do not open, extend or daisy-chain them; keep every circuit at or below its limit.';
export const walkwayCaution =
  'Walkways: cable across a walkway goes under a ramp or taped along both edges. Escape routes and fire doors stay free.';
export const riserCaution =
  'Ceilings, risers and floor voids: only cable with the fire rating that the local code asks for, and only where the house allows it.';
export const overheadCaution =
  'Overhead: nothing is hung but from rated points, by the people who are licensed for it, each with a second fixing.';
export const fibreCaution =
  'Fibre: never look into a connector or a fibre end, lit or not. Caps stay on until the moment of plugging; clean before plugging.';
export const liftingCaution =
  'Lifting: a case above about 23 kg (50 lb) is carried by two people or rolled. Weights marked as not known may be heavier than they look.';
export const localCaution =
  'Local codes, the rules of the house and the judgement of licensed people come before anything on these sheets.';

export const allCautions: readonly string[] = [
  localCaution,
  mainsCaution,
  walkwayCaution,
  riserCaution,
  overheadCaution,
  fibreCaution,
  liftingCaution,
  verifyCaution,
];
