/** How the figures were got of what the house gives: power, internet, storage, sound in the room, addresses. */
import type { Analysis, Circuit, Destination, Owner, Source, Uplink } from '../../analysis/model.ts';
import { soundMatchesOf } from '../../analysis/sound-matches.ts';
import { uplinkLoadsOf } from '../../analysis/uplink-loads.ts';
import { addressingFor, poweringFor } from '../../checks/asked.ts';
import { explainHardwareAddress, parseAddress } from '../../physics/addresses.ts';
import { formatPower } from '../../physics/display.ts';
import { explainContinuousLimit } from '../../physics/mains.ts';
import { explainPoweredDevice, powerClassOf } from '../../physics/power-over-ethernet.ts';
import { explainLipSync, explainSoundFlight } from '../../physics/sound.ts';
import { explainRecording, explainStreams, explainUsableUpload } from '../../physics/uplink.ts';
import { makeWorking, type Working } from '../../physics/working.ts';

/** What a circuit may carry for hours, and what it carries. */
export function circuitWorkings(analysis: Analysis, circuit: Circuit): Working[] {
  const load = poweringFor(analysis).circuits.find((one) => one.circuit === circuit);
  const { current_a, voltage_v } = circuit.statement.fact;
  return [
    ...(load && load.parts.length > 0
      ? [
          makeWorking({
            figure: `load of ${circuit.name}`,
            rule: 'what each thing draws and its ports supply, shared equally among its circuits; and the circuits that this one feeds',
            formula: load.parts.map(({ name }) => name).join(' + '),
            inputs: load.parts.map(({ name, load_w }) => [name, formatPower(load_w)]),
            // Names come from a plan: one may be part of another.
            substituted: load.parts.map(({ load_w }) => formatPower(load_w)).join(' + '),
            result: formatPower(load.load_w),
            source: 'the plan: what the kits draw, at power factor 1',
            label: 'derived',
          }),
        ]
      : []),
    ...(current_a === undefined || voltage_v === undefined
      ? []
      : [explainContinuousLimit(current_a, voltage_v).working]),
  ];
}

/** What streams need of an uplink, and what of it may be used. */
export function uplinkWorkings(analysis: Analysis, uplink: Uplink): Working[] {
  const load = uplinkLoadsOf(analysis).find((one) => one.uplink === uplink);
  const upload = load?.measured_bits_per_second ?? load?.stated_bits_per_second;
  return [
    ...(load && load.streams_bits_per_second.length > 0
      ? [explainStreams(load.streams_bits_per_second).working]
      : []),
    ...(upload === undefined ? [] : [explainUsableUpload(upload).working]),
  ];
}

/** The storage of a recorder, and sound against picture in each segment in which that differs. */
export function destinationWorkings(analysis: Analysis, destination: Destination): Working[] {
  const { records_bits_per_second, sound } = destination.statement.fact;
  const { lasts_s } = analysis.settings;
  const flight = sound?.distance_m === undefined ? [] : [explainSoundFlight(sound.distance_m).working];
  return [
    ...(records_bits_per_second === undefined || lasts_s === undefined
      ? []
      : [explainRecording(records_bits_per_second, lasts_s).working]),
    ...soundMatchesOf(analysis)
      .filter((match) => match.destination === destination)
      .map(({ picture_s, sound_s, rule, segment }) => {
        const { working } = explainLipSync(picture_s, sound_s, rule);
        const figure = segment ? `${working.figure} in ${segment.name}` : working.figure;
        return { ...working, figure, steps: flight };
      }),
  ];
}

/** What feeds a thing over its network cable. */
export function networkPowerWorkings(analysis: Analysis, owner: Owner): Working[] {
  const power = poweringFor(analysis).network.fedBy.get(owner);
  const length_m = power?.link.chain.length_m;
  if (!power || length_m === undefined || power.supply_w === undefined) return [];
  const { poeClass, device_w, conductor_ohm_per_m } = power;
  return [explainPoweredDevice(powerClassOf(poeClass), length_m, device_w, conductor_ohm_per_m).working];
}

/** What the group of a source is on the wire. */
export function groupWorkings(analysis: Analysis, source: Source): Working[] {
  const group = addressingFor(analysis).groups.find((one) => one.source === source)?.group;
  return group === undefined ? [] : [explainHardwareAddress(parseAddress(group)).working];
}
