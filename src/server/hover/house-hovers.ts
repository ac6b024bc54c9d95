/** The house and the running order: places, runs, segments. */
import type { Analysis, Place, Run, Segment } from '../../analysis/model.ts';
import { formatLength, formatShare, formatTemperature } from '../../physics/display.ts';
import { lossLines } from './loss-lines.ts';
import { bold, code, description, lines, paragraphs, plain } from './markdown.ts';
import { deliveryText } from './picture-hovers.ts';

/** A place: what stands there and how far it is to the others. */
export function placeHover(analysis: Analysis, place: Place): string {
  const here = [...analysis.nodes.values(), ...analysis.sources.values(), ...analysis.destinations.values()]
    .filter((thing) => thing.place === place)
    .map(({ name }) => name);
  const runs = analysis.runs.filter(({ from, to }) => from === place || to === place);
  return paragraphs(
    lines(`${bold(place.name)} · place`, place.statement.label && plain(place.statement.label)),
    lines(
      here.length > 0 ? `Here: ${plain(here.join(', '))}` : 'Nothing stands here.',
      ...runs.map(
        (run) =>
          `Run to ${plain((run.from === place ? run.to : run.from)?.name ?? '?')}: ${runLength(analysis, run)}`,
      ),
    ),
    description(place.statement.description),
  );
}

/** A run: its length, and the cables that lie in it. */
export function runHover(analysis: Analysis, run: Run): string {
  const laid = analysis.links.filter(({ length }) => length.runs.includes(run)).map(({ name }) => name);
  const { route } = run.statement.fact;
  return paragraphs(
    lines(`${code(run.name)} · run`, route && plain(route)),
    lines(
      `Length: ${bold(runLength(analysis, run))}`,
      run.temperature_c !== undefined &&
        `Warm: ${formatTemperature(run.temperature_c)}, which shortens the reach of what lies here`,
      laid.length > 0
        ? `${laid.length} ${laid.length === 1 ? 'cable lies' : 'cables lie'} here: ${plain(laid.join(', '))}`
        : 'No cable lies here.',
      ...lossLines(analysis, run),
    ),
    description(run.statement.description),
  );
}

function runLength({ settings: { units } }: Analysis, { length_m, planned_m, measured }: Run): string {
  if (length_m === undefined) return 'not known';
  const planned =
    measured && planned_m !== undefined
      ? ` measured, planned ${formatLength(planned_m, units, length_m)}`
      : '';
  return `${formatLength(length_m, units)}${planned}`;
}

/** A segment: what differs in it from the plan without segments. */
export function segmentHover(analysis: Analysis, segment: Segment): string {
  const situation = analysis.situations.find((one) => one.segment === segment);
  const fullest = analysis.traffic
    .filter(({ link, worst }) => link.network && worst.segment === segment && worst.share !== undefined)
    .sort((a, b) => b.worst.share! - a.worst.share!)[0];
  return paragraphs(
    lines(`${bold(segment.name)} · segment`, segment.statement.label && plain(segment.statement.label)),
    segment.without.length > 0 && `Without ${plain(segment.without.map(({ name }) => name).join(', '))}`,
    ...(situation?.own ?? []).map((delivery) => deliveryText(delivery)),
    situation !== undefined &&
      situation.ended.size > 0 &&
      `Ended here: ${[...situation.ended].map(({ feed }) => code(feed.name)).join(', ')}`,
    fullest && `Fullest in this segment: ${plain(fullest.link.name)}, ${formatShare(fullest.worst.share!)}`,
    description(segment.statement.description),
  );
}
