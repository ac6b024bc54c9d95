import { exceeds } from '../physics/decimal.ts';
import { judgeFibre } from '../physics/fibre.ts';
import { PhysicsError } from '../physics/physics-error.ts';
import { joinedShare, judgeLength } from '../physics/reach.ts';
import { pairReach_m, WARMEST_C } from '../physics/twisted-pair.ts';
import type { ReachFact } from '../plan/facts.ts';
import type { Building } from './building.ts';
import { CoaxJudge } from './coax-reach.ts';
import { type KnownFormat, sdiInterfaceFor } from './formats.ts';
import { reachOn } from './link-interface.ts';
import type { Cable, Chain, Interface, Reach } from './model.ts';
import { BADLY_REMEMBERED, notKnown, VERDICTS } from './reach-words.ts';

/** One cable of a chain whose kind and length are known. */
interface Piece {
  readonly cable: Cable;
  readonly length_m: number;
}

/** Judges whether a chain of cables is short enough for what runs on it. */
export class ReachJudge {
  readonly #coax = new CoaxJudge();

  /**
   * Lengths and losses beyond all reason leave it not known; they are told where they are written.
   *
   * @param picture The fastest that SDI carries there in any segment.
   */
  judge(chain: Chain, picture: KnownFormat | undefined): Reach {
    const face = chain.interface;
    const cable = chain.links[0]?.cable;
    if (!face || !cable) return notKnown;
    try {
      if (cable.medium === 'coax' && face.statement.fact.budgets.length > 0) {
        return this.#coax.judge(chain, judgedAs(face, picture), picture?.format);
      }
      return cable.medium === 'fibre' ? judgeOnFibre(chain, face) : judgeByTable(chain, face);
    } catch (error) {
      if (error instanceof PhysicsError) return notKnown;
      throw error;
    }
  }
}

/** The interface at which coax is judged: the slowest that carries the fastest picture. */
function judgedAs(face: Interface, picture: KnownFormat | undefined): Interface {
  const rate = picture?.sdi_bits_per_second;
  if (rate === undefined || picture?.format.kind !== 'picture') return face;
  return sdiInterfaceFor(rate, picture.format.height, face) ?? face;
}

/** The cables with their lengths; undefined when a kind or a length is missing. */
function piecesOf(chain: Chain): Piece[] | undefined {
  const pieces: Piece[] = [];
  for (const { cable, length } of chain.links) {
    if (!cable || length.length_m === undefined) return undefined;
    pieces.push({ cable, length_m: length.length_m });
  }
  return pieces;
}

/** The tabulated reaches of a chain's cables; undefined when the interface does not list one of them. */
function tableOf(chain: Chain, face: Interface): ReachFact[] | undefined {
  const table: ReachFact[] = [];
  for (const { cable } of chain.links) {
    const reach = cable && reachOn(face, cable);
    if (!reach) return undefined;
    table.push(reach);
  }
  return table;
}

/** Twisted pair, display, sound and direct-attach cables: by table, shortened where it is warm or stranded. */
function judgeByTable(chain: Chain, face: Interface): Reach {
  const table = tableOf(chain, face);
  if (!table) return { ...notKnown, judgedAs: face };
  const isWarm = (temperature_c: number | undefined) => temperature_c !== undefined && temperature_c > 20;
  const hottest_c = chain.links.reduce<number | undefined>(
    (most, { length }) =>
      length.temperature_c !== undefined && length.temperature_c > (most ?? 20) ? length.temperature_c : most,
    undefined,
  );
  const shortened = (i: number, tabulated_m: number) => {
    const { cable, length } = chain.links[i]!;
    if (cable?.medium !== 'twisted pair') return tabulated_m;
    const temperature_c = isWarm(length.temperature_c)
      ? Math.min(WARMEST_C, length.temperature_c!)
      : undefined;
    return pairReach_m(tabulated_m, {
      stranded_share: cable.strandedShare,
      screened: cable.screened,
      temperature_c,
    });
  };
  const most = table.map((reach, i) => shortened(i, reach.length_m));
  const good = table.map((reach, i) => shortened(i, reach.good_m ?? reach.length_m));
  const reach: Building<Reach> = {
    ...notKnown,
    reach_m: most[0],
    good_m: good[0],
    judgedAs: face,
    decidedBy: 'length',
    temperature_c: chain.links.some(({ cable }) => cable?.medium === 'twisted pair') ? hottest_c : undefined,
    fromMemory: table.some(({ fromMemory }) => fromMemory),
    source: table[0]!.source,
  };
  const pieces = piecesOf(chain);
  if (!pieces || chain.length_m === undefined) return reach;
  const joined = pieces.length > 1;
  reach.share = joinedShare(pieces.map(({ length_m }, i) => ({ length_m, reach_m: most[i]! })));
  reach.memoryDecides = reach.fromMemory && reach.share * BADLY_REMEMBERED > 1;
  if (joined && reach.share > 0) {
    const goodShare = joinedShare(pieces.map(({ length_m }, i) => ({ length_m, reach_m: good[i]! })));
    reach.reach_m = chain.length_m / reach.share;
    reach.good_m = chain.length_m / goodShare;
  }
  const judgement = judgeLength(chain.length_m, { most_m: reach.reach_m!, good_m: reach.good_m });
  // Above the warmest temperature that the tables know, nothing is certain.
  const beyondTables = judgement === 'fits' && (reach.temperature_c ?? 0) > WARMEST_C;
  reach.verdict = beyondTables ? 'doubtful' : VERDICTS[judgement];
  return reach;
}

