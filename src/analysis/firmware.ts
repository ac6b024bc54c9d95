import { add } from './lists.ts';
import type { Analysis, Firmware, FirmwareState, Kit } from './model.ts';

/** Firmware wanted and found, node by node, and the kits of which the plan has several versions. */
export function firmwareOf(analysis: Analysis): Firmware {
  const states: FirmwareState[] = [];
  const byKit = new Map<Kit, FirmwareState[]>();
  for (const node of analysis.nodes.values()) {
    const wanted = node.kit?.statement.fact.firmware;
    const found = node.statement.fact.firmware;
    if (wanted === undefined && found === undefined) continue;
    const state = { node, wanted, found };
    states.push(state);
    if (node.kit) add(byKit, node.kit, state);
  }
  const mixed = [...byKit].filter(([, nodes]) => new Set(nodes.flatMap(({ found }) => found ?? [])).size > 1);
  return {
    states,
    toUpdate: states.filter(
      ({ wanted, found }) => wanted !== undefined && found !== undefined && wanted !== found,
    ),
    mixed: mixed.map(([kit, nodes]) => ({ kit, nodes })),
  };
}
