import type { CircuitLoad } from '../analysis/model.ts';
import { formatCurrent, formatPower, formatShare, formatVoltage } from '../physics/display.ts';
import { poweringFor } from './asked.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { listed, shown } from './words.ts';

const heater = (amperes: number) =>
  smallPlan(
    `circuit left_wall at stage ${amperes} A 230 V`,
    'kit wall_processor {',
    '  draws 2100 W',
    '  inputs in1 as sdi_3g',
    '}',
    'node processor : wall_processor at stage powered by left_wall',
    'link box_s.out1 -> processor.in1 over rg6 2 m',
    'source back at desk sends 1080p50 as sdi_3g into box_d.in1 over rg6 5 m',
    'feed back -> processor.in1',
  );

export const circuitOver: Check = {
  name: 'circuit-over',
  severity: 'error',
  when: 'idle',
  summary: 'A mains circuit is loaded beyond what it may carry for hours.',
  explanation: `The breaker holds for an hour and opens in the middle of the show; or it does not open and the socket gets
hot. Everything on the circuit goes dark at once.

**How it is judged.** The watts of everything that the circuit feeds, also through the circuits that it feeds and what
switches supply over the network, against 80 % of amperes × volts (NEC 210.19(A) and 210.20(A), second-hand; there is no
such IEC rule). Power factor 1; several circuits of one thing share its load equally. These are planning figures: the
local code and a qualified person decide.

**What mends it.** Putting something on another circuit, or a larger supply connected by a qualified person.`,
  examples: [{ wrong: heater(10), right: heater(16) }],

  find(analysis, report) {
    for (const load of poweringFor(analysis).circuits) {
      const { circuit, share, load_w, limit_w } = load;
      if (share === undefined || limit_w === undefined || share <= 1) continue;
      report({
        statement: circuit.statement,
        part: 'name',
        subject: circuit.name,
        message: `${shown(circuit.name)} carries ${formatPower(load_w, limit_w)} of the ${formatPower(limit_w)} that ${ratingText(load)} may carry for hours (${formatShare(share)})${devicesText(load)}. Put something on another circuit, or ask the electrician in charge for a larger one.`,
      });
    }
  },
};

function ratingText({ circuit }: CircuitLoad): string {
  const { current_a, voltage_v } = circuit.statement.fact;
  if (current_a === undefined || voltage_v === undefined) return 'it';
  return `${formatCurrent(current_a)} at ${formatVoltage(voltage_v)}`;
}

function devicesText({ devices }: CircuitLoad): string {
  return devices.length === 0
    ? ' through the circuits that it feeds'
    : `: ${listed(devices.map(({ name }) => name))}`;
}
