import type { Analysis, SoundMatch } from '../../analysis/model.ts';
import { soundMatchesOf } from '../../analysis/sound-matches.ts';
import { formatTime } from '../../physics/display.ts';
import { LIP_SYNC_LIMITS } from '../../physics/sound.ts';
import type { Table } from '../text-table.ts';

/** Picture against sound, and the delay that makes them meet. */
export function soundTable(analysis: Analysis): Table {
  return {
    name: 'sound',
    columns: [
      { title: 'Watched at' },
      { title: 'In' },
      { title: 'Picture', right: true },
      { title: 'Sound', right: true },
      { title: 'The sound is' },
      { title: 'Rule' },
      { title: 'Delay to set', right: true },
    ],
    rows: soundMatchesOf(analysis).map((match) => [
      match.destination.name,
      match.segment?.name ?? 'always',
      formatTime(match.picture_s),
      formatTime(match.sound_s),
      offsetOf(match),
      LIP_SYNC_LIMITS[match.rule].source,
      formatTime(match.delayToSet_s),
    ]),
    empty: 'No destination says when its sound is heard.',
  };
}

function offsetOf({ offset_s, ok, warning }: SoundMatch): string {
  const judged = ok ? (warning ? ', noticed' : '') : ', too much';
  if (offset_s === 0) return 'in time';
  return `${formatTime(Math.abs(offset_s))} ${offset_s > 0 ? 'late' : 'early'}${judged}`;
}