/** By reach and by loss; the worse decides. */
function judgeOnFibre(chain: Chain, face: Interface): Reach {
  const table = tableOf(chain, face);
  if (!table) return { ...notKnown, judgedAs: face };
  const limits = table.flatMap(({ loss_db }) => loss_db ?? []);
  const loss_limit_db = limits.length > 0 ? Math.min(...limits) : undefined;
  const losses = chain.links.map(({ cable }) => lossAt(cable!, face.statement.fact.wavelength_m));
  const reach: Building<Reach> = {
    ...notKnown,
    reach_m: table[0]!.length_m,
    good_m: table[0]!.good_m,
    loss_limit_db,
    judgedAs: face,
    source: table[0]!.source,
  };
  const pieces = piecesOf(chain);
  if (!pieces || chain.length_m === undefined) return reach;
  const { length_m } = chain;
  const byTable = joinedShare(pieces.map((piece, i) => ({ ...piece, reach_m: table[i]!.length_m })));
  const table_m = byTable > 0 ? length_m / byTable : table[0]!.length_m;
  const fibre_db = losses.reduce<number | undefined>(
    (sum, loss, i) =>
      sum === undefined || loss === undefined ? undefined : sum + loss.loss_db_per_m * pieces[i]!.length_m,
    0,
  );
  const lengthRemembered = table.some(({ fromMemory }) => fromMemory);
  if (fibre_db === undefined) {
    reach.fromMemory = lengthRemembered;
    reach.memoryDecides = lengthRemembered && byTable * BADLY_REMEMBERED > 1;
    reach.share = byTable;
    reach.decidedBy = 'length';
    reach.reach_m = table_m;
    reach.verdict = VERDICTS[judgeLength(length_m, { most_m: table_m, good_m: reach.good_m })];
    return reach;
  }
  const run = {
    length_m,
    loss_db_per_m: length_m > 0 ? fibre_db / length_m : losses[0]!.loss_db_per_m,
    connections: connectionsOf(chain),
    splices: chain.links.reduce((sum, { splices }) => sum + (splices ?? 0), 0),
  };
  const judged = judgeFibre(run, { reach_m: table_m, loss_db: loss_limit_db });
  const byLoss = loss_limit_db ? judged.loss_db / loss_limit_db : 0;
  reach.loss_db = judged.loss_db;
  reach.reach_m = judged.allowed_m;
  reach.decidedBy = judged.decided_by === 'loss' ? 'loss' : 'length';
  reach.share = Math.max(byTable, byLoss);
  if (reach.decidedBy === 'length') {
    reach.fromMemory = lengthRemembered;
    reach.memoryDecides = lengthRemembered && byTable * BADLY_REMEMBERED > 1;
  } else {
    const limitRemembered = table.some(({ lossFromMemory }) => lossFromMemory);
    const fibreRemembered = losses.some((loss) => loss?.fromMemory);
    const worse_db = limitRemembered
      ? judged.loss_db * BADLY_REMEMBERED
      : judged.loss_db + fibre_db * (BADLY_REMEMBERED - 1);
    reach.fromMemory = limitRemembered || fibreRemembered;
    if (!limitRemembered) reach.source = losses.find((loss) => loss?.fromMemory)?.source ?? reach.source;
    reach.memoryDecides = reach.fromMemory && worse_db > (loss_limit_db ?? Infinity);
  }
  const isGood = reach.good_m === undefined || !exceeds(length_m, reach.good_m);
  reach.verdict = judged.fits ? (isGood ? 'good' : 'doubtful') : 'beyond';
  return reach;
}

/** The stated loss at the wavelength nearest to that of the interface. */
export function lossAt(cable: Cable, wavelength_m: number | undefined): Cable['losses'][number] | undefined {
  const stated = cable.losses.filter((loss) => loss.wavelength_m !== undefined);
  if (wavelength_m === undefined) return stated[0];
  const off = (loss: Cable['losses'][number]) => Math.abs(loss.wavelength_m! - wavelength_m);
  return stated.length === 0 ? undefined : stated.reduce((a, b) => (off(b) < off(a) ? b : a));
}

/** As stated; else one at each end and one at each join. */
export function connectionsOf({ links }: Chain): number {
  if (links.every(({ connections }) => connections === undefined)) return links.length + 1;
  return links.reduce((sum, { connections }) => sum + (connections ?? 2), 0);
}
