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
      'Look for the line whose pictures are the ones that went, all at once. First what a standby mends, then what has to be mended or swapped, each worst first. One loss at a time is worked out: a cable with all in its sheath, a box, or all cables of a run.',
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
      { title: 'Do', kind: 'large' },
      { title: 'Stays dark' },
    ],
    rows: failures.map((failure, i) => ({
      of: failure.lost.name,
      cells: [
        input.titles.segment(failure.segment),
        targetsOf(goneIn(failure), input),
        i > 0 && sameLinks(failure.standbys, failures[0]!.standbys) && failure.overloaded.length === 0
          ? 'the same'
          : actionFor(failure, input),
        targetsOf(failure.dark, input) || 'none',
      ],
    })),
  };
}

function sameLinks(a: readonly Link[], b: readonly Link[]): boolean {
  return a.length === b.length && a.every((link, i) => link === b[i]);
}

function mending(losses: readonly Failure[][], input: SheetInput): SheetTable[] {
  return [
    {
      file: 'faults-to-mend',
      group: { heading: 'What', title: 'No standby: mend it or swap it' },
      columns: [{ title: 'Gone, all at once' }, { title: 'Suspect' }, { title: 'Do' }],
      rows: losses.map(
        (failures): SheetRow => ({
          of: failures[0]!.lost.name,
          cells: [goneCell(failures, input), suspectOf(failures[0]!, input), actionFor(failures[0]!, input)],
        }),
      ),
    },
  ];
}

/** What is gone, and below it what else is gone in which segment. */
function goneCell([first, ...others]: readonly Failure[], input: SheetInput): RichCell {
  const when = (failure: Failure) => input.titles.segment(failure.segment);
  const gone = targetsOf(goneIn(first!), input);
  return {
    text: first!.segment ? `${when(first!)}: ${gone}` : gone,
    small:
      others
        .map((failure) => `${when(failure)}: ${targetsOf(goneIn(failure), input) || 'nothing'}`)
        .join('. ') || undefined,
  };
}

function targetsOf(deliveries: readonly Delivery[], { titles }: SheetInput): string {
  return [
    ...new Set(deliveries.map(({ feed }) => (feed.target ? titles.target(feed.target) : feed.targetName))),
  ].join(', ');
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

/** The standby where there is one, else the way a fault of this kind is found and mended. */
function actionFor({ kind, lost, links, standbys, overloaded }: Failure, input: SheetInput): string {
  const { titles, analysis } = input;
  const over =
    overloaded.length === 0
      ? ''
      : ` TOO MUCH then on ${overloaded.map((link) => titles.link(link)).join(', ')}: take a picture off.`;
  if (standbys.length > 0) {
    const replaced = links.filter((link) => standbys.some(({ standbyFor }) => standbyFor === link));
    return `Unplug ${replaced.map((link) => ends(link, input)).join('; ')}. Plug ${standbys.map((link) => ends(link, input)).join('; ')}.${over}`;
  }
  if (kind === 'node')
    return `Power from ${powerOf(lost as Node, input)}? Plugs? Else put the spare in its place, set as on its preparation card.${over}`;
  if (kind === 'run') return `Walk the run: where was it trodden on, pulled or squeezed?${over}`;
  const { cable, length } = lost as Link;
  const piece = [
    cable && titles.cable(cable),
    length.length_m === undefined
      ? ''
      : `of ${formatLength(length.length_m, analysis.settings.units)} or more`,
  ]
    .filter(Boolean)
    .join(' ');
  return `Plugs at both ends? Else another cable${piece ? `: ${piece}` : ''}.${over}`;
}

function ends(link: Link, { titles }: SheetInput): string {
  return `${titles.ownLabel(link) ?? 'the cable'} at ${titles.end(link.from)} and ${titles.end(link.to)}`;
}

function powerOf({ poweredBy }: Node, { titles }: SheetInput): string {
  return poweredBy.length === 0
    ? 'its supply'
    : poweredBy.map((circuit) => titles.circuit(circuit)).join(' and ');
}
