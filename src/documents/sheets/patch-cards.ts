import { add } from '../../analysis/lists.ts';
import type { Destination, Link, Node, Owner, Place, Source } from '../../analysis/model.ts';
import { type Socket, socketsOf } from '../../analysis/ports.ts';
import { mainsCaution } from './cautions.ts';
import { type Sheet, type SheetInput, type SheetRow, type SheetTable, tickBox } from './sheet.ts';

/** What is in each socket, box by box at each place: for the person with the torch. */
export function patchSheet(input: SheetInput): Sheet {
  const { nodes, sources, destinations, places } = input.analysis;
  const nodesAt = byPlace(nodes.values());
  const endsAt = byPlace([...[...sources.values()].filter(({ from }) => !from), ...destinations.values()]);
  return {
    id: 'patch',
    title: 'Patch cards',
    about:
      'One card a box, place by place. Read a line as: this socket takes the cable that comes from there. A place stands below only where the other end is elsewhere.',
    cautions: [mainsCaution],
    empty: 'The plan has no box.',
    cards: true,
    tables: [undefined, ...places.values()].flatMap((place) => [
      ...(nodesAt.get(place) ?? []).map((node) => card(node, place, input)),
      ...endsCard(endsAt.get(place) ?? [], place, input),
    ]),
  };
}

function byPlace<T extends Owner>(owners: Iterable<T>): Map<Place | undefined, T[]> {
  const at = new Map<Place | undefined, T[]>();
  for (const owner of owners) add(at, owner.place, owner);
  return at;
}

function partOf(place: Place | undefined, { titles }: SheetInput): NonNullable<SheetTable['part']> {
  return { heading: 'Place', title: place ? titles.place(place) : 'No place stated' };
}

function card(node: Node, place: Place | undefined, input: SheetInput): SheetTable {
  const sockets = socketsOf(node);
  const shown = sockets.filter(isUsed);
  const free = sockets.filter((socket) => !isUsed(socket));
  return {
    file: 'patch',
    part: partOf(place, input),
    group: {
      heading: 'Box',
      title: input.titles.of(node),
      subtitle: [node.kit?.statement.label ?? node.kit?.name, place && `at ${input.titles.place(place)}`]
        .filter(Boolean)
        .join(', '),
    },
    columns: [
      { title: 'Done', kind: 'tick' },
      { title: 'Socket', kind: 'large' },
      { title: 'Other end', kind: 'wide' },
      { title: 'Cable' },
      { title: 'Carries' },
    ],
    rows: shown.flatMap((socket) => rows(socket, node, input)),
    notes: [
      free.length > 0 ? `Empty: ${rangesOf(free.map(({ kitPort }) => kitPort.name))}.` : '',
      powerNote(node, input),
    ].filter(Boolean),
  };
}

function isUsed({ port }: Socket): boolean {
  return port !== undefined && port.links.length > 0;
}

/** A socket has one line; where a standby waits for it, that has a line of its own. */
function rows({ kitPort, label, port }: Socket, node: Node, input: SheetInput): SheetRow[] {
  const { titles } = input;
  return port!.links.map((link) => {
    const other = link.from.port === port ? link.to : link.from;
    const waits = link.standbyFor !== undefined && port!.links.length > 1;
    return {
      of: `${node.name}.${kitPort.name}`,
      cells: [
        tickBox(false),
        titles.socket({ name: kitPort.name, label }),
        { text: titles.end(other), small: elsewhere(other, node.place, titles) },
        {
          text: titles.ownLabel(link) ?? titles.cable(link.cable),
          small: titles.ownLabel(link) ? titles.cable(link.cable) : undefined,
        },
        waits ? 'NOT YET: plug only when the main cable fails' : carriedOver(link, input),
      ],
    };
  });
}

/** The place of an end that is not here. */
function elsewhere(
  { port }: Link['from'],
  here: Place | undefined,
  titles: SheetInput['titles'],
): string | undefined {
  const there = port?.owner.place;
  return there && there !== here ? `at ${titles.place(there)}` : undefined;
}

/** The pictures on a cable by number and name, those of all segments together. */
function carriedOver(link: Link, { analysis, titles }: SheetInput): string {
  if (link.standbyFor) return `spare for ${titles.link(link.standbyFor)}`;
  const { base, differing } = analysis.traffic[link.index]!;
  const sources = new Set<Source>();
  for (const { forward, backward } of [base, ...differing])
    for (const { flows, pictures } of [forward, backward])
      for (const source of [...flows.map((flow) => flow.source), ...pictures]) sources.add(source);
  const plugged =
    link.statement.fact.kind === 'source' ? analysis.sources.get(link.statement.fact.name) : undefined;
  if (plugged) sources.add(plugged);
  if (link.network) return numbersOf([...sources], titles);
  return [...sources].map((source) => `${titles.numberOf(source)} ${titles.of(source)}`).join(', ');
}

function numbersOf(sources: readonly Source[], titles: SheetInput['titles']): string {
  const numbers = sources.map((source) => titles.numberOf(source) ?? 0).sort((a, b) => a - b);
  return numbers.length === 0
    ? 'nothing yet'
    : `${numbers.length === 1 ? 'picture' : 'pictures'} ${numbers.join(', ')}`;
}

function powerNote({ poweredBy }: Owner, { titles }: SheetInput): string {
  if (poweredBy.length === 0) return '';
  return `Power from ${poweredBy.map((circuit) => titles.circuit(circuit)).join(' and ')}.`;
}

/** Cameras, laptops, screens: what stands at a place with one connector. */
function endsCard(
  ends: readonly (Source | Destination)[],
  place: Place | undefined,
  input: SheetInput,
): SheetTable[] {
  const { titles } = input;
  if (ends.length === 0) return [];
  return [
    {
      file: 'patch-sources-and-screens',
      part: partOf(place, input),
      group: { heading: 'Place', title: `Sources and screens${place ? ` at ${titles.place(place)}` : ''}` },
      columns: [
        { title: 'Done', kind: 'tick' },
        { title: 'Thing', kind: 'large' },
        { title: 'Plugged into', kind: 'wide' },
        { title: 'Cable' },
        { title: 'Power' },
      ],
      rows: ends.map((one) => {
        const other = one.kind === 'source' ? one.link?.to : one.link?.from;
        return {
          of: one.name,
          cells: [
            tickBox(false),
            { text: titles.of(one), picture: one.kind === 'source' ? titles.numberOf(one) : undefined },
            {
              text: other ? titles.end(other) : 'nothing',
              small: other && elsewhere(other, place, titles),
            },
            titles.cable(one.link?.cable),
            one.poweredBy.map((circuit) => titles.circuit(circuit)).join(' and '),
          ],
        };
      }),
    },
  ];
}

/** `in3, out2–out4`: names that count up are drawn together. */
export function rangesOf(names: readonly string[]): string {
  const parts: { first: string; last: string; stem: string; number: number }[] = [];
  for (const name of names) {
    const [, stem = name, digits = ''] = /^(.*?)(\d*)$/.exec(name) ?? [];
    const number = digits === '' ? Number.NaN : Number(digits);
    const before = parts.at(-1);
    if (before && before.stem === stem && number === before.number + 1) {
      before.last = name;
      before.number = number;
    } else parts.push({ first: name, last: name, stem, number });
  }
  return parts.map(({ first, last }) => (first === last ? first : `${first}–${last}`)).join(', ');
}
