import type { SoundMatch } from '../../analysis/model.ts';
import { recordingsOf } from '../../analysis/recordings.ts';
import { soundMatchesOf } from '../../analysis/sound-matches.ts';
import { uplinkLoadsOf } from '../../analysis/uplink-loads.ts';
import { formatBytes, formatRate, formatShare, formatTime } from '../../physics/display.ts';
import { quantity, type Sheet, type SheetInput, type SheetTable } from './sheet.ts';

/** Sound against picture, the uplinks, and the storage to bring. */
export function timingSheet(input: SheetInput): Sheet {
  return {
    id: 'sound',
    title: 'Sound, streams, recordings',
    about:
      'Delays to set so that sound and picture meet; what goes up the venue’s internet; the storage to bring.',
    empty: 'No destination of this plan says when its sound is heard, streams or records.',
    tables: [soundTable(input), uplinkTable(input), recordingTable(input)],
  };
}

function soundTable({ analysis, titles }: SheetInput): SheetTable {
  const matches = soundMatchesOf(analysis);
  return {
    file: 'sound',
    caption: 'Sound against picture',
    columns: [
      { title: 'Watched at' },
      { title: 'When' },
      { title: 'Picture', kind: 'quantity' },
      { title: 'Sound', kind: 'quantity' },
      { title: 'The sound is' },
      { title: 'Delay to set', kind: 'quantity' },
    ],
    rows: matches.map((match) => ({
      of: match.destination.name,
      cells: [
        titles.of(match.destination),
        titles.segment(match.segment),
        quantity(match.picture_s, formatTime),
        quantity(match.sound_s, formatTime),
        offsetOf(match),
        quantity(match.delayToSet_s, formatTime),
      ],
    })),
    notes:
      matches.length === 0
        ? []
        : ['Set the delay on the sound that is heard there, then listen with the running test picture.'],
  };
}

function offsetOf({ offset_s, ok, warning }: SoundMatch): string {
  if (offset_s === 0) return 'in time';
  const judged = ok ? (warning ? ', will be noticed' : '') : ': TOO MUCH';
  return `${formatTime(Math.abs(offset_s))} ${offset_s > 0 ? 'late' : 'early'}${judged}`;
}

function uplinkTable({ analysis, titles }: SheetInput): SheetTable {
  return {
    file: 'uplinks',
    caption: 'Internet upload',
    columns: [
      { title: 'Uplink' },
      { title: 'Streams' },
      { title: 'Stated', kind: 'quantity' },
      { title: 'Measured', kind: 'write' },
      { title: 'Usable', kind: 'quantity' },
      { title: 'Needed', kind: 'quantity' },
      { title: 'Used', kind: 'quantity' },
    ],
    rows: uplinkLoadsOf(analysis).map((load) => ({
      of: load.uplink.name,
      cells: [
        { text: titles.of(load.uplink), small: titles.place(load.uplink.place) },
        load.destinations.map((destination) => titles.of(destination)).join(', '),
        quantity(load.stated_bits_per_second, formatRate, ''),
        load.measured_bits_per_second === undefined
          ? { text: '', write: true }
          : quantity(load.measured_bits_per_second, formatRate),
        quantity(load.usable_bits_per_second, formatRate, ''),
        quantity(load.needed_bits_per_second, (value) => formatRate(value, load.usable_bits_per_second)),
        quantity(load.share, formatShare, ''),
      ],
    })),
  };
}

function recordingTable({ analysis, titles }: SheetInput): SheetTable {
  return {
    file: 'recordings',
    caption: 'Recordings',
    columns: [
      { title: 'Recorder' },
      { title: 'Rate', kind: 'quantity' },
      { title: 'Storage to bring', kind: 'quantity' },
    ],
    rows: recordingsOf(analysis).map(({ destination, bytes }) => ({
      of: destination.name,
      cells: [
        titles.of(destination),
        quantity(destination.statement.fact.records_bits_per_second, formatRate, ''),
        quantity(bytes, formatBytes, 'the plan does not say how long it lasts'),
      ],
    })),
  };
}
