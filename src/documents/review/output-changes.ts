import type { Delivery, Port } from '../../analysis/model.ts';
import { type OutputSetting, outputSettingsIn } from '../../analysis/output-settings.ts';
import type { Comparison } from './comparison.ts';
import type { Box } from './patching.ts';
import type { Named } from './review.ts';

/** An output of a box that somebody has to set. */
export interface OutputChange {
  readonly setting: OutputSetting;
  /** What it showed before; undefined: it was not in use. */
  readonly was: Named | undefined;
}

/** The outputs that show something else in the new plan, or take it from another input; each is told once. */
export class OutputChanges {
  readonly #changes = new Map<Port, OutputChange>();

  /** @param replacing Boxes that are new under an old name: nothing is set on them yet. */
  constructor(comparison: Comparison, replacing: ReadonlySet<Box>) {
    const { was, is, renames } = comparison;
    const [old, fresh] = [was.situations[0], is.situations[0]];
    if (!old || !fresh) return;
    const before = new Map(
      outputSettingsIn(was, old).map((setting) => [renames.socket(setting.output.text), setting]),
    );
    for (const setting of outputSettingsIn(is, fresh)) {
      const known = replacing.has(setting.node) ? undefined : before.get(setting.output.text);
      const shown = known && comparison.oldSource(known.shows);
      const input = known?.input && renames.socket(known.input.text);
      if (shown?.name === setting.shows.name && input === setting.input?.text) continue;
      this.#changes.set(setting.output, { setting, was: shown });
    }
  }

  /** Whether an output on the way of a delivery is still to be set. */
  isWaiting({ routes }: Delivery): boolean {
    return (
      this.#changes.size > 0 && routes.some(({ ports }) => ports.some((port) => this.#changes.has(port)))
    );
  }

  /** Those of a box that was just set up. */
  takeOf(box: Box): OutputChange[] {
    if (box.kind !== 'node') return [];
    return box.usedPorts.flatMap((port) => (port ? this.#take(port) : []));
  }

  /** Those on the ways of these deliveries that were not taken yet. */
  take(deliveries: readonly Delivery[]): OutputChange[] {
    const taken: OutputChange[] = [];
    for (const { routes } of deliveries) {
      for (const port of routes.flatMap((route) => route.ports)) {
        taken.push(...this.#take(port));
      }
    }
    return taken;
  }

  #take(port: Port): OutputChange[] {
    const change = this.#changes.get(port);
    this.#changes.delete(port);
    return change ? [change] : [];
  }
}
