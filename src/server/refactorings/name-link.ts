import { CodeActionKind, TextEdit } from 'vscode-languageserver';
import type { Analysis } from '../../analysis/model.ts';
import { rangeOf } from '../publish.ts';
import type { Refactoring } from './refactorings.ts';

/** Gives a cable a name of its own, made of the boxes at its ends. */
export const nameLink: Refactoring = ({ plan, statement: { fact, source } }) => {
  if (fact.kind !== 'link' || fact.name !== undefined) return [];
  const name = freeName(plan.analysis, `${fact.from.node}_${fact.to.node}`);
  const { start } = rangeOf(source.range('from'));
  const edit = { changes: { [source.file]: [TextEdit.insert(start, `${name} `)] } };
  return [{ title: `Name this link ${name}`, kind: CodeActionKind.RefactorRewrite, edit }];
};

/** The name itself, or with the first number behind it that makes it new. */
export function freeName({ things }: Analysis, wanted: string): string {
  let name = wanted;
  for (let number = 2; things.has(name); number++) name = `${wanted}_${number}`;
  return name;
}
