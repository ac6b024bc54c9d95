import type { Analysis, Carried, Interface, Settings, Source, SourceFigures } from '../../analysis/model.ts';
import { explainTmds } from '../../physics/display-interface.ts';
import { explainFlowLoads } from '../../physics/flows.ts';
import { explainActivePayload } from '../../physics/pixel-group.ts';
import { type Format, resample } from '../../physics/raster.ts';
import { explainSdiRate } from '../../physics/sdi.ts';
import type { Working } from '../../physics/working.ts';

/** How the figures of a source were got: on the network, its visible pixels, on its own cable. */
export function sourceWorkings(analysis: Analysis, source: Source): Working[] {
  const figures = analysis.sourceFigures.get(source.name);
  if (!figures?.format) return [];
  const { format, carried } = figures;
  return [
    ...(figures.network_bits_per_second === undefined
      ? []
      : [loadWorking(format, carried, analysis.settings)]),
    ...activeWorking(ridden(format, carried)),
    ...onItsCable(figures, (source.link ?? source.from?.links[0])?.chain.interface, analysis.settings),
  ];
}

/** What one format puts on a network link, as it is carried there. */
export function loadWorking(format: Format, carried: Carried, { tagged }: Settings): Working {
  return explainFlowLoads(ridden(format, carried), carried.carriage, tagged).working;
}

/** A format as the network carries it. */
function ridden(format: Format, { sampling, depth_bits }: Carried): Format {
  return resample(format, sampling, depth_bits);
}

function activeWorking(format: Format): Working[] {
  return format.kind === 'picture' ? [explainActivePayload(format).working] : [];
}

function onItsCable(
  { format, interface_bits_per_second }: SourceFigures,
  face: Interface | undefined,
  { blanking }: Settings,
): Working[] {
  if (interface_bits_per_second === undefined || format?.kind !== 'picture') return [];
  if (face?.signal === 'display') return [explainTmds(format, blanking).working];
  return [explainSdiRate(format)].flatMap((explained) => explained?.working ?? []);
}
