import {
  COAX_NEAR_LIMIT,
  type CoaxLoss,
  coaxLoss_db_per_m,
  coaxReach_m,
  fitCoaxLoss,
  halfClock_hz,
  type LossBudget,
} from '../physics/coax.ts';
import { withoutNoise } from '../physics/decimal.ts';
import { judgeLength } from '../physics/reach.ts';
import { attempt } from './attempt.ts';
import type { Building } from './building.ts';
import type { Cable, Chain, Interface, Reach } from './model.ts';
import { BADLY_REMEMBERED, notKnown, VERDICTS } from './reach-words.ts';

export interface Budget extends LossBudget {
  readonly fromMemory: boolean;
  readonly source: string | undefined;
}

/** What an interface's budgets mean on one cable. */
interface OnCable {
  /** Its own strictest budget, and those of the slower interfaces that it accepts, which may not reach less far. */
  readonly budgets: readonly Budget[];
  /** By budget: loss of a metre at its frequency. */
  readonly losses_db_per_m: readonly number[];
  readonly reach_m: number;
  readonly fromMemory: boolean;
  /** Of the budget, or of the remembered one among the values. */
  readonly source: string | undefined;
}

/**
 * Judges coax by its loss within the receiver's budget; a faster interface is never given more reach than a slower
 * one. What does not depend on the length is worked out once for each cable and interface.
 */
export class CoaxJudge {
  readonly #fits = new Map<Cable, CoaxLoss | undefined>();
  readonly #onCables = new Map<Interface, Map<Cable, OnCable | undefined>>();

  judge(chain: Chain, face: Interface, picture: Reach['picture']): Reach {
    const [first] = chain.links;
    const own = first?.cable && this.#on(first.cable, face);
    const reach: Building<Reach> = { ...notKnown, judgedAs: face, picture };
    if (!own) return reach;
    const [strictest] = own.budgets;
    reach.reach_m = own.reach_m;
    reach.frequency_hz = strictest!.frequency_hz;
    reach.loss_limit_db = strictest!.budget_db;
    reach.fromMemory = own.fromMemory;
    reach.source = own.source;
    if (chain.length_m !== undefined) this.#judgeLength(chain, face, own, reach);
    return reach;
  }

  #judgeLength(chain: Chain, face: Interface, { budgets }: OnCable, reach: Building<Reach>): void {
    let decides = -1;
    let share = -1;
    for (let i = 0; i < budgets.length; i++) {
      const losses_db = this.#losses_db(chain, face, i);
      if (losses_db === undefined) return;
      const loss_db = losses_db.reduce((sum, loss) => sum + loss, 0);
      if (loss_db / budgets[i]!.budget_db <= share) continue;
      share = loss_db / budgets[i]!.budget_db;
      decides = i;
      reach.loss_db = withoutNoise(loss_db);
      reach.losses_db = losses_db;
    }
    const budget = budgets[decides]!;
    reach.loss_limit_db = budget.budget_db;
    reach.frequency_hz = budget.frequency_hz;
    reach.share = withoutNoise(share);
    reach.memoryDecides = reach.fromMemory && share * BADLY_REMEMBERED > 1;
    reach.decidedBy = 'loss';
    if (share > 0 && chain.links.length > 1) reach.reach_m = chain.length_m! / share;
    const allowed = { most_m: reach.reach_m!, near_share: COAX_NEAR_LIMIT };
    reach.verdict = VERDICTS[judgeLength(chain.length_m!, allowed)];
  }

  /** Loss of each cable of the chain at the frequency of a budget; undefined when one of them has no stated loss. */
  #losses_db({ links }: Chain, face: Interface, budget: number): number[] | undefined {
    const losses_db: number[] = [];
    for (const { cable, length } of links) {
      const on = cable && this.#on(cable, face);
      if (!on || length.length_m === undefined) return undefined;
      losses_db.push(on.losses_db_per_m[budget]! * length.length_m);
    }
    return losses_db;
  }

  #on(cable: Cable, face: Interface): OnCable | undefined {
    let onCables = this.#onCables.get(face);
    if (!onCables) {
      onCables = new Map();
      this.#onCables.set(face, onCables);
    }
    if (!onCables.has(cable)) {
      onCables.set(
        cable,
        attempt(() => this.#workOut(cable, face)),
      );
    }
    return onCables.get(cable);
  }

  #workOut(cable: Cable, face: Interface): OnCable | undefined {
    const loss = this.#fit(cable);
    const own = budgetsOf(face);
    if (!loss || own.length === 0) return undefined;
    const slower = face.accepts.slice(1).flatMap(budgetsOf);
    const reachOf = (budget: Budget) => coaxReach_m(loss, budget, slower);
    const strictest = own.reduce((a, b) => (reachOf(b) < reachOf(a) ? b : a));
    const budgets = [strictest, ...slower.filter((one) => one.frequency_hz < strictest.frequency_hz)];
    const remembered = [strictest, ...cable.losses].find(({ fromMemory }) => fromMemory);
    return {
      budgets,
      losses_db_per_m: budgets.map(({ frequency_hz }) => coaxLoss_db_per_m(loss, frequency_hz)),
      reach_m: reachOf(strictest),
      fromMemory: remembered !== undefined,
      source: (remembered ?? strictest).source,
    };
  }

  #fit(cable: Cable): CoaxLoss | undefined {
    if (!this.#fits.has(cable)) {
      const points = cable.losses.flatMap(({ frequency_hz, loss_db_per_m }) =>
        frequency_hz === undefined ? [] : [{ frequency_hz, loss_db_per_m }],
      );
      this.#fits.set(
        cable,
        attempt(() => fitCoaxLoss(points)),
      );
    }
    return this.#fits.get(cable);
  }
}

/** The loss budgets of an interface, each at its frequency: half the clock where none is stated. */
export function budgetsOf(face: Interface): Budget[] {
  return face.statement.fact.budgets.map(({ loss_db, frequency_hz, fromMemory, source }) => ({
    budget_db: loss_db,
    frequency_hz: frequency_hz ?? halfClock_hz(face.rate_bits_per_second),
    fromMemory,
    source,
  }));
}
