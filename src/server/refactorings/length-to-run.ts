import { CodeActionKind, TextEdit } from 'vscode-languageserver';
import type { Analysis, Link } from '../../analysis/model.ts';
import { formatQuantity, fromSi, unitOf } from '../../physics/quantity.ts';
import { rangeOf } from '../publish.ts';
import { workspaceEditOf } from '../text-edits.ts';
import type { Refactoring } from './refactorings.ts';

/**
 * Takes the length out of a cable between two places and makes a run of it, so that every cable that goes there has
 * it from the same line. Only where no way of runs leads from one place to the other yet.
 */
export const lengthToRun: Refactoring = ({ plan: { analysis }, statement, shared }) => {
  const link = analysis.links.find((one) => one.statement === statement);
  const [from, to] = link?.length.places ?? [];
  const stated_m = statement.fact.kind === 'link' ? statement.fact.length_m : undefined;
  if (!link || stated_m === undefined || !from || !to || from === to) return [];
  const run_m = stated_m - 2 * analysis.settings.slack_m;
  if (run_m <= 0 || isReached(analysis, link)) return [];
  const text = `run ${from.name} <-> ${to.name} ${lengthText(analysis, run_m)}`;
  const edit = workspaceEditOf(
    [{ kind: 'insertAfter', statement: to.statement, text }],
    shared.workspace.LangiumDocuments,
  );
  if (!edit?.changes) return [];
  const changes = { ...edit.changes };
  const { source } = statement;
  const removed = {
    start: rangeOf(source.range('cables/0')).end,
    end: rangeOf(source.range('lengths/0')).end,
  };
  changes[source.file] = [...(changes[source.file] ?? []), TextEdit.del(removed)];
  const title = `Make a run of this length: ${from.name} <-> ${to.name}`;
  return [{ title, kind: CodeActionKind.RefactorExtract, edit: { changes } }];
};

/** Whether runs lead from one of the link's places to the other. */
function isReached({ runs }: Analysis, { length: { places } }: Link): boolean {
  const [from, to] = places;
  const seen = new Set([from]);
  const next = [from];
  for (let place = next.pop(); place; place = next.pop()) {
    for (const run of runs) {
      const other = run.from === place ? run.to : run.to === place ? run.from : undefined;
      if (other && !seen.has(other)) next.push(other);
      if (other) seen.add(other);
    }
  }
  return seen.has(to);
}

function lengthText({ settings }: Analysis, length_m: number): string {
  const unit = unitOf(settings.units === 'feet' ? 'ft' : 'm')!;
  return formatQuantity({ value: Math.round(fromSi(length_m, unit) * 100) / 100, unit });
}
