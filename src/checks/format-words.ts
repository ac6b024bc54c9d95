import { formatFrequency, formatRate } from '../physics/display.ts';
import { formatFormat } from '../physics/raster.ts';
import type { FormatTrouble, Misfit } from './format-troubles.ts';
import { inSegments, interfaceText, linkText, shown } from './words.ts';

/** `wall goes as 2160p50 … over trunk, which needs 11.88 Gb/s of the 2.97 Gb/s that 3G-SDI has`. */
export function needsText({ source, fault, segments }: FormatTrouble<Misfit>): string {
  const { step, format, interface: face, needs, limit, unit } = fault;
  const figure = unit === 'hz' ? formatFrequency : formatRate;
  const what = `${shown(source.name)} goes as ${formatFormat(format)} over ${linkText(step.link)}${inSegments(segments)}`;
  if (needs === undefined || limit === undefined)
    return `${what}, which is more than ${interfaceText(face)} carries`;
  return `${what}: it needs ${figure(needs, limit)}, and ${interfaceText(face)} carries ${figure(limit, needs)}`;
}
