import type { Analysis } from '../../analysis/model.ts';
import type { Finding } from '../../checks/finding.ts';
import type { AcceptedFinding } from '../../checks/findings.ts';
import { addressSheet } from './addresses.ts';
import { cableSheet } from './cables.ts';
import { changeoverSheet } from './changeovers.ts';
import { costSheet } from './cost.ts';
import { faultSheet } from './fault-cards.ts';
import { kitSheet } from './kit.ts';
import { lineCheckSheet } from './line-check.ts';
import { packingSheet } from './packing.ts';
import { patchSheet } from './patch-cards.ts';
import { powerSheet } from './power.ts';
import { preparationSheet } from './preparation.ts';
import { riskSheet } from './risks.ts';
import type { Sheet, SheetInput } from './sheet.ts';
import { signalSheet } from './signals.ts';
import { timingSheet } from './timing.ts';
import { Titles } from './titles.ts';

/** A plan as the papers are made of it. */
export interface CheckedAnalysis {
  readonly analysis: Analysis;
  /** What is open. */
  readonly findings: readonly Finding[];
  readonly accepted: readonly AcceptedFinding[];
}

type MakeSheet = (input: SheetInput, checked: CheckedAnalysis) => Sheet;

/** Every sheet by the name that a person asks for, in the order of the work: prepare, load in, prove, show, return. */
export const sheetMakers: ReadonlyMap<string, MakeSheet> = new Map<string, MakeSheet>([
  ['signals', signalSheet],
  ['prepare', preparationSheet],
  ['kit', kitSheet],
  ['packing', packingSheet],
  ['cables', cableSheet],
  ['patch', patchSheet],
  ['power', powerSheet],
  ['addresses', addressSheet],
  ['sound', timingSheet],
  ['line-check', lineCheckSheet],
  ['changeovers', changeoverSheet],
  ['faults', faultSheet],
  ['cost', costSheet],
  ['risks', (input, { findings, accepted }) => riskSheet(input, findings, accepted)],
]);

/** The sheets of these names, all of them where none is asked for; each is made when it is taken. */
export function* sheetsOf(checked: CheckedAnalysis, wanted?: ReadonlySet<string>): Generator<Sheet, void> {
  const input: SheetInput = { analysis: checked.analysis, titles: new Titles(checked.analysis) };
  for (const [name, make] of sheetMakers)
    if (wanted === undefined || wanted.has(name)) yield make(input, checked);
}

/** The tables of a sheet that have rows. */
export function filledTables({ tables }: Sheet): Sheet['tables'] {
  return tables.filter(({ rows, notes }) => rows.length > 0 || (notes !== undefined && notes.length > 0));
}
