import type { Delivery, Feed, Source } from '../../analysis/model.ts';
import { formatFrames, formatTime } from '../../physics/display.ts';
import { type Format, formatRaster, type StatedFormat } from '../../physics/raster.ts';
import { framesPerSecond } from '../../physics/rate.ts';
import { counted } from '../findings/located.ts';
import { verifyCaution } from './cautions.ts';
import { delayTime, durationText } from './durations.ts';
import { pictureCell } from './pictures.ts';
import { type Cell, type Sheet, type SheetInput, type SheetRow, tickBox } from './sheet.ts';

/** Each wish: what to send, where to look, what to see, and what was measured. */
export function lineCheckSheet(input: SheetInput): Sheet {
  const { analysis } = input;
  const firsts = new Map<Feed, Delivery>();
  for (const delivery of analysis.deliveries)
    if (!firsts.has(delivery.feed)) firsts.set(delivery.feed, delivery);
  return {
    id: 'line-check',
    title: 'Line check',
    about:
      'Send the test picture from the source, go to where it is watched, and look: number, name, all four edges, and no broken lines. To read the delay, photograph both screens side by side while the test picture runs: the difference of the two frame counts. Write it down, in frames or ms; at the desk it is typed back as `measured` and `proved`. An empty “At most” has no limit.',
    cautions: [verifyCaution],
    empty: 'The plan has no feeds.',
    tables: [
      {
        file: 'line-check',
        columns: [
          { title: 'Seen', kind: 'tick' },
          { title: 'Send from', percent: 23 },
          { title: 'Look at', percent: 24 },
          { title: 'See', kind: 'short' },
          { title: 'At most', kind: 'quantity' },
          { title: 'Planned', kind: 'quantity' },
          { title: 'Measured', kind: 'write' },
        ],
        rows: [...firsts.values()].map((delivery) => row(delivery, input)),
      },
    ],
  };
}

function row(delivery: Delivery, { titles }: SheetInput): SheetRow {
  const { feed, segment, delay, routes, format } = delivery;
  const { source, target, measured, proofs } = feed;
  const from = source?.from?.owner.place ?? source?.place;
  const owner = target && ('kind' in target ? target : target.owner);
  const date = proofs.at(-1)?.fact.date;
  const looks = target ? titles.target(target) : feed.targetName;
  return {
    of: feed.name,
    cells: [
      { ...tickBox(proofs.length > 0), small: date },
      source ? pictureCell(source, titles, titles.place(from)) : feed.sourceName,
      {
        text: looks,
        small: [owner?.place && titles.place(owner.place), segment && `in ${titles.segment(segment)}`]
          .filter(Boolean)
          .join('; '),
      },
      routes.length === 0 ? 'NO WAY THERE: see the open findings' : seeCell(source, format, titles),
      limitCell(delay),
      plannedCell(delay, source?.format),
      measured?.fact.delay
        ? { text: durationText(measured.fact.delay), value: delay.delay_s }
        : { text: '', write: true },
    ],
  };
}

/** What tells that it is the right one: the number on the test picture; of sound alone a tone. */
function seeCell(source: Source | undefined, format: Format | undefined, titles: SheetInput['titles']): Cell {
  if (!source) return '';
  if (format?.kind === 'sound')
    return { text: 'hear a test tone', small: counted(format.audio_channels, 'sound channel') };
  return { text: `test picture ${titles.numberOf(source)}`, small: format && formatRaster(format) };
}

/** Less cannot be told from nothing on a photograph. */
const LEAST_FRAMES = 0.05;

/** The delay as the plan has it, and as many frames of the source's picture as that are: what a photograph shows. */
function plannedCell({ computed_s, limit_s }: Delivery['delay'], format: StatedFormat | undefined): Cell {
  if (computed_s === undefined) return '';
  const rate = format && 'rate' in format ? framesPerSecond(format.rate) : undefined;
  const frames = rate === undefined ? undefined : computed_s * rate;
  return {
    text: delayTime(computed_s, limit_s),
    value: computed_s,
    small: frames === undefined ? undefined : formatFrames(frames < LEAST_FRAMES ? 0 : frames),
  };
}

/** The limit as it is stated, and what that is in the other unit. */
function limitCell({ limit, limit_s, delay_s }: Delivery['delay']): Cell {
  if (!limit || limit_s === undefined) return '';
  const time = formatTime(limit_s, delay_s);
  return { text: time, value: limit_s, small: 'frames' in limit ? durationText(limit) : undefined };
}
