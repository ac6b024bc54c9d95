import type { CablePiece, Link, Place } from '../../analysis/model.ts';
import { provedLinksOf } from '../../analysis/proved-links.ts';
import { type Pull, type PulledCable, pullingOf } from '../../analysis/pulls.ts';
import { formatLength } from '../../physics/display.ts';
import { fibreCaution, overheadCaution, riserCaution, walkwayCaution } from './cautions.ts';
import {
  type Cell,
  quantity,
  type Sheet,
  type SheetColumn,
  type SheetInput,
  type SheetRow,
  type SheetTable,
  tickBox,
} from './sheet.ts';

const columnsBehindTheBox: readonly SheetColumn[] = [
  { title: 'Cable' },
  { title: 'From' },
  { title: 'To' },
  { title: 'Kind' },
  { title: 'Length', kind: 'quantity' },
  { title: 'Take', kind: 'quantity' },
];

/** What to pull, way by way, the longest first. */
export function cableSheet(input: SheetInput): Sheet {
  const { pulls, installed } = pullingOf(input.analysis);
  const proved = provedLinksOf(input.analysis);
  const cautions = [walkwayCaution, riserCaution, overheadCaution];
  if (input.analysis.links.some((link) => link.cable?.medium === 'fibre')) cautions.push(fibreCaution);
  return {
    id: 'cables',
    title: 'Cable schedule',
    about:
      'Pull from the top: longest way first, on each way the longest cable first; cables within one place last. A ticked box: a proved picture came through it already.',
    cautions,
    empty: 'The plan has no cables.',
    tables: [
      ...pulls.map((pull) => pullTable(pull, input, proved, 'cables')),
      ...installed.map((pull) => pullTable(pull, input, proved, 'installed-cables')),
    ],
  };
}

function pullTable(
  pull: Pull,
  input: SheetInput,
  proved: ReadonlySet<Link>,
  file: 'cables' | 'installed-cables',
): SheetTable {
  const installed = file === 'installed-cables';
  const way = wayOf(pull, input);
  return {
    file,
    group: { heading: 'Way', ...way, title: installed ? `The house’s own: ${way.title}` : way.title },
    columns: [{ title: installed ? 'Plugged' : 'Pulled', kind: 'tick' }, ...columnsBehindTheBox],
    rows: pull.cables.map((cable) => row(cable, pull, input, proved, installed)),
  };
}

function wayOf(
  { runs, places }: Pull,
  { titles, analysis }: SheetInput,
): { title: string; subtitle?: string } {
  if (runs.length === 0) {
    const [from, to] = places;
    if (from === to)
      return { title: from ? `Within ${titles.place(from)}` : 'Within a place that is not stated' };
    return {
      title: `${titles.place(from)} ↔ ${titles.place(to)}`,
      subtitle: 'No run is stated between these places: find the way first.',
    };
  }
  const words = runs.map(({ statement, length_m }) =>
    [statement.fact.route, length_m === undefined ? '' : formatLength(length_m, analysis.settings.units)]
      .filter(Boolean)
      .join(', '),
  );
  return { title: placesOn(runs, places[0], titles), subtitle: words.join('; then ') };
}

/** The places along the runs in the order in which a cable comes to them. */
function placesOn(runs: Pull['runs'], start: Place | undefined, titles: SheetInput['titles']): string {
  let here = start;
  const names = [titles.place(here)];
  for (const { from, to } of runs) {
    here = from === here ? to : from;
    names.push(titles.place(here));
  }
  return names.join(' ↔ ');
}

function row(
  { link, piece }: PulledCable,
  { places }: Pull,
  { analysis, titles }: SheetInput,
  proved: ReadonlySet<Link>,
  installed: boolean,
): SheetRow {
  const { length_m, from } = link.length;
  // The heading names the place.
  const within = places[0] === places[1];
  const length = (value: number) => formatLength(value, analysis.settings.units);
  return {
    of: link.name,
    cells: [
      tickBox(proved.has(link)),
      { text: titles.ownLabel(link) ?? '', small: noteOf(link, titles) },
      { text: titles.end(link.from), small: within ? undefined : placeOf(link.from, titles) },
      { text: titles.end(link.to), small: within ? undefined : placeOf(link.to, titles) },
      titles.cable(link.cable),
      {
        text: length_m === undefined ? 'not known' : length(length_m),
        value: length_m,
        small: from === 'measured' ? 'measured' : undefined,
      },
      installed ? 'in place' : takes(link, piece, length),
    ],
  };
}

function placeOf({ port }: Link['from'], titles: SheetInput['titles']): string | undefined {
  return port?.owner.place && titles.place(port.owner.place);
}

function noteOf(link: Link, titles: SheetInput['titles']): string | undefined {
  const words = [
    link.standbyFor ? `spare for ${titles.link(link.standbyFor)}: plug only when that fails` : '',
    link.sheath === link ? '' : `in the sheath of ${titles.link(link.sheath)}`,
  ];
  return words.filter(Boolean).join('; ') || undefined;
}

const origins: Record<CablePiece['from'], string | undefined> = {
  stock: undefined,
  any: undefined,
  get: 'none at hand: get one',
};

function takes(link: Link, piece: CablePiece | undefined, length: (value: number) => string): Cell {
  if (!piece) return link.sheath === link ? '' : 'same sheath';
  if (piece.piece_m === undefined) return { text: origins[piece.from] ?? '' };
  return quantity(piece.piece_m, length);
}
