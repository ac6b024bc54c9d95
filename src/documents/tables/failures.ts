import { failuresOf } from '../../analysis/failures.ts';
import type { Analysis, Delivery, Failure, Link } from '../../analysis/model.ts';
import type { Table } from '../text-table.ts';

/** What every single loss does, the worst first. Feeds stand for what shows them: one screen shows one picture. */
export function failuresTable(analysis: Analysis): Table {
  const bySegment = analysis.segments.size > 0;
  return {
    name: 'failures',
    columns: [
      { title: 'Lost' },
      ...(bySegment ? [{ title: 'In' }] : []),
      { title: 'Dark', right: true },
      { title: 'What goes dark' },
      { title: 'What stays, or comes back' },
    ],
    rows: failuresOf(analysis).map((failure) => [
      `${failure.kind} ${failure.lost.name}`,
      ...(bySegment ? [failure.segment?.name ?? 'always'] : []),
      String(failure.dark.length),
      targetsOf(failure.dark),
      keptText(failure),
    ]),
    empty: 'No picture goes anywhere in this plan.',
  };
}

/** `judges, host; overflow once trunk_b is plugged; then trunk_b is too full`. */
function keptText({ kept, afterReplugging, standbys, overloaded }: Failure): string {
  const replugged = new Set(afterReplugging);
  return [
    targetsOf(kept.filter((delivery) => !replugged.has(delivery))),
    replugged.size > 0 && `${targetsOf(afterReplugging)} once ${areText(standbys)} plugged`,
    overloaded.length > 0 && `then ${areText(overloaded)} too full`,
  ]
    .filter((part) => part)
    .join('; ');
}

function targetsOf(deliveries: readonly Delivery[]): string {
  return deliveries.map(({ feed }) => feed.targetName).join(', ');
}

/** `trunk_b is`, `trunk_b and trunk_c are`. */
function areText(links: readonly Link[]): string {
  return `${links.map(({ name }) => name).join(' and ')} ${links.length === 1 ? 'is' : 'are'}`;
}
