import { howFar } from '../analysis/how-far.ts';
import type { Analysis, Delivery, HowFar } from '../analysis/model.ts';

/** Looking for what is missing costs; a plan with more lost pictures than this lacks something large. */
const MOST_ASKED = 200;

const asked = new WeakMap<Analysis, Map<Delivery, HowFar>>();

/** How far a picture without a route gets; undefined when that has been asked too often already. */
export function howFarOf(analysis: Analysis, delivery: Delivery): HowFar | undefined {
  let known = asked.get(analysis);
  if (!known) {
    known = new Map();
    asked.set(analysis, known);
  }
  let far = known.get(delivery);
  if (!far && known.size < MOST_ASKED) {
    far = howFar(analysis, delivery);
    known.set(delivery, far);
  }
  return far;
}
