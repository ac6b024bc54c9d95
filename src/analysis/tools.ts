import type { FormatTable } from './formats.ts';
import type { Analysis, Carried } from './model.ts';
import type { Router } from './router.ts';

/** What an analysis was made with, for questions that come later: what goes dark, how far a picture gets. */
export interface Tools {
  readonly router: Router;
  readonly formats: FormatTable;
  /** How pictures are carried where no kit says so. */
  readonly usual: Carried;
}

const kept = new WeakMap<Analysis, Tools>();

export function keepTools(analysis: Analysis, tools: Tools): void {
  kept.set(analysis, tools);
}

export function toolsOf(analysis: Analysis): Tools {
  const tools = kept.get(analysis);
  if (!tools) throw new Error('Only an analysis that `analyse` made can be searched');
  return tools;
}
