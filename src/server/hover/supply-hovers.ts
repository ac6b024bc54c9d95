/** What the house and the cases give: circuits, uplinks, stock, cases; and what boxes and screens take of it. */
import { poweredBy } from '../../analysis/circuit-loads.ts';
import type {
  Analysis,
  Case,
  Circuit,
  CircuitLoad,
  Destination,
  FirmwareState,
  Node,
  Owner,
  StockPiece,
  Uplink,
} from '../../analysis/model.ts';
import { recordingsOf } from '../../analysis/recordings.ts';
import { soundMatchesOf } from '../../analysis/sound-matches.ts';
import { uplinkLoadsOf } from '../../analysis/uplink-loads.ts';
import { addressingFor, cableStockFor, firmwareFor, packingFor, poweringFor } from '../../checks/asked.ts';
import { circuitWorkings, uplinkWorkings } from '../../documents/workings/supply-workings.ts';
import {
  formatBytes,
  formatCurrent,
  formatLength,
  formatPower,
  formatRate,
  formatShare,
  formatTime,
  formatVoltage,
  formatWeight,
} from '../../physics/display.ts';
import { bold, code, description, lines, paragraphs, plain, workings } from './markdown.ts';

/** A mains circuit: what it carries of what it may, and for whom. */
export function circuitHover(analysis: Analysis, circuit: Circuit): string {
  const load = poweringFor(analysis).circuits.find((one) => one.circuit === circuit);
  const { fact, label, description: said } = circuit.statement;
  const fed = [...analysis.circuits.values()].filter(({ from }) => from === circuit);
  return paragraphs(
    lines(`${bold(circuit.name)} · circuit${at(circuit.place)}`, label && plain(label)),
    lines(
      fact.current_a !== undefined &&
        fact.voltage_v !== undefined &&
        `${formatCurrent(fact.current_a)} at ${formatVoltage(fact.voltage_v)}`,
      circuit.from && `Fed by ${plain(circuit.from.name)}`,
      load && `Carries ${bold(formatPower(load.load_w, load.limit_w))}${limitText(load)}`,
      load && load.devices.length > 0 && `Feeds ${plain(load.devices.map(({ name }) => name).join(', '))}`,
      fed.length > 0 && `Feeds the circuits ${plain(fed.map(({ name }) => name).join(', '))}`,
    ),
    description(said),
    workings(circuitWorkings(analysis, circuit), 1),
  );
}

function limitText({ limit_w, share, load_w }: CircuitLoad): string {
  if (limit_w === undefined || share === undefined) return '';
  const verdict = share > 1 ? ', **too much**' : '';
  return ` of ${formatPower(limit_w, load_w)}, 80 % of the breaker (${formatShare(share)})${verdict}`;
}

/** The venue's internet: what streams over it, of what may be planned with, and what still fits. */
export function uplinkHover(analysis: Analysis, uplink: Uplink): string {
  const load = uplinkLoadsOf(analysis).find((one) => one.uplink === uplink);
  const { label, description: said } = uplink.statement;
  const { stated_bits_per_second, measured_bits_per_second, usable_bits_per_second } = load ?? {};
  return paragraphs(
    lines(`${bold(uplink.name)} · uplink${at(uplink.place)}`, label && plain(label)),
    lines(
      stated_bits_per_second !== undefined && `Stated ${formatRate(stated_bits_per_second)}`,
      measured_bits_per_second !== undefined && `Measured ${formatRate(measured_bits_per_second)}`,
      usable_bits_per_second !== undefined && `Usable, half of it: ${formatRate(usable_bits_per_second)}`,
      load &&
        `Needed with recovery and headers: ${bold(formatRate(load.needed_bits_per_second, usable_bits_per_second))}` +
          `${load.share === undefined ? '' : ` (${formatShare(load.share)})${load.share > 1 ? ', **too much**' : ''}`}`,
      load?.fits_bits_per_second !== undefined &&
        `Another stream of ${formatRate(load.fits_bits_per_second)} still fits`,
      load &&
        load.destinations.length > 0 &&
        `Streams ${plain(load.destinations.map(({ name }) => name).join(', '))}`,
    ),
    description(said),
    workings(uplinkWorkings(analysis, uplink), 1),
  );
}

