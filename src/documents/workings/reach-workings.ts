import { reachOn } from '../../analysis/link-interface.ts';
import type { Analysis, Cable, Interface, Link, Reach } from '../../analysis/model.ts';
import { connectionsOf, lossAt } from '../../analysis/reaches.ts';
import { formatLength, formatLoss, formatShare } from '../../physics/display.ts';
import { explainFibreReach, judgeFibre } from '../../physics/fibre.ts';
import { explainPairReach } from '../../physics/twisted-pair.ts';
import { type Label, makeWorking, type Working } from '../../physics/working.ts';
import { coaxLossWorking, coaxReach, isJudgedByLoss } from './coax-workings.ts';
import { sourceOf } from './provenance.ts';

/** How it was judged whether a link is short enough for what runs on it; none where nothing says how far it may go. */
export function reachWorkings(analysis: Analysis, link: Link): Working[] {
  const reach = analysis.reaches[link.chain.index]!;
  if (!link.cable || !reach.judgedAs || reach.reach_m === undefined) return [];
  const reaches = link.chain.links.flatMap((one) => (one.cable ? reachOfOne(reach, one, one.cable) : []));
  return link.chain.links.length === 1 ? reaches : [joinedWorking(analysis, link, reach, reaches)];
}

/** How far one cable may go by itself. */
function reachOfOne(reach: Reach, link: Link, cable: Cable): Working[] {
  const face = reach.judgedAs!;
  if (isJudgedByLoss(face, cable)) return [coaxWorking(reach, link, cable)];
  const table = reachOn(face, cable);
  if (!table) return [];
  if (cable.medium === 'fibre') return fibreWorking(face, link, cable);
  const { temperature_c } = link.length;
  const shortened = cable.strandedShare !== undefined || (temperature_c !== undefined && temperature_c > 20);
  if (cable.medium !== 'twisted pair' || !shortened) {
    return [
      makeWorking({
        figure: `reach of ${nameOf(face)} on ${cable.name}`,
        rule: 'as tabulated',
        formula: '',
        inputs: [],
        result: formatLength(table.length_m),
        ...sourceOf(table),
      }),
    ];
  }
  const conditions = { stranded_share: cable.strandedShare, screened: cable.screened, temperature_c };
  return [explainPairReach(table.length_m, conditions, sourceOf(table)).working];
}

function coaxWorking({ judgedAs, frequency_hz }: Reach, link: Link, cable: Cable): Working {
  const reach = coaxReach(judgedAs!, cable, frequency_hz).working;
  const { length_m } = link.length;
  if (length_m === undefined || frequency_hz === undefined) return reach;
  return { ...reach, steps: [...reach.steps, coaxLossWorking(cable, frequency_hz, length_m)] };
}

function fibreWorking(face: Interface, link: Link, cable: Cable): Working[] {
  const table = reachOn(face, cable);
  const loss = lossAt(cable, face.statement.fact.wavelength_m);
  const { length_m } = link.length;
  if (!table || !loss || length_m === undefined) return [];
  const run = {
    length_m,
    loss_db_per_m: loss.loss_db_per_m,
    connections: connectionsOf({ ...link.chain, links: [link] }),
    splices: link.splices,
  };
  const limits = { reach_m: table.length_m, loss_db: table.loss_db };
  const fromMemory = judgeFibre(run, limits).decided_by === 'loss' ? table.lossFromMemory : table.fromMemory;
  return [explainFibreReach(run, limits, sourceOf(loss), sourceOf({ ...table, fromMemory })).working];
}

/** Several cables between the same two active ports count as one. */
function joinedWorking({ settings }: Analysis, link: Link, reach: Reach, steps: readonly Working[]): Working {
  const { links, length_m } = link.chain;
  const lengths = links.map((one): [string, string] => [
    one.name,
    one.length.length_m === undefined ? 'not known' : formatLength(one.length.length_m, settings.units),
  ]);
  const byLoss = reach.loss_db !== undefined && reach.loss_limit_db !== undefined;
  const used = byLoss
    ? `; ${formatLoss(reach.loss_db!)} of ${formatLoss(reach.loss_limit_db!)} are lost`
    : reach.share === undefined
      ? ''
      : `; ${formatShare(reach.share)} of what is allowed`;
  const label: Label = reach.fromMemory ? 'from memory' : 'derived';
  return makeWorking({
    figure: 'all cables between the two active ports',
    rule: `nothing regenerates the signal between them: they count as one${used}`,
    formula: lengths.map(([name]) => name).join(' + '),
    inputs: lengths,
    substituted: lengths.map(([, length]) => length).join(' + '),
    result: length_m === undefined ? 'not known' : formatLength(length_m, settings.units),
    source: 'sum of lengths and losses',
    label,
    steps,
  });
}

function nameOf({ name, statement }: Interface): string {
  return statement.label ?? name;
}
