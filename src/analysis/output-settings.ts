import { arrivingIn } from './holding.ts';
import type { Analysis, Node, Port, Route, Situation, Source } from './model.ts';

/** What a box has to be set to: this output shows this picture. */
export interface OutputSetting {
  readonly node: Node;
  readonly output: Port;
  readonly shows: Source;
  /** The input of the same box that it comes in by; undefined when it comes off the network. */
  readonly input: Port | undefined;
}

/**
 * The outputs that somebody has to set in a situation: those of boxes that take pictures off the network, and those of
 * boxes that route inputs to outputs. A loop-through, a splitter and a patch field need no setting. In order of nodes,
 * then of their ports.
 */
export function outputSettingsIn(analysis: Analysis, situation: Situation): OutputSetting[] {
  const settings = new Map<Port, OutputSetting>();
  for (const { feed, routes } of arrivingIn(analysis, situation)) {
    if (!feed.source) continue;
    for (const route of routes) collect(route, feed.source, settings);
  }
  return [...settings.values()].sort(
    (a, b) => a.node.index - b.node.index || (a.output.kitPort?.index ?? 0) - (b.output.kitPort?.index ?? 0),
  );
}

/** Where a route comes into a box and leaves it again by an output. */
function collect({ ports }: Route, shows: Source, settings: Map<Port, OutputSetting>): void {
  for (let i = 1; i < ports.length; i++) {
    const [entered, left] = [ports[i - 1]!, ports[i]!];
    const { owner } = left;
    if (owner.kind !== 'node' || entered.owner !== owner || left.role !== 'output') continue;
    if (left.kitPort?.follows || settings.has(left)) continue;
    settings.set(left, {
      node: owner,
      output: left,
      shows,
      input: entered.role === 'network' ? undefined : entered,
    });
  }
}
