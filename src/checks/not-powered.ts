import type { Owner } from '../analysis/model.ts';
import { formatPower } from '../physics/display.ts';
import { poweringFor } from './asked.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import type { Fix } from './finding.ts';
import { counted, listed, shown } from './words.ts';

const drawing = (node: string) =>
  smallPlan('circuit left_wall at stage 16 A 230 V')
    .replace('delay 1 frame', 'delay 1 frame\n  draws 20 W')
    .replace('box_s : edge_box at stage', 'box_s : edge_box at stage powered by left_wall')
    .replace('box_d : edge_box at desk', node);

export const notPowered: Check = {
  name: 'not-powered',
  severity: 'warning',
  when: 'idle',
  summary: 'Something draws power and is fed by nothing.',
  explanation: `It will be plugged in somewhere on the day, and nobody knows what else is on that socket.

**How it is judged.** A thing whose kit draws power is \`powered by\` a circuit, or hangs on a port that supplies power
over the network (its kit has a \`poe class\`). In a plan without any circuit it is told once for all.

**What mends it.** \`powered by CIRCUIT\` behind its place.`,
  examples: [
    {
      wrong: drawing('box_d : edge_box at desk'),
      right: drawing('box_d : edge_box at desk powered by left_wall'),
    },
  ],

  find(analysis, report) {
    const { unpowered } = poweringFor(analysis);
    const plan = analysis.settings.statement;
    if (unpowered.length > 0 && analysis.circuits.size === 0 && plan) {
      report({
        statement: plan,
        part: 'title',
        message: `The plan has no circuit: ${counted(unpowered.length, 'thing that draws power is', 'things that draw power are')} fed by nothing (${listed(unpowered.map(({ name }) => name))}). Write the \`circuit\` statements and \`powered by\`.`,
      });
      return;
    }
    for (const owner of unpowered) {
      const draws_w = owner.kit?.statement.fact.draws_w;
      if (hasUnknownCircuit(owner)) continue;
      report({
        statement: owner.statement,
        part: 'name',
        subject: owner.name,
        message: `${shown(owner.name)} draws ${draws_w === undefined ? 'power' : formatPower(draws_w)} and is fed by nothing. Write \`powered by\` and a circuit.`,
        fixes: () => circuitFix(owner, [...analysis.circuits.values()]),
      });
    }
  },
};

/** A circuit is written, but there is none of that name: that is told. */
function hasUnknownCircuit({ statement, poweredBy }: Owner): boolean {
  const { fact } = statement;
  return 'poweredBy' in fact && fact.poweredBy.length > poweredBy.length;
}

/** The one circuit at the same place. */
function circuitFix(
  { statement, place }: Owner,
  circuits: readonly { readonly name: string; readonly place: Owner['place'] }[],
): readonly Fix[] {
  const [only, ...more] = circuits.filter((circuit) => place !== undefined && circuit.place === place);
  if (!only || more.length > 0) return [];
  const text = `powered by ${only.name}`;
  return [{ title: `Plug it into ${shown(only.name)}`, edits: [{ kind: 'append', statement, text }] }];
}
