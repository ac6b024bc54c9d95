import { budgetsOf } from '../../analysis/coax-reach.ts';
import type { Cable, Interface } from '../../analysis/model.ts';
import { type CoaxLoss, explainCoaxLoss, explainCoaxReach, fitCoaxLoss } from '../../physics/coax.ts';
import type { Explained, Working } from '../../physics/working.ts';
import { sourceOf, sourceOfAll } from './provenance.ts';

/** Whether an interface is judged on this cable by loss and not by a table. */
export function isJudgedByLoss(face: Interface, cable: Cable): boolean {
  return cable.medium === 'coax' && face.statement.fact.budgets.length > 0 && statedLosses(cable).length > 0;
}

/**
 * How far an interface reaches on a coax cable.
 *
 * @param frequency_hz Which of its budgets; the first where it is not said.
 * @throws PhysicsError for losses that cannot be.
 */
export function coaxReach(face: Interface, cable: Cable, frequency_hz?: number): Explained {
  const own = budgetsOf(face);
  const budget = own.find((one) => one.frequency_hz === frequency_hz) ?? own[0]!;
  const slower = face.accepts.slice(1).flatMap(budgetsOf);
  const stated = sourceOfAll(cable.losses);
  const { value, working } = explainCoaxReach(fitted(cable), budget, slower, stated, sourceOf(budget));
  return {
    value,
    working: { ...working, figure: `reach of ${face.statement.label ?? face.name} on ${cable.name}` },
  };
}

/** What a length of coax loses at a frequency. @throws PhysicsError for losses and lengths that cannot be */
export function coaxLossWorking(cable: Cable, frequency_hz: number, length_m: number): Working {
  return explainCoaxLoss(fitted(cable), frequency_hz, length_m, sourceOfAll(cable.losses)).working;
}

function fitted(cable: Cable): CoaxLoss {
  return fitCoaxLoss(statedLosses(cable));
}

function statedLosses({ losses }: Cable): { frequency_hz: number; loss_db_per_m: number }[] {
  return losses.flatMap(({ frequency_hz, loss_db_per_m }) =>
    frequency_hz === undefined ? [] : [{ frequency_hz, loss_db_per_m }],
  );
}
