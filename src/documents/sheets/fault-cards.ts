import { failuresOf } from '../../analysis/failures.ts';
import { add } from '../../analysis/lists.ts';
import type { Delivery, Failure, Link, Node, Run } from '../../analysis/model.ts';
import { formatLength } from '../../physics/display.ts';
import { fibreCaution, mainsCaution } from './cautions.ts';
import type { RichCell, Sheet, SheetInput, SheetRow, SheetTable } from './sheet.ts';

/** If this fails: where the picture goes, what to suspect, what to re-plug, and what stays dark. */
export function faultSheet(input: SheetInput): Sheet {
  const losses = lossesOf(failuresOf(input.analysis));
  const canBeReplugged = (failures: readonly Failure[]) => failures.some((one) => one.standbys.length > 0);
  return {
    id: 'faults',
    title: 'Fault cards',
    about:
      'Look for the line that names exactly the screens and inputs that went, all at once. First what a standby mends, then what has to be mended or swapped, each worst first. Worked out for one loss at a time: a cable with all in its sheath, a box, or all cables of a run.',
    cautions: [mainsCaution, fibreCaution],
    empty: 'No single loss takes a picture away.',
    tables: [
      ...losses.filter(canBeReplugged).map((failures) => card(failures, input)),
      ...mending(
        losses.filter((failures) => !canBeReplugged(failures)),
        input,
      ),
    ],
  };
}

/**
 * What each loss does without segments and in those where that is otherwise, worst first: by how many screens go dark
 * at the moment, those that a standby brings back included. A run in which nothing lies but one cable is that cable.
 */
function lossesOf(all: readonly Failure[]): Failure[][] {
  const failures = all.filter((failure) => goneIn(failure).length > 0);
  const cables = new Set(failures.filter(({ kind }) => kind === 'link').map(cableKey));
  const byLoss = new Map<Failure['lost'], Failure[]>();
  for (const failure of failures)
    if (failure.kind !== 'run' || !cables.has(cableKey(failure))) add(byLoss, failure.lost, failure);
  const most = (losses: readonly Failure[]) => Math.max(...losses.map((one) => goneIn(one).length));
  return [...byLoss.values()]
    .map((losses) => losses.sort((a, b) => (a.segment?.index ?? -1) - (b.segment?.index ?? -1)))
    .sort((a, b) => most(b) - most(a));
}

function cableKey({ links }: Failure): string {
  return links
    .map((link) => link.index)
    .sort((a, b) => a - b)
    .join();
}

/** What is not to be seen until somebody does something. */
function goneIn({ dark, afterReplugging }: Failure): readonly Delivery[] {
  return [...dark, ...afterReplugging].sort((a, b) => a.feed.index - b.feed.index);
}

/** A card of its own, in large letters: a minute decides. */
function card(failures: readonly Failure[], input: SheetInput): SheetTable {
  return {
    file: 'fault-cards',
    large: true,
    group: { heading: 'Suspect', title: `Suspect ${suspectOf(failures[0]!, input)}` },
    columns: [
      { title: 'When' },
      { title: 'Gone, all at once' },
      { title: 'Do', kind: 'wide' },
      { title: 'Stays dark' },
    ],
    rows: alike(failures).map(([failure, ...others]): SheetRow => {
      const first = failures[0]!;
      const same =
        failure !== first && sameLinks(failure!.standbys, first.standbys) && failure!.overloaded.length === 0;
      return {
        of: failure!.lost.name,
        cells: [
          [failure!, ...others].map(({ segment }) => input.titles.segment(segment)).join('; '),
          targetsOf(goneIn(failure!), input),
          same ? 'the same' : replugging(failure!, input),
          targetsOf(failure!.dark, input) || 'none',
        ],
      };
    }),
  };
}

/** Losses of one thing by segment, those together that look and are mended alike. */
function alike(failures: readonly Failure[]): Failure[][] {
  const feeds = (deliveries: readonly Delivery[]) => deliveries.map(({ feed }) => feed.targetName).sort();
  const links = (all: readonly Link[]) => all.map(({ index }) => index);
  const groups = new Map<string, Failure[]>();
  for (const failure of failures) {
    const { dark, standbys, overloaded } = failure;
    const key = [feeds(goneIn(failure)), feeds(dark), links(standbys), links(overloaded)];
    add(groups, JSON.stringify(key), failure);
  }
  return [...groups.values()];
}

function sameLinks(a: readonly Link[], b: readonly Link[]): boolean {
  return a.length === b.length && a.every((link, i) => link === b[i]);
}

/** What has no standby: by what is gone, and for each of these everything that may be to blame. */
function mending(losses: readonly Failure[][], input: SheetInput): SheetTable[] {
  const byGone = new Map<string, SheetRow[]>();
  for (const failures of losses) {
    const gone = goneCell(failures, input);
    add(byGone, JSON.stringify(gone), {
      of: failures[0]!.lost.name,
      cells: [gone, suspectCell(failures[0]!, input), remedyCell(failures[0]!, input)],
    });
  }
  return [
    {
      file: 'faults-to-mend',
      group: {
        heading: 'What',
        title: 'No standby: mend it or swap it',
        subtitle: 'First push home the plugs at both ends, then look at the right column, then swap.',
      },
      columns: [
        { title: 'Gone, all at once', joined: true, percent: 33 },
        { title: 'Suspect', percent: 34 },
        { title: 'Look at, swap for' },
      ],
      rows: [...byGone.values()].flat(),
    },
  ];
}

