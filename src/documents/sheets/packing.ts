import { cableStockOf } from '../../analysis/cable-pieces.ts';
import { packingOf } from '../../analysis/case-weights.ts';
import type { CaseWeight, Thing } from '../../analysis/model.ts';
import { type PackedThing, type PackingList, packingListsOf } from '../../analysis/packing-lists.ts';
import { formatLength, formatWeight } from '../../physics/display.ts';
import { liftingCaution } from './cautions.ts';
import { openBox, quantity, type Sheet, type SheetInput, type SheetRow, type SheetTable } from './sheet.ts';

/** What is in which case, and what the case weighs. */
export function packingSheet(input: SheetInput): Sheet {
  const stock = cableStockOf(input.analysis);
  const { cases, unpacked } = packingOf(input.analysis, stock);
  const lists = packingListsOf(input.analysis, stock);
  return {
    id: 'packing',
    title: 'Packing lists',
    about:
      'One card a case: tick when it goes in, tick again when it comes home. Spares, and cables that no card names, are counted on the kit and cable list.',
    cautions: [liftingCaution],
    empty: 'The plan has no cases.',
    cards: true,
    tables: [...lists.map((list, i) => card(list, cases[i]!, input)), inNoCase(unpacked, input)],
  };
}

const columns = [
  { title: 'In', kind: 'tick' },
  { title: 'Home', kind: 'tick' },
  { title: 'Thing', percent: 42 },
  { title: 'Kit or cable' },
  { title: 'Weighs', kind: 'quantity' },
] as const;

function card({ case: one, things }: PackingList, weight: CaseWeight, input: SheetInput): SheetTable {
  const { titles } = input;
  const { loose, weight_kg } = one.statement.fact;
  const { limit_kg } = weight;
  const whole = formatWeight(weight.weight_kg, limit_kg);
  const more = weight.unknown.length > 0 ? `${whole} and what is not known` : whole;
  return {
    file: 'packing',
    group: {
      heading: 'Case',
      title: titles.of(one),
      subtitle:
        limit_kg === undefined ? more : `${more}, at most ${formatWeight(limit_kg, weight.weight_kg)}`,
    },
    columns,
    rows: [
      ...things.map((packed) => row(packed, input)),
      ...loose.map((text): SheetRow => ({ cells: [openBox, openBox, text, '', 'not known'] })),
      { cells: ['', '', 'The empty case', '', quantity(weight_kg, formatWeight)] },
      {
        of: one.name,
        cells: [
          '',
          '',
          'ALL TOGETHER',
          '',
          { text: whole, value: weight.weight_kg, small: unknownText(weight) },
        ],
      },
    ],
  };
}

function unknownText({ unknown }: CaseWeight): string | undefined {
  return unknown.length === 0 ? undefined : 'and what is not known';
}

function row({ thing, piece, weight_kg }: PackedThing, { titles, analysis }: SheetInput): SheetRow {
  const length_m = piece?.piece_m ?? piece?.needed_m;
  const length = length_m === undefined ? undefined : formatLength(length_m, analysis.settings.units);
  const what =
    thing.kind === 'link'
      ? [titles.cable(thing.cable), length].filter(Boolean).join(', ')
      : 'kit' in thing
        ? (thing.kit?.statement.label ?? thing.kit?.name)
        : undefined;
  return {
    of: thing.name,
    cells: [openBox, openBox, titleOf(thing, titles), what ?? '', quantity(weight_kg, formatWeight)],
  };
}

function titleOf(thing: Thing, titles: SheetInput['titles']): string {
  return thing.kind === 'link' ? titles.link(thing) : titles.of(thing);
}

function inNoCase(things: readonly Thing[], { titles }: SheetInput): SheetTable {
  return {
    file: 'in-no-case',
    group: { heading: 'Case', title: 'In no case yet' },
    columns: [{ title: 'In', kind: 'tick' }, { title: 'Thing' }],
    rows: things.map((thing) => ({ of: thing.name, cells: [openBox, titleOf(thing, titles)] })),
  };
}
