import type { Kit, Port } from './generated/ast.ts';

/** The declaration of a port among those of its kit: `in3` is declared by `in[1..4]`. */
export function findPort(kit: Kit, name: string): Port | undefined {
  const numbered = /^(.*?)(0|[1-9]\d*)$/.exec(name);
  for (const port of portsOf(kit)) {
    if (port.low === undefined) {
      if (port.name === name) return port;
    } else if (numbered && numbered[1] === port.name) {
      const number = Number(numbered[2]);
      if (number >= Number(port.low) && number <= Number(port.high)) return port;
    }
  }
  return undefined;
}

/** The declaration that `in[1..2]` speaks of: the same family of numbered ports. */
export function findFamily(kit: Kit, name: string): Port | undefined {
  return portsOf(kit).find((port) => port.name === name && port.low !== undefined);
}

/** Every declaration of ports in a kit, as far as it was read. */
export function portsOf(kit: Kit): Port[] {
  const joined = kit.joins.flatMap((join) => [join.front, join.rear]);
  return [...kit.groups.flatMap((group) => group.ports), ...joined].filter(
    (port) => port?.name !== undefined,
  );
}

/** The names that a declaration stands for, at most as many as a box can have sockets. */
export function portNames(port: Port): string[] {
  if (port.low === undefined) return [port.name];
  const low = Number(port.low);
  const count = Math.min(Number(port.high) - low + 1, 1024);
  return Array.from({ length: Math.max(0, count) || 0 }, (_, i) => `${port.name}${low + i}`);
}
