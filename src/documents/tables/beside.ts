import type { Analysis, CostLine } from '../../analysis/model.ts';
import { type Summary, summaryOf } from '../../analysis/summary.ts';
import type { Finding } from '../../checks/finding.ts';
import {
  formatLength,
  formatNumber,
  formatPower,
  formatShare,
  formatTime,
  formatWeight,
  type LengthUnits,
} from '../../physics/display.ts';
import { countBySeverity, counted } from '../findings/located.ts';
import type { Table } from '../text-table.ts';

/** One of two designs. */
export interface Design {
  /** What its column is called. */
  readonly name: string;
  readonly analysis: Analysis;
  readonly findings: readonly Finding[];
}

/** Two plans side by side: by which of them to choose, then what each of them takes and costs. */
export function besideTables(designs: readonly [Design, Design]): [Table, Table] {
  const summaries = designs.map(({ analysis }) => summaryOf(analysis));
  return [figuresTable(designs, summaries), costsTable(designs, summaries)];
}

function figuresTable(designs: readonly Design[], summaries: readonly Summary[]): Table {
  const row = (title: string, cell: (summary: Summary, design: Design) => string) => [
    title,
    ...summaries.map((summary, i) => cell(summary, designs[i]!)),
  ];
  const units = ({ analysis }: Design): LengthUnits => analysis.settings.units;
  return {
    name: 'beside',
    columns: [{ title: '' }, ...designs.map(({ name }) => ({ title: name }))],
    rows: [
      row('Findings', (_, { findings }) => findingsText(findings)),
      row('Pictures that arrive', ({ arriving, feeds }) => `${arriving} of ${feeds}`),
      row('Boxes', ({ boxes }) => String(boxes)),
      row('Cable to pull', (one, design) => `${formatLength(one.cable_m, units(design))} in ${one.cables}`),
      row('Pieces to get', ({ toGet }) => String(toGet)),
      row('Cost', costText),
      row('Cases weigh', ({ weight_kg }) => formatWeight(weight_kg)),
      row('Power', ({ power_w }) => formatPower(power_w)),
      row('Fullest link', fullestText),
      row('Latest picture', latestText),
      row('Worst single loss', worstText),
    ],
    empty: '',
  };
}

function findingsText(findings: readonly Finding[]): string {
  const { error, warning } = countBySeverity(findings);
  return `${counted(error, 'error')}, ${counted(warning, 'warning')}`;
}

/** What has no price is said with the sum, so that the cheaper of two is not just the one that leaves more out. */
function costText({ cost: { currency, total }, unpriced, toGet }: Summary): string {
  const sum = [formatNumber(total, 2), currency].filter(Boolean).join(' ');
  const missing = [
    ...(unpriced > 0 ? [counted(unpriced, 'price')] : []),
    ...(toGet > 0 ? [`${counted(toGet, 'piece')} to get`] : []),
  ];
  return missing.length === 0 ? sum : `${sum} without ${missing.join(' and ')}`;
}

function fullestText({ fullest }: Summary): string {
  if (fullest?.worst.share === undefined) return 'none';
  const { segment, share } = fullest.worst;
  return `${fullest.link.name}, ${formatShare(share)}${segment ? ` in ${segment.name}` : ''}`;
}

function latestText({ latest }: Summary): string {
  if (latest?.delay.delay_s === undefined) return 'none';
  const when = latest.segment ? ` in ${latest.segment.name}` : '';
  return `${latest.feed.name}, ${formatTime(latest.delay.delay_s)}${when}`;
}

function worstText({ worstLoss }: Summary): string {
  if (!worstLoss) return 'none';
  const { kind, lost, dark, segment } = worstLoss;
  return `${kind} ${lost.name}: ${dark.length} dark${segment ? ` in ${segment.name}` : ''}`;
}

/** Kit and pieces of cable, those of the first plan first. */
function costsTable(designs: readonly Design[], summaries: readonly Summary[]): Table {
  const byWhat = summaries.map(({ cost }) => new Map(cost.lines.map((line) => [keyOf(line), line])));
  const keys = [...new Set(byWhat.flatMap((lines) => [...lines.keys()]))];
  const units = designs[0]!.analysis.settings.units;
  return {
    name: 'costs beside',
    columns: [
      { title: 'What' },
      ...designs.flatMap(({ name }) => [
        { title: `Count, ${name}`, right: true },
        { title: `Sum, ${name}`, right: true },
      ]),
    ],
    rows: keys.map((key) => {
      const lines = byWhat.map((one) => one.get(key));
      const known = lines.find((line) => line !== undefined)!;
      return [titleOf(known, units), ...lines.flatMap(cells)];
    }),
    empty: 'Nothing in these plans has a price.',
  };
}

function keyOf({ what, length_m }: CostLine): string {
  return `${what} ${length_m ?? ''}`;
}

function titleOf({ what, length_m }: CostLine, units: LengthUnits): string {
  return length_m === undefined ? what : `${what}, ${formatLength(length_m, units)}`;
}

function cells(line: CostLine | undefined): string[] {
  if (!line) return ['', ''];
  return [String(line.count), line.sum === undefined ? 'no price' : formatNumber(line.sum, 2)];
}
