import type { KitFact, PortNamesFact } from '../../plan/facts.ts';

/** More ports than a box has; a longer range is a slip. */
const MOST_PORTS = 1000;

/**
 * The ports of a kit that have another name now: where it has the same groups of ports as before, each as many, the
 * first is still the first. With other groups nothing is said, because a port may be gone.
 */
export function portsRenamed(before: KitFact, after: KitFact): ReadonlyMap<string, string> {
  const [was, is] = [groupsOf(before), groupsOf(after)];
  const renamed = new Map<string, string>();
  if (was.length !== is.length) return renamed;
  for (const [i, { role, names }] of was.entries()) {
    const group = is[i]!;
    if (group.role !== role || group.names.length !== names.length) return new Map();
    for (const [j, name] of names.entries()) if (name !== group.names[j]) renamed.set(name, group.names[j]!);
  }
  const same = new Set(is.flatMap(({ names }) => names));
  // A name that is still there is its own port: the ports were written in another order.
  return [...renamed.keys()].some((name) => same.has(name)) ? new Map() : renamed;
}

function groupsOf({ groups, joins }: KitFact): { role: string; names: string[] }[] {
  return [
    ...groups.flatMap(({ role, ports }) =>
      ports.map((range) => ({ role: role as string, names: expand(range) })),
    ),
    ...joins.flatMap(({ front, rear }) => [
      { role: 'front', names: expand(front) },
      { role: 'rear', names: expand(rear) },
    ]),
  ];
}

function expand({ name, low, high }: PortNamesFact): string[] {
  if (low === undefined || high === undefined) return [name];
  const count = Math.min(MOST_PORTS, Math.max(0, high - low + 1));
  return Array.from({ length: count }, (_, i) => `${name}${low + i}`);
}
