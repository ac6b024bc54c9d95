import { formatPower } from '../physics/display.ts';
import { poweringFor } from './asked.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { shown } from './words.ts';

const powered = (rating: string) =>
  smallPlan(`circuit left_wall at stage${rating}`)
    .replace('box_s : edge_box at stage', 'box_s : edge_box at stage powered by left_wall')
    .replace('delay 1 frame', 'delay 1 frame\n  draws 20 W')
    .replace('box_d : edge_box at desk', 'box_d : edge_box at desk powered by left_wall');

export const circuitUnrated: Check = {
  name: 'circuit-unrated',
  severity: 'warning',
  when: 'idle',
  summary: 'A circuit that feeds something does not say how much it can carry.',
  explanation: `Without amperes and volts the load of the circuit is added up but not judged.

**How it is judged.** A circuit on which something draws power has both values.

**What mends it.** What is printed on the breaker and measured at the socket, such as \`16 A 230 V\`.`,
  examples: [{ wrong: powered(''), right: powered(' 16 A 230 V') }],

  find(analysis, report) {
    for (const { circuit, load_w, limit_w } of poweringFor(analysis).circuits) {
      const { statement, name } = circuit;
      if (limit_w !== undefined || load_w === 0) continue;
      if (statement.faults.some(({ part }) => part.startsWith('ratings'))) continue;
      report({
        statement,
        part: 'name',
        subject: name,
        message: `${shown(name)} feeds ${formatPower(load_w)}, and does not say how much it can carry. Write its breaker and voltage, such as \`16 A 230 V\`.`,
      });
    }
  },
};
