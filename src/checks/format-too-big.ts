import type { Check } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import { smallerFormatFixes } from './fixes/formats.ts';
import { misfitPlace, misfits } from './format-troubles.ts';
import { needsText } from './format-words.ts';

export const formatTooBig: Check = {
  name: 'format-too-big',
  severity: 'error',
  summary: 'A picture is too much for the interface that it goes through.',
  explanation: `The socket cannot carry this picture: a 2160p60 picture does not go through 3G-SDI. The device switches to
something smaller by itself, or shows nothing.

**How it is judged.** SDI: samples per line × lines × 20 bit × rate from the total raster (SMPTE ST 274, ST 2036-1:
second-hand), twice as much for 4:4:4 or 12 bit, against the rate of the interface. HDMI: pixel clock × depth/8 (4:2:0 half)
against the clock of its class; clocks of standard rasters from the table, of others by VESA CVT reduced blanking.

**What mends it.** A smaller format, a faster interface, or a converter before it.`,
  examples: [
    {
      wrong: changedPlan('sends 1080p50', 'sends 2160p50').replace('takes 1080p50', 'takes 2160p50, 1080p50'),
      right: smallPlan(),
    },
  ],

  find(analysis, report) {
    for (const trouble of misfits(analysis, 'too big')) {
      const { source, fault, segments, others } = trouble;
      report({
        ...misfitPlace(trouble),
        subject: source.name,
        segment: segments[0]?.name ?? null,
        message: `${needsText(trouble)}. Send a smaller format, or use a faster interface.`,
        related: others,
        fixes: () => smallerFormatFixes(analysis, source, fault.interface),
      });
    }
  },
};
