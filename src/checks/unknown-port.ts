import type { Kit, Node, UnknownPort, Use } from '../analysis/model.ts';
import type { PortNamesFact } from '../plan/facts.ts';
import { nearest } from '../plan/spelling.ts';
import type { Check } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import type { Fix } from './finding.ts';
import { capital, listed, listedWords, nodeText, quoted, shown } from './words.ts';

export const unknownPort: Check = {
  name: 'unknown-port',
  severity: 'error',
  summary: 'A port is used that the node does not have.',
  explanation: `There is no such socket on the box. On the day somebody stands in front of it with the plug in their
hand; in the plan the cable ends in the air and carries nothing.

**How it is judged.** By the ports that the node's kit declares; \`in[1..4]\` declares \`in1\` to \`in4\`.

**What mends it.** A port that the kit has, or the missing port in the kit.`,
  examples: [{ wrong: changedPlan('box_d.out1', 'box_d.out9'), right: smallPlan() }],

  find({ names }, report) {
    for (const { node, kit, missing, uses } of byMistake(names.unknownPorts)) {
      const [first, ...others] = uses;
      if (!first) continue;
      const [only, ...more] = missing;
      const near =
        more.length === 0 && only !== undefined ? nearest(only, kit.portsByName.keys()) : undefined;
      report({
        ...first,
        message: messageOf(node, kit, missing, near),
        related: others.map((place) => ({ place, message: 'Used here too.' })),
        fixes: near === undefined ? [] : [renameFix(near, uses)],
      });
    }
  },
};

/** Ports that one mistake lacks. */
interface Mistake {
  readonly node: Node;
  readonly kit: Kit;
  readonly missing: string[];
  readonly uses: Use[];
}

/**
 * One finding for each port of a node; but where a kit lacks a whole family of ports (`net1`, `net2` …), it is the kit
 * that is wrong, once for all its nodes.
 */
function byMistake(unknownPorts: readonly UnknownPort[]): Mistake[] {
  const mistakes = new Map<string, Mistake>();
  for (const { node, name, uses } of unknownPorts) {
    const { kit } = node;
    if (!kit) continue;
    const family = familyOf(name);
    const hasFamily = kit.ports.some((port) => familyOf(port.name) === family);
    const key = hasFamily ? `${node.name}.${name}` : `${kit.name} ${family}`;
    const known = mistakes.get(key);
    if (!known) mistakes.set(key, { node, kit, missing: [name], uses: [...uses] });
    else {
      known.uses.push(...uses);
      if (!known.missing.includes(name)) known.missing.push(name);
    }
  }
  return [...mistakes.values()];
}

function familyOf(port: string): string {
  return port.replace(/\d+$/, '');
}

function renameFix(near: string, uses: readonly Use[]): Fix {
  return {
    title: `Write ${quoted(near)}`,
    edits: uses.map(({ statement, part }) => ({ kind: 'replace', statement, part, text: near })),
  };
}

function messageOf(node: Node, kit: Kit, missing: readonly string[], near: string | undefined): string {
  const { groups, joins } = kit.statement.fact;
  const ports = [
    ...groups.flatMap((group) => group.ports),
    ...joins.flatMap(({ front, rear }) => [front, rear]),
  ].map(rangeText);
  const has = ports.length === 0 ? 'has no ports' : `has ${listed(ports, 8)}`;
  const guess = near === undefined ? '' : ` Did you mean ${quoted(near)}?`;
  const what = `${missing.length === 1 ? 'port' : 'ports'} ${listedWords(missing.map(quoted))}`;
  const add = `add ${missing.length === 1 ? 'the port' : 'the ports'} to the kit`;
  const mend = ports.length === 0 ? capital(add) : `Use one of these, or ${add}`;
  return `${nodeText(node)} has no ${what}: its kit ${shown(kit.name)} ${has}.${guess} ${mend}.`;
}

function rangeText({ name, low, high }: PortNamesFact): string {
  return low === undefined ? name : `${name}[${low}..${high}]`;
}
