import { CodeActionKind } from 'vscode-languageserver';
import type { Link, LinkEnd } from '../../analysis/model.ts';
import { freePortLike } from '../../checks/fixes/ports.ts';
import { workspaceEditOf } from '../text-edits.ts';
import { freeName } from './name-link.ts';
import type { Refactoring } from './refactorings.ts';

/** A second cable beside a network link, plugged by hand when that one fails, where both boxes have a port left. */
export const addStandby: Refactoring = ({ plan: { analysis }, statement, shared }) => {
  const link = analysis.links.find((one) => one.statement === statement);
  if (!link?.network || !link.named || link.standbyFor || hasStandby(analysis.links, link)) return [];
  const from = freeEnd(link.from);
  const to = freeEnd(link.to);
  if (!from || !to || !link.cable) return [];
  const name = freeName(analysis, `${link.name}_b`);
  const arrow = link.bothWays ? '<->' : '->';
  const text = `link ${name} ${from} ${arrow} ${to} over ${link.cable.name} standby for ${link.name}`;
  const edit = workspaceEditOf([{ kind: 'insertAfter', statement, text }], shared.workspace.LangiumDocuments);
  if (!edit) return [];
  return [{ title: `Add a standby for ${link.name}`, kind: CodeActionKind.RefactorRewrite, edit }];
};

function hasStandby(links: readonly Link[], link: Link): boolean {
  return links.some(({ standbyFor }) => standbyFor === link);
}

function freeEnd({ port }: LinkEnd): string | undefined {
  if (port?.owner.kind !== 'node') return undefined;
  const free = freePortLike(port.owner, port);
  return free === undefined ? undefined : `${port.owner.name}.${free}`;
}
