import {
  type Changeover,
  changeoversOf,
  type SettingChange,
  type TargetChange,
} from '../../analysis/changeovers.ts';
import type { Link, Place, Target } from '../../analysis/model.ts';
import { delayTime } from './durations.ts';
import { pictureText } from './pictures.ts';
import { openBox, type Sheet, type SheetInput, type SheetRow, type SheetTable } from './sheet.ts';

/** What changes from one part of the running order to the next, in the order to do it. */
export function changeoverSheet(input: SheetInput): Sheet {
  return {
    id: 'changeovers',
    title: 'Changeovers',
    about:
      'Only what changes, in the order to do it: first what goes black, then cables, then settings, and last a look at every screen that changed.',
    empty: 'The plan has no segments: nothing changes during the show.',
    cards: true,
    tables: changeoversOf(input.analysis).map((changeover) => card(changeover, input)),
  };
}

interface Task {
  readonly at: string;
  readonly what: string;
  readonly note: string;
}

function card(changeover: Changeover, input: SheetInput): SheetTable {
  const { titles } = input;
  const tasks: Task[] = [
    ...changeover.goDark.map((change) => goDark(change, input)),
    ...changeover.unplug.flatMap((link) => plugging(link, 'Unplug', input)),
    ...changeover.plug.flatMap((link) => plugging(link, 'Plug', input)),
    ...changeover.settings.map((change) => setting(change, input)),
    ...changeover.look.map((change) => look(change, input)),
  ];
  return {
    file: 'changeovers',
    group: {
      heading: 'Changeover',
      title: `${titles.segment(changeover.from.segment)} → ${titles.segment(changeover.to.segment)}`,
    },
    columns: [
      { title: 'Done', kind: 'tick' },
      { title: 'No.', kind: 'short' },
      { title: 'At' },
      { title: 'Do', kind: 'large' },
      { title: 'Note' },
    ],
    rows: tasks.map(
      ({ at, what, note }, i): SheetRow => ({ cells: [openBox, String(i + 1), at, what, note] }),
    ),
    ...(tasks.length === 0 ? { notes: ['Nothing changes: go on.'] } : {}),
  };
}

function goDark({ target, before }: TargetChange, { titles }: SheetInput): Task {
  const source = before?.feed.source;
  return {
    at: titles.place(placeOf(target)),
    what: `${titles.target(target)} goes black`,
    note: source ? `no longer ${pictureText(source, titles)}` : '',
  };
}

function plugging(link: Link, word: 'Plug' | 'Unplug', { titles }: SheetInput): Task[] {
  const label = titles.ownLabel(link);
  return [link.from, link.to].map((end) => ({
    at: titles.place(end.port?.owner.place),
    what: `${word} ${label ?? 'the cable'} at ${titles.end(end)}`,
    note: '',
  }));
}

function setting(
  { setting: { node, output, shows, input: from }, before }: SettingChange,
  { titles }: SheetInput,
): Task {
  return {
    at: titles.place(node.place),
    what: `${titles.port(output)}: set to ${pictureText(shows, titles)}${from ? ` (${titles.socket(from)})` : ''}`,
    note: before ? `it was ${pictureText(before.shows, titles)}` : 'it was not in use',
  };
}

function look({ target, before, after }: TargetChange, { titles }: SheetInput): Task {
  const source = after!.feed.source;
  const delay_s = after!.delay.delay_s;
  const same = before?.feed.source === source;
  const picture = source ? pictureText(source, titles) : 'its picture';
  return {
    at: titles.place(placeOf(target)),
    what: `Look: ${titles.target(target)} shows ${picture}`,
    note: [
      same
        ? 'as before, but another way'
        : before
          ? `no longer ${pictureText(before.feed.source!, titles)}`
          : 'it was black',
      delay_s === undefined ? '' : `delay ${delayTime(delay_s, after!.delay.limit_s)}`,
    ]
      .filter(Boolean)
      .join('; '),
  };
}

function placeOf(target: Target): Place | undefined {
  return 'kind' in target ? target.place : target.owner.place;
}
