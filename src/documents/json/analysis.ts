import { addressingOf } from '../../analysis/addresses.ts';
import { cableStockOf } from '../../analysis/cable-pieces.ts';
import { packingOf } from '../../analysis/case-weights.ts';
import { poweringOf } from '../../analysis/circuit-loads.ts';
import { costOf } from '../../analysis/costs.ts';
import { failuresOf } from '../../analysis/failures.ts';
import { firmwareOf } from '../../analysis/firmware.ts';
import type { Analysis } from '../../analysis/model.ts';
import { recordingsOf } from '../../analysis/recordings.ts';
import { soundMatchesOf } from '../../analysis/sound-matches.ts';
import { uplinkLoadsOf } from '../../analysis/uplink-loads.ts';
import { findingJson, findingShape } from '../findings/json.ts';
import type { LocatedFinding } from '../findings/located.ts';
import {
  cablePieceJson,
  cablePieceShape,
  spareCableJson,
  spareCableShape,
  stockLeftJson,
  stockLeftShape,
} from './cables.ts';
import { caseJson, caseShape } from './cases.ts';
import { costJson, costShape } from './cost.ts';
import { failureJson, failureShape } from './failures.ts';
import { feedJson, feedShape } from './feeds.ts';
import { groupJson, groupShape } from './groups.ts';
import { linkJson, linkShape } from './links.ts';
import { nodeJson, nodeShape } from './nodes.ts';
import {
  circuitJson,
  circuitShape,
  networkPowerJson,
  networkPowerShape,
  placePowerJson,
  placePowerShape,
} from './power.ts';
import { recordingJson, recordingShape } from './recordings.ts';
import { list, object, orNull, text, type ValueOf, whole } from './schema.ts';
import { soundJson, soundShape } from './sound.ts';
import { sourceJson, sourceShape } from './sources.ts';
import { uplinkJson, uplinkShape } from './uplinks.ts';

/** The whole analysis of a plan, as `feedplot show --json` prints it. */
export const analysisShape = object(
  'What Feedplot works out about a plan. Quantities are in SI units, told by the end of the key',
  {
    schema: whole(
      'Version of this shape: 1. A key that is added keeps it; one that changes its meaning raises it',
    ),
    plan: object('The plan itself', {
      title: text('Its title'),
      revision: orNull(text('Its revision')),
      file: text('Its file, from the folder in which the command ran'),
    }),
    findings: list('Everything that is wrong or doubtful, by file and line', findingShape),
    links: list('Every cable, in order of statements', linkShape),
    feeds: list('Every feed: those that always hold, then by segment those that differ there', feedShape),
    sources: list('Every source, in order of statements', sourceShape),
    nodes: list('Every box, in order of statements', nodeShape),
    circuits: list('Every mains circuit, in order of statements', circuitShape),
    place_power: list('What is drawn at each place', placePowerShape),
    network_power: list('Everything that is fed over its network cable', networkPowerShape),
    uplinks: list('Every uplink, in order of statements', uplinkShape),
    recordings: list('Every destination that records', recordingShape),
    sound: list(
      'Picture against sound: without segments, and where a segment makes a difference',
      soundShape,
    ),
    groups: list('The multicast group of every source on the network', groupShape),
    cables: list('The piece of cable for every link that needs one', cablePieceShape),
    spare_cables: list('The pieces of cable that travel as spares', spareCableShape),
    stock_left: list('What of the stock is left over', stockLeftShape),
    cost: costShape,
    cases: list('Every case, in order of statements', caseShape),
    unpacked: list('What travels and is in no case; empty while the plan has no case', text('A name')),
    failures: list('What every single loss does, the worst first', failureShape),
  },
);

/**
 * @param file Name of the plan's file.
 * @param findings The findings of this analysis.
 */
export function analysisJson(
  analysis: Analysis,
  file: string,
  findings: readonly LocatedFinding[],
): ValueOf<typeof analysisShape> {
  const { settings } = analysis;
  const powering = poweringOf(analysis);
  const addressing = addressingOf(analysis);
  const stock = cableStockOf(analysis);
  const packing = packingOf(analysis, stock);
  const facts = {
    powering,
    addresses: new Map(addressing.nodes.map((one) => [one.node, one])),
    firmware: new Map(firmwareOf(analysis).states.map((one) => [one.node, one])),
  };
  return {
    schema: 1,
    plan: {
      title: settings.title,
      revision: settings.statement?.fact.revision ?? null,
      file,
    },
    findings: findings.map(findingJson),
    links: analysis.links.map((link) => linkJson(analysis, link)),
    feeds: analysis.deliveries.map(feedJson),
    sources: [...analysis.sourceFigures.values()].map(sourceJson),
    nodes: [...analysis.nodes.values()].map((node) => nodeJson(node, facts)),
    circuits: powering.circuits.map(circuitJson),
    place_power: powering.places.map(placePowerJson),
    network_power: powering.network.powers.map(networkPowerJson),
    uplinks: uplinkLoadsOf(analysis).map(uplinkJson),
    recordings: recordingsOf(analysis).map(recordingJson),
    sound: soundMatchesOf(analysis).map(soundJson),
    groups: addressing.groups.map(groupJson),
    cables: stock.pieces.map(cablePieceJson),
    spare_cables: stock.spares.map(spareCableJson),
    stock_left: stock.left.map(stockLeftJson),
    cost: costJson(costOf(analysis, stock)),
    cases: packing.cases.map(caseJson),
    unpacked: packing.unpacked.map(({ name }) => name),
    failures: failuresOf(analysis).map(failureJson),
  };
}
