import { add } from '../../analysis/lists.ts';
import type { Delivery, Source } from '../../analysis/model.ts';
import { formatRate } from '../../physics/display.ts';
import { type Format, formatRaster } from '../../physics/raster.ts';
import { counted } from '../findings/located.ts';
import { pictureCell } from './pictures.ts';
import { type Cell, quantity, type Sheet, type SheetInput, type SheetRow } from './sheet.ts';

/** Every picture: where it begins, what it is, where it is watched. */
export function signalSheet(input: SheetInput): Sheet {
  const { analysis } = input;
  const deliveries = new Map<Source, Delivery[]>();
  for (const delivery of analysis.deliveries) {
    if (delivery.feed.source && delivery.because === undefined)
      add(deliveries, delivery.feed.source, delivery);
  }
  return {
    id: 'signals',
    title: 'Signal list',
    about:
      'Every picture by its number. The number is the same in the drawing, on the test picture and on every sheet.',
    empty: 'The plan has no source.',
    tables: [
      {
        file: 'signals',
        columns: [
          { title: 'Picture', percent: 20 },
          { title: 'Begins at', percent: 25 },
          { title: 'Format' },
          { title: 'On a network', kind: 'quantity' },
          { title: 'Goes to' },
        ],
        rows: [...analysis.sources.values()].map((source) =>
          row(source, deliveries.get(source) ?? [], input),
        ),
      },
    ],
  };
}

function row(source: Source, deliveries: readonly Delivery[], { analysis, titles }: SheetInput): SheetRow {
  const figures = analysis.sourceFigures.get(source.name)!;
  const port = source.from ?? source.link?.to.port;
  const place = source.place ?? source.from?.owner.place;
  return {
    of: source.name,
    cells: [
      pictureCell(source, titles, source.encrypted ? 'copy-protected: stays on HDMI' : undefined),
      {
        text: source.from ? titles.port(source.from) : titles.place(place),
        small: source.from ? titles.place(place) : port && `into ${titles.port(port)}`,
      },
      formatCell(figures.format),
      quantity(figures.network_bits_per_second, formatRate, ''),
      deliveries.map((delivery) => goesTo(delivery, titles)).join('; ') || 'nowhere',
    ],
  };
}

/** The raster, and below it what else the format says. */
function formatCell(format: Format | undefined): Cell {
  if (!format) return 'not known';
  const sound = counted(format.audio_channels, 'sound channel');
  if (format.kind === 'sound') return sound;
  return { text: formatRaster(format), small: `${format.sampling} ${format.depth_bits} bit, ${sound}` };
}

function goesTo({ feed, segment, routes }: Delivery, titles: SheetInput['titles']): string {
  const where = feed.target ? titles.target(feed.target) : feed.targetName;
  const when = segment ? ` (${titles.segment(segment)})` : '';
  return `${where}${when}${routes.length === 0 ? ': NO WAY THERE' : ''}`;
}
