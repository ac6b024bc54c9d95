import type { Analysis, Delay, Delivery, Route } from '../../analysis/model.ts';
import { formatTime } from '../../physics/display.ts';
import type { Table } from '../text-table.ts';

/** Every picture and where it goes: by which way, and how late it comes. */
export function feedsTable({ deliveries, segments }: Analysis): Table {
  const bySegment = segments.size > 0;
  const someProved = deliveries.some(({ feed }) => feed.proofs.length > 0);
  return {
    name: 'feeds',
    columns: [
      { title: 'Feed' },
      ...(bySegment ? [{ title: 'In' }] : []),
      { title: 'Way' },
      { title: 'Delay', right: true },
      { title: 'Limit', right: true },
      ...(someProved ? [{ title: 'Proved' }] : []),
    ],
    rows: deliveries.map((delivery) => [
      delivery.feed.name,
      ...(bySegment ? [delivery.segment?.name ?? 'always'] : []),
      wayOf(delivery),
      delayOf(delivery.delay),
      delivery.delay.limit_s === undefined ? '' : formatTime(delivery.delay.limit_s, delivery.delay.delay_s),
      ...(someProved ? [provedText(delivery)] : []),
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

/** `91.8 ms measured, planned 83.4 ms`. */
function delayOf({ delay_s, limit_s, from, computed_s }: Delay): string {
  if (delay_s === undefined) return 'not known';
  const text = formatTime(delay_s, limit_s);
  if (from !== 'measured') return text;
  return `${text} measured${computed_s === undefined ? '' : `, planned ${formatTime(computed_s, delay_s)}`}`;
}

function provedText({ feed }: Delivery): string {
  return feed.proofs.map(({ fact }) => fact.date ?? 'yes').join(', ');
}
