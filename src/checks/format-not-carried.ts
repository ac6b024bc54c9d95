import { formatFormat } from '../physics/raster.ts';
import type { Check } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import { misfitPlace, misfits } from './format-troubles.ts';
import { inSegments, interfaceText, linkText, shown } from './words.ts';

export const formatNotCarried: Check = {
  name: 'format-not-carried',
  severity: 'error',
  summary: 'A picture or sound is of a kind that the interface does not carry at all.',
  explanation: `Not every interface carries every format: SDI knows the rasters of television and not those of computers, a
sound interface carries no picture. The receiver shows nothing, or says that the signal is out of range.

**How it is judged.** SDI carries rasters that its standards define; sound alone rides on sound interfaces and on the
network; pictures below 720 rows ride on SD-SDI.

**What mends it.** A scaler before it (\`gives FORMAT\` on its output), another format at the source, or another
interface.`,
  examples: [
    {
      wrong: changedPlan('sends 1080p50', 'sends 1920x1200p50').replace(
        'takes 1080p50',
        'takes 1920x1200p50',
      ),
      right: smallPlan(),
    },
  ],

  find(analysis, report) {
    for (const trouble of misfits(analysis, 'not carried')) {
      const { source, fault, segments, others } = trouble;
      report({
        ...misfitPlace(trouble),
        subject: source.name,
        segment: segments[0]?.name ?? null,
        message: `${shown(source.name)} goes as ${formatFormat(fault.format)} over ${linkText(fault.step.link)}${inSegments(segments)}, but ${interfaceText(fault.interface)} carries no such format. Put a scaler before it, send another format, or use another interface.`,
        related: others,
      });
    }
  },
};
