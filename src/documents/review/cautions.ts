import type { Analysis } from '../../analysis/model.ts';
import {
  fibreCaution,
  localCaution,
  mainsCaution,
  riserCaution,
  walkwayCaution,
} from '../sheets/cautions.ts';
import type { Comparison } from './comparison.ts';
import type { Step } from './review.ts';

/** The cautions that go with what these steps ask of hands. */
export function cautionsOf({ was, is, titles }: Comparison, steps: readonly Step[]): string[] {
  const fibres = new Set([
    ...fibresOf(was).map((link) => titles.was.link(link)),
    ...fibresOf(is).map((link) => titles.is.link(link)),
  ]);
  const some = (test: (step: Step) => boolean, ...cautions: string[]) => (steps.some(test) ? cautions : []);
  return [
    ...some(({ kind }) => kind === 'power' || kind === 'set up' || kind === 'carry', mainsCaution),
    ...some(isLaid, walkwayCaution, riserCaution),
    ...some(({ cable }) => cable !== null && fibres.has(cable.title), fibreCaution),
    ...some(({ kind }) => kind !== 'look' && kind !== 'set', localCaution),
  ];
}

function fibresOf({ links }: Analysis): Analysis['links'] {
  return links.filter(({ cable }) => cable?.medium === 'fibre');
}

/** A cable that is laid from one place to another. */
function isLaid({ kind, sockets }: Step): boolean {
  const [near, far] = sockets;
  return (
    (kind === 'lay' || kind === 'plug') && near !== undefined && far !== undefined && near.place !== far.place
  );
}
