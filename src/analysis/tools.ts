import type { Statement } from '../plan/plan.ts';
import type { FormatTable } from './formats.ts';
import type { Analysis, Carried } from './model.ts';
import type { PlantWorks } from './plant.ts';
import type { Router } from './router.ts';

/** What an analysis was made with, for questions that come later: what goes dark, how far a picture gets. */
export interface Tools {
  /** The plant, and the statements that it is made of: while they are the same, so is the plant. */
  readonly works: PlantWorks;
  readonly plantStatements: readonly Statement[];
  readonly router: Router;
  readonly formats: FormatTable;
  /** How pictures are carried where no kit says so. */
  readonly usual: Carried;
}

const kept = new WeakMap<Analysis, Tools>();

export function keepTools(analysis: Analysis, tools: Tools): void {
  kept.set(analysis, tools);
}

/** The plant that an analysis was made with, when it is made of just these statements. */
export function plantKept(analysis: Analysis, plantStatements: readonly Statement[]): Tools | undefined {
  const tools = kept.get(analysis);
  const before = tools?.plantStatements;
  if (before?.length !== plantStatements.length) return undefined;
  return before.every((statement, i) => statement === plantStatements[i]) ? tools : undefined;
}

export function toolsOf(analysis: Analysis): Tools {
  const tools = kept.get(analysis);
  if (!tools) throw new Error('Only an analysis that `analyse` made can be searched');
  return tools;
}
