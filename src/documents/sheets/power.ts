import { poweringOf } from '../../analysis/circuit-loads.ts';
import type { CircuitLoad, Powering } from '../../analysis/model.ts';
import { formatPower, formatShare, formatVoltage } from '../../physics/display.ts';
import { localCaution, mainsCaution } from './cautions.ts';
import { quantity, type Sheet, type SheetInput, type SheetTable } from './sheet.ts';

/** What is plugged into which circuit, and what the network feeds. */
export function powerSheet(input: SheetInput): Sheet {
  const powering = poweringOf(input.analysis);
  return {
    id: 'power',
    title: 'Power',
    about:
      'Watts are what the kit states, at power factor 1. A continuous load stays at or below 80 % of the breaker; a circuit’s load includes the circuits that it feeds.',
    cautions: [mainsCaution, localCaution],
    empty: 'The plan states no circuits.',
    tables: [
      circuitTable(powering.circuits, input),
      networkTable(powering, input),
      {
        file: 'without-power',
        group: { heading: 'What', title: 'Fed by nothing in the plan: find a socket' },
        columns: [{ title: 'Thing' }, { title: 'Stands at' }],
        rows: powering.unpowered.map((owner) => ({
          of: owner.name,
          cells: [input.titles.of(owner), input.titles.place(owner.place)],
        })),
      },
      {
        file: 'power-by-place',
        group: { heading: 'What', title: 'Drawn at each place, whatever it is plugged into' },
        columns: [{ title: 'Place' }, { title: 'Load', kind: 'quantity' }],
        rows: powering.places.map(({ place, load_w }) => ({
          of: place.name,
          cells: [input.titles.place(place), quantity(load_w, formatPower)],
        })),
      },
    ],
  };
}

function circuitTable(circuits: readonly CircuitLoad[], { titles }: SheetInput): SheetTable {
  return {
    file: 'circuits',
    caption: 'Circuits',
    columns: [
      { title: 'Circuit', percent: 25 },
      { title: 'Breaker', percent: 20 },
      { title: 'Feeds' },
      { title: 'Load', kind: 'quantity' },
      { title: 'At most', kind: 'quantity' },
      { title: 'Used', kind: 'quantity' },
    ],
    rows: circuits.map(({ circuit, load_w, limit_w, share, devices }) => {
      const { current_a, voltage_v } = circuit.statement.fact;
      return {
        of: circuit.name,
        cells: [
          { text: titles.circuit(circuit), small: titles.place(circuit.place) },
          {
            text: current_a === undefined || voltage_v === undefined ? '' : `${current_a} A ${voltage_v} V`,
            small: circuit.from && `from ${titles.circuit(circuit.from)}`,
          },
          devices.map((owner) => titles.of(owner)).join(', '),
          quantity(load_w, (value) => formatPower(value, limit_w)),
          quantity(limit_w, (value) => formatPower(value, load_w)),
          quantity(share, (value) => `${formatShare(value)}${value > 1 ? ' TOO MUCH' : ''}`, ''),
        ],
      };
    }),
  };
}

function networkTable({ network }: Powering, { titles }: SheetInput): SheetTable {
  return {
    file: 'network-power',
    group: { heading: 'What', title: 'Fed over the network cable' },
    columns: [
      { title: 'Thing' },
      { title: 'Fed by' },
      { title: 'Class' },
      { title: 'Supplied', kind: 'quantity' },
      { title: 'Arrives', kind: 'quantity' },
      { title: 'At', kind: 'quantity' },
    ],
    rows: network.powers.map((power) => ({
      of: power.device.name,
      cells: [
        titles.of(power.device),
        titles.port(power.supply),
        String(power.poeClass),
        quantity(power.supply_w, formatPower),
        quantity(power.device_w, formatPower),
        quantity(power.device_v, formatVoltage, ''),
      ],
    })),
  };
}
