import type { Destination, SoundMatch } from '../analysis/model.ts';
import { soundMatchesOf } from '../analysis/sound-matches.ts';
import { formatTime } from '../physics/display.ts';
import type { Check } from './check.ts';
import { changedPlan } from './example-plans.ts';
import { inSegments, shown } from './words.ts';

const heard = (sound: string) =>
  changedPlan('over rg6 5 m\nfeed', `over rg6 5 m delay 4 frames ${sound}\nfeed`);

/** The rules by name, with the label that the arithmetic gives them. */
const rules: Record<SoundMatch['rule'], string> = {
  bt1359: 'ITU-R BT.1359-1',
  r37: 'EBU R37',
  is191: 'ATSC IS-191',
};

export const lipSync: Check = {
  name: 'lip-sync',
  severity: 'error',
  when: 'idle',
  summary: 'Sound and picture are too far apart where the audience is.',
  explanation: `People see the lips move and hear the word before or after it. A little late is natural, sound travels; early
is noticed at once.

**How it is judged.** When the picture is seen (all delays, the screen's own included) against when the sound is heard
(\`sound after\` and the flight of sound from the loudspeaker; ISO 9613-1, second-hand), by the plan's rule. ITU-R
BT.1359-1 (published): a warning outside 45 ms early to 125 ms late, an error outside 90 ms early to 185 ms late. EBU
R37: 40 early, 60 late; ATSC IS-191: 15 early, 45 late (second-hand); outside of these is an error. The rules measure
different things and are never mixed.

**What mends it.** The delay that the message names, set at the sound desk; or fewer boxes for the picture where the
sound is late.`,
  examples: [{ wrong: heard('sound from 3 m'), right: heard('sound after 110 ms from 3 m') }],

  find(analysis, report) {
    for (const { match, segments } of byDestination(soundMatchesOf(analysis))) {
      const { destination, offset_s, ok, rule, picture_s, sound_s, delayToSet_s } = match;
      const late = offset_s > 0;
      const mend = late
        ? 'Take time out of its way, or show the picture later.'
        : `Set ${formatTime(delayToSet_s)} more delay on the sound.`;
      report({
        statement: destination.statement,
        part: 'sounds/0',
        severity: ok ? 'warning' : 'error',
        subject: destination.name,
        segment: segments[0] ?? null,
        message: `At ${shown(destination.name)}${inSegments([match.segment])} the sound is ${formatTime(Math.abs(offset_s))} ${late ? 'late' : 'early'} (heard after ${formatTime(sound_s)}, seen after ${formatTime(picture_s)}), ${ok ? 'which is noticed' : 'outside of what is tolerated'} by ${rules[rule]}. ${mend}`,
      });
    }
  },
};

/** Each destination once, where it is worst; the plan without segments before the segments where they are alike. */
function byDestination(matches: readonly SoundMatch[]): { match: SoundMatch; segments: string[] }[] {
  const worst = new Map<Destination, SoundMatch>();
  for (const match of matches) {
    if (match.ok && !match.warning) continue;
    const known = worst.get(match.destination);
    if (!known || Math.abs(match.offset_s) > Math.abs(known.offset_s)) worst.set(match.destination, match);
  }
  return [...worst.values()].map((match) => ({ match, segments: match.segment ? [match.segment.name] : [] }));
}