/** A case: what it weighs of what it may, and what of it has no known weight. */
export function caseHover(analysis: Analysis, one: Case): string {
  const weight = packingFor(analysis).cases.find((packed) => packed.case === one);
  const { fact, label, description: said } = one.statement;
  return paragraphs(
    lines(`${bold(one.name)} · case`, label && plain(label)),
    lines(
      `Holds ${plain([...fact.things, ...fact.loose].join(', ') || 'nothing')}`,
      weight &&
        `Weighs ${bold(formatWeight(weight.weight_kg, weight.limit_kg))}` +
          `${weight.limit_kg === undefined ? '' : ` of ${formatWeight(weight.limit_kg, weight.weight_kg)}`}`,
      weight && weight.unknown.length > 0 && `Weight not known of ${plain(weight.unknown.join(', '))}`,
    ),
    description(said),
  );
}

/** Pieces of cable at hand: which links take them, and how many are left over. */
export function stockHover(analysis: Analysis, { statement, cable }: StockPiece): string {
  const { fact } = statement;
  const { pieces, left } = cableStockFor(analysis);
  const taken = pieces.filter(({ stock }) => stock === statement).map(({ link }) => link.name);
  const over = left.find((one) => one.statement === statement)?.count;
  const { units } = analysis.settings;
  return lines(
    `${bold(cable?.name ?? fact.cable)} · ${fact.count === undefined ? 'any number' : `${fact.count}`} of ${formatLength(fact.length_m, units)}`,
    taken.length > 0 ? `For ${plain(taken.join(', '))}` : 'No link takes one.',
    over !== undefined && `Left over: ${over}`,
  );
}

/** What a thing draws, and what feeds it. */
export function powerLine(analysis: Analysis, owner: Owner): string | undefined {
  const draws_w = owner.kit?.statement.fact.draws_w;
  const { kind, name } = poweredBy(owner, poweringFor(analysis));
  if (draws_w === undefined && kind === 'none') return undefined;
  const from = kind === 'circuit' ? owner.poweredBy.map((circuit) => circuit.name).join(', ') : name;
  const fed = from === undefined ? ', **powered by nothing**' : `, powered by ${plain(from)}`;
  return `${draws_w === undefined ? 'Draws an unknown power' : `Draws ${formatPower(draws_w)}`}${fed}`;
}

/** Address and firmware of a box, where the plan has them. */
export function preparationLines(analysis: Analysis, node: Node): string[] {
  const address = addressingFor(analysis).nodes.find((one) => one.node === node);
  const firmware = firmwareFor(analysis).states.find((one) => one.node === node);
  return [
    ...(address?.address ? [`Address ${code(address.address)}${address.stated ? '' : ', assigned'}`] : []),
    ...(firmware ? [firmwareText(firmware)] : []),
  ];
}

function firmwareText({ wanted, found }: FirmwareState): string {
  if (wanted === undefined) return `Firmware ${plain(found!)}`;
  if (found === undefined) return `Firmware wanted: ${plain(wanted)}`;
  return wanted === found
    ? `Firmware ${plain(found)}, as wanted`
    : `Firmware ${plain(found)}, **wanted ${plain(wanted)}**`;
}

/** When sound and picture meet at a destination, and the storage of a recorder. */
export function soundAndRecordingLines(analysis: Analysis, destination: Destination): string[] {
  const sound = soundMatchesOf(analysis)
    .filter((match) => match.destination === destination)
    .map(({ segment, offset_s, delayToSet_s, ok, warning }) => {
      const when = segment ? ` in ${bold(segment.name)}` : '';
      const judged = ok ? (warning ? ', noticed' : '') : ', **too much**';
      const set = delayToSet_s > 0 ? `; delay the sound by ${formatTime(delayToSet_s)}` : '';
      if (offset_s === 0) return `Sound${when}: in time`;
      return `Sound${when}: ${formatTime(Math.abs(offset_s))} ${offset_s > 0 ? 'late' : 'early'}${judged}${set}`;
    });
  const bytes = recordingsOf(analysis).find((one) => one.destination === destination)?.bytes;
  return [...sound, ...(bytes === undefined ? [] : [`Records ${formatBytes(bytes)}`])];
}

function at(place: { readonly name: string } | undefined): string {
  return place ? ` at ${plain(place.name)}` : '';
}
