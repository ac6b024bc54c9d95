import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { unprotected } from './format-troubles.ts';
import { inSegments, linkText, shown } from './words.ts';

const player = `kit player {
  outputs out1 as hdmi_1_4
}
kit converter {
  inputs in1 as hdmi_1_4
  outputs out1 as sdi_3g follow in1
  outputs hdmi_out as hdmi_1_4 follow in1
}
node disc : player at stage
node to_sdi : converter at stage
link disc.out1 -> to_sdi.in1 over hdmi_copper 2 m`;

export const encryptedLeaves: Check = {
  name: 'encrypted-leaves',
  severity: 'error',
  summary: 'A copy-protected picture is to leave HDMI.',
  explanation: `A protected disc or stream is handed on only between devices that keep the protection, and those are HDMI
devices. Behind a converter to SDI or a box for the network the screen is black or full of snow.

**How it is judged.** A source marked \`encrypted\` may pass display interfaces (HDMI and its like) only; the first cable of
another kind on its way is told.

**What mends it.** A way that stays in HDMI from the player to the screen, or a version of the picture without
protection, asked for from whoever owns it.`,
  examples: [
    {
      wrong: smallPlan(
        player,
        'source trailer from disc.out1 sends 1080p50 encrypted',
        'destination side at stage takes 1080p50 as sdi_3g from to_sdi.out1 over rg6 5 m',
        'feed trailer -> side',
      ),
      right: smallPlan(
        player,
        'source trailer from disc.out1 sends 1080p50 encrypted',
        'destination side at stage takes 1080p50 as hdmi_1_4 from to_sdi.hdmi_out over hdmi_copper 5 m',
        'feed trailer -> side',
      ),
    },
  ],

  find(analysis, report) {
    for (const { source, fault, segments, others } of unprotected(analysis)) {
      report({
        statement: source.statement,
        part: 'encrypted/0',
        subject: source.name,
        segment: segments[0]?.name ?? null,
        message: `${shown(source.name)} is copy-protected and leaves HDMI at ${linkText(fault.step.link)}${inSegments(segments)}: nothing will be seen behind it. Keep its way in HDMI, or ask for a version without protection.`,
        related: [
          { place: { statement: fault.step.link.statement }, message: 'Here it leaves HDMI.' },
          ...others,
        ],
      });
    }
  },
};