/** What is gone, and below it how that differs in which segment. */
function goneCell([first, ...others]: readonly Failure[], input: SheetInput): RichCell {
  const when = (failure: Failure) => input.titles.segment(failure.segment);
  const gone = goneIn(first!);
  const words = targetsOf(gone, input);
  return {
    text: first!.segment ? `${when(first!)}: ${words}` : words,
    small:
      others
        .map((failure) => differenceOf(failure, gone, input))
        .filter(Boolean)
        .join('. ') || undefined,
  };
}

/** `Finale: also Left screen; not Recorder`; nothing where it is the same. */
function differenceOf(failure: Failure, usual: readonly Delivery[], input: SheetInput): string {
  const now = goneIn(failure);
  const has = (all: readonly Delivery[], { feed }: Delivery) =>
    all.some((one) => one.feed.target === feed.target && one.feed.targetName === feed.targetName);
  const more = now.filter((delivery) => !has(usual, delivery));
  const less = usual.filter((delivery) => !has(now, delivery));
  const words = [
    more.length > 0 ? `also ${targetsOf(more, input)}` : '',
    less.length > 0 ? `not ${targetsOf(less, input)}` : '',
  ].filter(Boolean);
  return words.length === 0 ? '' : `${input.titles.segment(failure.segment)}: ${words.join('; ')}`;
}

/** Each by its name; the inputs of one box together. */
function targetsOf(deliveries: readonly Delivery[], { titles }: SheetInput): string {
  const inputs = new Map<string, string[]>();
  for (const { feed } of deliveries) {
    const { target, targetName } = feed;
    const socket = target && !('kind' in target) ? titles.socket(target) : undefined;
    const owner = target ? titles.of('kind' in target ? target : target.owner) : targetName;
    const known = inputs.get(owner) ?? [];
    if (socket !== undefined && !known.includes(socket)) known.push(socket);
    inputs.set(owner, known);
  }
  return [...inputs]
    .map(([owner, sockets]) => (sockets.length === 0 ? owner : `${owner} · ${sockets.join(', ')}`))
    .join(', ');
}

function suspectOf({ kind, lost, links }: Failure, { titles }: SheetInput): string {
  if (kind === 'node') return `the box ${titles.of(lost as Node)} at ${titles.place((lost as Node).place)}`;
  if (kind === 'run')
    return `everything in ${titles.run(lost as Run)}: ${links.map((link) => titles.link(link)).join('; ')}`;
  const cable = `the cable ${titles.link(lost as Link)}`;
  const others = links.filter((link) => link !== lost);
  return others.length === 0
    ? cable
    : `${cable}, and in the same sheath ${others.map((link) => titles.link(link)).join('; ')}`;
}

/** By name, and below it what and where it is. */
function suspectCell({ kind, lost, links }: Failure, { titles }: SheetInput): RichCell {
  if (kind === 'node')
    return { text: titles.of(lost as Node), small: `box at ${titles.place((lost as Node).place)}` };
  if (kind === 'run')
    return {
      text: titles.run(lost as Run),
      small: `everything in this run: ${links.map((link) => titles.link(link)).join('; ')}`,
    };
  const others = links.filter((link) => link !== lost);
  return {
    text: titles.link(lost as Link),
    small:
      others.length === 0
        ? undefined
        : `and in the same sheath ${others.map((link) => titles.link(link)).join('; ')}`,
  };
}

function remedyCell(failure: Failure, input: SheetInput): RichCell {
  const { titles, analysis } = input;
  const { kind, lost } = failure;
  const small = overText(failure, input) || undefined;
  if (kind === 'run') return { text: 'where it is trodden on, pulled or squeezed', small };
  if (kind === 'node') {
    const { kit } = lost as Node;
    const spare = kit ? `${kit.statement.label ?? kit.name}, set as on its preparation card` : undefined;
    return {
      text: powerOf(lost as Node, input),
      small: [spare, small].filter(Boolean).join('. ') || undefined,
    };
  }
  const { cable, length } = lost as Link;
  const least =
    length.length_m === undefined
      ? undefined
      : `${formatLength(length.length_m, analysis.settings.units)} or more`;
  return { text: [cable && titles.cable(cable), least].filter(Boolean).join(', '), small };
}

/** What a standby's load then overfills. */
function overText({ overloaded }: Failure, { titles }: SheetInput): string {
  return overloaded.length === 0
    ? ''
    : `TOO MUCH then on ${overloaded.map((link) => titles.link(link)).join(', ')}: take a picture off.`;
}

/** What to unplug, and what to plug instead. */
function replugging(failure: Failure, input: SheetInput): string {
  const { links, standbys } = failure;
  const replaced = links.filter((link) => standbys.some(({ standbyFor }) => standbyFor === link));
  return [
    `Unplug ${replaced.map((link) => ends(link, input)).join('; ')}.`,
    `Plug ${standbys.map((link) => ends(link, input)).join('; ')}.`,
    overText(failure, input),
  ]
    .filter(Boolean)
    .join(' ');
}

function ends(link: Link, { titles }: SheetInput): string {
  return `${titles.ownLabel(link) ?? 'the cable'} at ${titles.end(link.from)} and ${titles.end(link.to)}`;
}

function powerOf({ poweredBy }: Node, { titles }: SheetInput): string {
  return poweredBy.length === 0
    ? 'its plugs'
    : `power from ${poweredBy.map((circuit) => titles.circuit(circuit)).join(' and ')}`;
}
