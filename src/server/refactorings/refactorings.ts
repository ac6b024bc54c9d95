import type { LangiumDocument } from 'langium';
import type { CodeAction } from 'vscode-languageserver';
import type { Statement } from '../../plan/plan.ts';
import type { CurrentPlan } from '../plans.ts';
import type { FeedplotSharedServices } from '../services.ts';
import type { EditorAbilities } from '../start-options.ts';
import { addStandby } from './add-standby.ts';
import { lengthToRun } from './length-to-run.ts';
import { moveKit } from './move-kit.ts';
import { nameLink } from './name-link.ts';

/** What a change of form is asked for: the statement under the cursor, and everything around it. */
export interface Asked {
  readonly plan: CurrentPlan;
  readonly statement: Statement;
  readonly document: LangiumDocument;
  readonly shared: FeedplotSharedServices;
  readonly abilities: EditorAbilities;
}

export type Refactoring = (asked: Asked) => readonly CodeAction[];

const all: readonly Refactoring[] = [nameLink, addStandby, lengthToRun, moveKit];

/** Changes of form that make sense for a statement. */
export function refactoringsOf(asked: Asked): CodeAction[] {
  return all.flatMap((refactoring) => refactoring(asked));
}
