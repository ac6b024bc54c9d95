import { meetingWith } from './chains.ts';
import { FormatTable } from './formats.ts';
import { choicesOf, chooseInterfaceOver } from './link-interface.ts';
import type { Analysis, Cable, Link, Reach } from './model.ts';
import { ReachJudge } from './reaches.ts';

/** A cable that a link could be, and how far it would reach. */
export interface CableChoice {
  readonly cable: Cable;
  readonly reach: Reach;
}

const RANKS: Readonly<Record<Reach['verdict'], number>> = {
  good: 0,
  'near the limit': 1,
  doubtful: 1,
  'not known': 2,
  beyond: 3,
};

/**
 * Every cable of the plan that carries what the link's ends have in common at full speed, judged at the length of
 * the link and the pictures that go over it now: those that reach first, each group in order of statements.
 */
export function cableChoices(analysis: Analysis, link: Link): CableChoice[] {
  const { chain } = link;
  const { settings, cables } = analysis;
  const formats = new FormatTable(settings.tagged, settings.blanking);
  const { picture } = analysis.reaches[chain.index]!;
  const known = picture && formats.known(picture);
  const judge = new ReachJudge();
  const choices: CableChoice[] = [];
  for (const cable of cables.values()) {
    const meeting = meetingWith(chain, link, cable);
    const choice = choicesOf(meeting);
    const face = chooseInterfaceOver(choice, meeting.cables, chain.length_m);
    if (!face || choice.fault || choice.slowedFrom) continue;
    const links = chain.links.map((one) => (one === link ? { ...one, cable } : one));
    choices.push({ cable, reach: judge.judge({ ...chain, links, interface: face }, known) });
  }
  return choices.sort((a, b) => RANKS[a.reach.verdict] - RANKS[b.reach.verdict]);
}
