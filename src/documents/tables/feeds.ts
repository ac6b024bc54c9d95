import type { Analysis, Delay, Delivery, Route } from '../../analysis/model.ts';
import { formatTime } from '../../physics/display.ts';
import type { Table } from '../text-table.ts';

/** Every picture and where it goes: by which way, and how late it comes. */
export function feedsTable({ deliveries, segments }: Analysis): Table {
  const bySegment = segments.size > 0;
  return {
    name: 'feeds',
    columns: [
      { title: 'Feed' },
      ...(bySegment ? [{ title: 'In' }] : []),
      { title: 'Way' },
      { title: 'Delay', right: true },
      { title: 'Limit', right: true },
    ],
    rows: deliveries.map((delivery) => [
      delivery.feed.name,
      ...(bySegment ? [delivery.segment?.name ?? 'always'] : []),
      wayOf(delivery),
      delayOf(delivery.delay),
      delivery.delay.limit_s === undefined ? '' : formatTime(delivery.delay.limit_s, delivery.delay.delay_s),
    ]),
    empty: 'No feeds in this plan.',
  };
}

function wayOf({ routes }: Delivery): string {
  if (routes.length === 0) return 'no route';
  return routes.map((route) => ownersOn(route).join(' -> ')).join('; and ');
}

/** What the picture passes, each once where it goes in and out again. */
function ownersOn({ ports }: Route): string[] {
  const names = ports.map((port) => port.owner.name);
  return names.filter((name, i) => name !== names[i - 1]);
}

function delayOf({ delay_s, limit_s, from }: Delay): string {
  if (delay_s === undefined) return 'not known';
  return `${formatTime(delay_s, limit_s)}${from === 'measured' ? ' measured' : ''}`;
}
