import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import { smallerFormatFixes } from './fixes/formats.ts';
import { misfitPlace, misfits } from './format-troubles.ts';
import { needsText } from './format-words.ts';

const wall = (format: string) =>
  smallPlan(
    'interface wall_hdmi "Wall processor, HDMI" {',
    '  signal hdmi',
    '  lanes 3 of 6 Gb/s',
    '  reach hdmi_copper 5 m',
    '}',
    'kit splitter {',
    '  inputs in1 as wall_hdmi',
    '  outputs out1 as wall_hdmi follow in1',
    '}',
    'node wall_split : splitter at desk',
    `source server at desk sends ${format} as wall_hdmi into wall_split.in1 over hdmi_copper 2 m`,
    `destination wall at desk takes ${format}, 1080p50 as wall_hdmi from wall_split.out1 over hdmi_copper 2 m`,
    'feed server -> wall',
  );

export const formatDoubtful: Check = {
  name: 'format-doubtful',
  severity: 'warning',
  summary: 'Whether a picture goes through an interface depends on the devices.',
  explanation: `Some pictures fit a fixed-rate display link only when both devices shorten the gaps between rows in the same
way. Two devices that agree show a picture; with others the link falls back to something smaller.

**How it is judged.** Lanes × rate × 16/18 usable (tables of an open tool, second-hand) against the picture with its usual
blanking, and with the least that the link allows: between the two it is doubtful.

**What mends it.** Testing these two devices with this format, and accepting the finding with what was seen; or a smaller
format.`,
  examples: [{ wrong: wall('2160p50 RGB 10 bit'), right: wall('2160p50') }],

  find(analysis, report) {
    for (const trouble of misfits(analysis, 'doubtful')) {
      const { source, fault, segments, others } = trouble;
      report({
        ...misfitPlace(trouble),
        subject: source.name,
        segment: segments[0]?.name ?? null,
        message: `${needsText(trouble)} for certain: whether it works depends on the two devices. Test them with this format, or send a smaller one.`,
        related: others,
        fixes: () => smallerFormatFixes(analysis, source, fault.interface),
      });
    }
  },
};
