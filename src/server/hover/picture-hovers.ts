/** Where pictures begin and where they are watched. */
import type { Analysis, Delivery, Destination, Feed, Source } from '../../analysis/model.ts';
import { delayWorkings } from '../../documents/workings/delay-workings.ts';
import { sourceWorkings } from '../../documents/workings/source-workings.ts';
import { formatFrames, formatRate, formatTime } from '../../physics/display.ts';
import { formatFormat } from '../../physics/raster.ts';
import { delayText } from '../delay-text.ts';
import { redundantLines } from './loss-lines.ts';
import { bold, code, description, lines, paragraphs, plain, workings } from './markdown.ts';
import { powerLine, soundAndRecordingLines } from './supply-hovers.ts';

/** A source: its rate on the network and on its own cable, where it goes, and what it is made of. */
export function sourceHover(analysis: Analysis, source: Source): string {
  const figures = analysis.sourceFigures.get(source.name);
  const { network_bits_per_second, interface_bits_per_second, format } = figures ?? {};
  const face = source.link?.chain.interface;
  return paragraphs(
    lines(`${bold(source.name)} · source${placeOf(source)}`, labelOf(source)),
    lines(
      format && `Sends ${bold(formatFormat(format))}${source.encrypted ? ', copy-protected' : ''}`,
      network_bits_per_second !== undefined &&
        `On the network: ${bold(formatRate(network_bits_per_second))} (${plain(figures!.carried.text)})`,
      interface_bits_per_second !== undefined &&
        `On its cable: ${formatRate(interface_bits_per_second)}${face ? ` as ${plain(face.statement.label ?? face.name)}` : ''}`,
      pluggedIn(source),
      powerLine(analysis, source),
      source.madeOf && `Made of ${plain(source.madeOf.map(({ name }) => name).join(', '))}`,
      goesTo(analysis, source),
    ),
    description(source.statement.description),
    workings(sourceWorkings(analysis, source), 2),
  );
}

/** A destination: what feeds it, by which way, how late, in each segment in which that differs. */
export function destinationHover(analysis: Analysis, destination: Destination): string {
  const deliveries = analysis.deliveries.filter(({ feed }) => feed.target === destination);
  const { takes, port } = destination;
  return paragraphs(
    lines(`${bold(destination.name)} · destination${placeOf(destination)}`, labelOf(destination)),
    lines(
      takes.length > 0 &&
        `Takes ${plain(destination.statement.fact.formats.map(({ text }) => text).join(', '))}`,
      port?.links[0] &&
        `Plugged into ${code(port.links[0].from.port === port ? port.links[0].to.text : port.links[0].from.text)}`,
      powerLine(analysis, destination),
      ...soundAndRecordingLines(analysis, destination),
      deliveries.length === 0 && '**Nothing is fed to it.**',
    ),
    ...deliveries.map((delivery) => deliveryText(delivery)),
    description(destination.statement.description),
    workings(deliveries.flatMap(delayWorkings), 2),
  );
}

/** A feed: one paragraph for each of its pictures and segments. */
export function feedHover(analysis: Analysis, feeds: readonly Feed[]): string {
  const deliveries = analysis.deliveries.filter(({ feed }) => feeds.includes(feed));
  const [first] = feeds;
  return paragraphs(
    `${bold('feed')}${first?.redundant ? ' · redundant' : ''}${first?.seamless ? ' · seamless' : ''}`,
    ...deliveries.map((delivery) => deliveryText(delivery)),
    lines(...redundantLines(analysis, feeds)),
    deliveries.length === 0 && 'No picture goes this way.',
    description(first?.statement.description),
    workings(deliveries.flatMap(delayWorkings), 2),
  );
}

/** `program → judges in results: 91.8 ms, 5.5 frames of 6` and the way below. */
export function deliveryText(delivery: Delivery): string {
  const { feed, segment, routes, noRoute, format } = delivery;
  const when = segment ? ` in ${bold(segment.name)}` : '';
  const head = `${code(feed.sourceName)} → ${code(feed.targetName)}${when}`;
  if (noRoute) return `${head}: **no way** – ${noRoute.kind}`;
  return lines(
    `${head}: ${timing(delivery)}${format ? `, arrives as ${plain(formatFormat(format))}` : ''}`,
    ...routes.map((route, i) => {
      const which = routes.length > 1 ? `way ${i + 1}: ` : 'by ';
      return `${which}${route.ports.map((port) => code(port.text)).join(' → ')}`;
    }),
  );
}

/** `91.8 ms, 5.5 frames, at most 6 frames (100.1 ms)`. */
function timing({ delay, feed }: Delivery): string {
  const { delay_s, from, limit_s, limit, over } = delay;
  const text = delayText(delay, feed);
  if (text === undefined) return 'delay not known';
  const inFrames = limit && 'frames' in limit ? formatFrames(limit.frames) : undefined;
  const inTime = limit_s === undefined ? undefined : formatTime(limit_s, delay_s);
  const most = inFrames && inTime ? `, at most ${inFrames} (${inTime})` : inTime ? `, at most ${inTime}` : '';
  return `${bold(text)}${from === 'measured' ? ', measured' : ''}${most}${over ? ', **too late**' : ''}`;
}

function goesTo({ deliveries }: Analysis, source: Source): string | undefined {
  const names = new Set(
    deliveries
      .filter(({ feed }) => feed.source === source)
      .map(({ feed, segment }) => `${feed.targetName}${segment ? ` (${segment.name})` : ''}`),
  );
  return names.size > 0 ? `Goes to ${plain([...names].join(', '))}` : '**Goes nowhere.**';
}

function pluggedIn({ from, link }: Source): string | undefined {
  if (from) return `Comes out of ${code(from.text)}`;
  return link ? `Plugged into ${code(link.to.text)}` : undefined;
}

function placeOf({ place }: Source | Destination): string {
  return place ? ` at ${plain(place.name)}` : '';
}

function labelOf({ statement }: Source | Destination): string | undefined {
  return statement.label && plain(statement.label);
}
