import { arrivingIn } from './holding.ts';
import type { Analysis, Delivery, Link, Situation, Source, Target } from './model.ts';
import { type OutputSetting, outputSettingsIn } from './output-settings.ts';

/** What changes from one part of the running order to the next. */
export interface Changeover {
  readonly from: Situation;
  readonly to: Situation;
  /** Where the picture goes and none comes. */
  readonly goDark: readonly TargetChange[];
  /** Cables that are out of service from here on. */
  readonly unplug: readonly Link[];
  /** Standbys that take their place, and cables that come back into service. */
  readonly plug: readonly Link[];
  readonly settings: readonly SettingChange[];
  /** Where another picture, or one that was not there, is to be seen, or the same one after another way or time. */
  readonly look: readonly TargetChange[];
}

export interface TargetChange {
  readonly target: Target;
  readonly before: Delivery | undefined;
  readonly after: Delivery | undefined;
}

export interface SettingChange {
  readonly setting: OutputSetting;
  /** What the output showed before; undefined: nothing. */
  readonly before: OutputSetting | undefined;
}

/**
 * From what is always on to the first segment, then from each to the next, in order of statements. An output that a
 * segment does not use keeps what it was last set to.
 */
export function changeoversOf(analysis: Analysis): Changeover[] {
  const [first, ...others] = analysis.situations.map((situation) => stateOf(analysis, situation));
  const set = new Map(first?.settings);
  let from = first;
  return others.map((to) => {
    const changeover = between(from!, to, set);
    for (const [output, setting] of to.settings) set.set(output, setting);
    from = to;
    return changeover;
  });
}

interface State {
  readonly situation: Situation;
  readonly shown: ReadonlyMap<Target, Delivery>;
  readonly settings: ReadonlyMap<OutputSetting['output'], OutputSetting>;
}

function stateOf(analysis: Analysis, situation: Situation): State {
  const shown = new Map<Target, Delivery>();
  for (const delivery of arrivingIn(analysis, situation)) {
    const { target } = delivery.feed;
    if (target && !shown.has(target)) shown.set(target, delivery);
  }
  const settings = outputSettingsIn(analysis, situation);
  return { situation, shown, settings: new Map(settings.map((one) => [one.output, one])) };
}

/** @param set What each output was last set to. */
function between(from: State, to: State, set: State['settings']): Changeover {
  const changes = targetChanges(from.shown, to.shown);
  const [before, after] = [from.situation, to.situation];
  const wasPlugged = new Set(before.standbys);
  const isPlugged = new Set(after.standbys);
  return {
    from: before,
    to: after,
    goDark: changes.filter((change) => change.after === undefined),
    unplug: [
      ...[...after.lostLinks].filter((link) => !before.lostLinks.has(link)),
      ...before.standbys.filter((link) => !isPlugged.has(link)),
    ],
    plug: [
      ...[...before.lostLinks].filter((link) => !after.lostLinks.has(link)),
      ...after.standbys.filter((link) => !wasPlugged.has(link)),
    ],
    settings: [...to.settings.values()].flatMap((setting): SettingChange[] => {
      const was = set.get(setting.output);
      return was?.shows === setting.shows && was.input === setting.input ? [] : [{ setting, before: was }];
    }),
    look: changes.filter((change) => change.after !== undefined),
  };
}

function targetChanges(
  before: ReadonlyMap<Target, Delivery>,
  after: ReadonlyMap<Target, Delivery>,
): TargetChange[] {
  const changes: TargetChange[] = [];
  for (const [target, delivery] of before) {
    const now = after.get(target);
    if (!now || differs(delivery, now)) changes.push({ target, before: delivery, after: now });
  }
  for (const [target, delivery] of after)
    if (!before.has(target)) changes.push({ target, before: undefined, after: delivery });
  return changes;
}

function differs(before: Delivery, after: Delivery): boolean {
  if (before === after) return false;
  if (sourceOf(before) !== sourceOf(after) || before.delay.delay_s !== after.delay.delay_s) return true;
  return linksOf(before).join() !== linksOf(after).join();
}

function sourceOf({ feed }: Delivery): Source | undefined {
  return feed.source;
}

function linksOf({ routes }: Delivery): number[] {
  return routes.flatMap((route) => route.steps.map((step) => step.link.index));
}
