/** Optical fibre: a link must keep both the reach of its interface and its loss budget. */
import { exceeds } from './decimal.ts';
import { formatLength, formatLoss } from './display.ts';
import { requireLength, requireWhole, requireWithin } from './physics-error.ts';
import { type Explained, makeWorking, type Source } from './working.ts';

/** Highest loss of a mated connection: TIA-568.3-D through the FOA guideline (second-hand). */
export const CONNECTION_DB = 0.75;
/** Highest loss of a splice: TIA-568.3-D through open calculators (second-hand). */
export const SPLICE_DB = 0.3;
/** One connection at each end. */
export const USUAL_CONNECTIONS = 2;
export const FIBRE_SOURCE: Source = {
  source: 'TIA-568.3-D highest losses: connection 0.75 dB, splice 0.3 dB',
  label: 'second-hand',
};

export interface FibreRun {
  readonly length_m: number;
  readonly loss_db_per_m: number;
  readonly connections?: number | undefined;
  readonly splices?: number | undefined;
  readonly connection_db?: number | undefined;
  readonly splice_db?: number | undefined;
}

/** What an interface allows on this kind of fibre. */
export interface FibreLimits {
  readonly reach_m: number;
  /** Channel insertion loss; undefined when only a reach is stated. */
  readonly loss_db?: number | undefined;
}

export interface FibreJudgement {
  readonly loss_db: number;
  /** What is left of the loss budget, negative when it is overrun; undefined without a budget. */
  readonly margin_db: number | undefined;
  /** The allowed length: the shorter of the reach and what the loss budget leaves for the fibre itself. */
  readonly allowed_m: number;
  readonly decided_by: 'reach' | 'loss';
  readonly fits: boolean;
}

/** Loss of connections and splices alone. @throws PhysicsError for counts that are negative or not whole */
function fixedLoss_db(run: FibreRun): number {
  const connections = requireWhole('connections', run.connections ?? USUAL_CONNECTIONS, 0, 1000);
  const splices = requireWhole('splices', run.splices ?? 0, 0, 1000);
  const connection_db = requireWithin(
    'loss of a connection',
    run.connection_db ?? CONNECTION_DB,
    0,
    20,
    'dB',
  );
  const splice_db = requireWithin('loss of a splice', run.splice_db ?? SPLICE_DB, 0, 20, 'dB');
  return connections * connection_db + splices * splice_db;
}

/**
 * Loss of a run: length x dB/m + connections x 0.75 dB + splices x 0.3 dB.
 *
 * @throws PhysicsError for a length, loss or count that cannot be
 */
export function fibreLoss_db(run: FibreRun): number {
  const loss_db_per_m = requireWithin('fibre loss', run.loss_db_per_m, 0, 1, 'dB per m');
  return requireLength(run.length_m) * loss_db_per_m + fixedLoss_db(run);
}

/** Judges a run by reach and by loss; the worse decides. @throws PhysicsError as `fibreLoss_db` */
export function judgeFibre(run: FibreRun, limits: FibreLimits): FibreJudgement {
  const loss_db = fibreLoss_db(run);
  const reach_m = requireLength(limits.reach_m);
  if (limits.loss_db === undefined) {
    return {
      loss_db,
      margin_db: undefined,
      allowed_m: reach_m,
      decided_by: 'reach',
      fits: !exceeds(run.length_m, reach_m),
    };
  }
  const left_db = requireWithin('loss limit', limits.loss_db, 0, 1000, 'dB') - fixedLoss_db(run);
  const byLoss_m =
    run.loss_db_per_m === 0 ? (left_db < 0 ? 0 : reach_m) : Math.max(0, left_db / run.loss_db_per_m);
  const margin_db = limits.loss_db - loss_db;
  return {
    loss_db,
    margin_db,
    allowed_m: Math.min(reach_m, byLoss_m),
    decided_by: byLoss_m < reach_m ? 'loss' : 'reach',
    // A hair for binary fractions, so that a run exactly at its budget fits.
    fits: !exceeds(run.length_m, reach_m) && margin_db >= -1e-9,
  };
}

/** `fibreLoss_db` with its working. `fibre` says where its loss per length comes from. */
export function explainFibreLoss(run: FibreRun, fibre: Source): Explained {
  const value = fibreLoss_db(run);
  const working = makeWorking({
    figure: `loss of ${formatLength(run.length_m)} of fibre with its connections`,
    rule: 'highest losses allowed, so that real ones are below',
    formula: 'length x loss + connections x each + splices x splice',
    inputs: [
      ['length', formatLength(run.length_m)],
      ['loss', `${formatLoss(run.loss_db_per_m * 1000)}/km`],
      ['connections', String(run.connections ?? USUAL_CONNECTIONS)],
      ['each', formatLoss(run.connection_db ?? CONNECTION_DB)],
      ['splices', String(run.splices ?? 0)],
      ['splice', formatLoss(run.splice_db ?? SPLICE_DB)],
    ],
    result: formatLoss(value),
    source: `${fibre.source}; ${FIBRE_SOURCE.source}`,
    label: fibre.label,
  });
  return { value, working };
}

/** The allowed length with its working; `table` says where the interface's reach and loss limit come from. */
export function explainFibreReach(
  run: FibreRun,
  limits: FibreLimits,
  fibre: Source,
  table: Source,
): Explained<FibreJudgement> {
  const value = judgeFibre(run, limits);
  const byReach = value.decided_by === 'reach';
  const working = makeWorking({
    figure: 'allowed length on this fibre',
    rule: byReach ? 'the stated reach, which is shorter than the loss allows' : lossRule(value),
    formula: byReach ? '' : '(limit - connections and splices) / loss',
    inputs: byReach
      ? []
      : [
          ['limit', formatLoss(limits.loss_db ?? 0)],
          ['connections and splices', formatLoss(fixedLoss_db(run))],
          ['loss', `${formatLoss(run.loss_db_per_m * 1000)}/km`],
        ],
    result: formatLength(value.allowed_m),
    ...table,
    steps: [explainFibreLoss(run, fibre).working],
  });
  return { value, working };
}

function lossRule({ allowed_m }: FibreJudgement): string {
  return allowed_m === 0
    ? 'connections and splices alone use up the loss limit'
    : 'what the loss limit leaves for the fibre, which is shorter than the stated reach';
}
