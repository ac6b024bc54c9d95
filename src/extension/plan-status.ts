import { Disposable, languages, MarkdownString, StatusBarAlignment, ThemeColor, window } from 'vscode';
import { type BaseLanguageClient, State } from 'vscode-languageclient';
import { type Health, type HealthQuestion, serverRequests } from '../server/protocol.ts';

/** Findings come in bursts while somebody types; the line is worth less than the typing. */
const PAUSE_MS = 300;

/** A line at the edge of the window: how the plan of the file on top stands, and which link has the most on it. */
export function addPlanStatus(client: BaseLanguageClient): Disposable {
  const item = window.createStatusBarItem('feedplot.plan', StatusBarAlignment.Left, 40);
  item.name = 'Feedplot: the plan';
  item.command = 'workbench.actions.view.problems';
  let timer: ReturnType<typeof setTimeout> | undefined;
  const soon = () => {
    clearTimeout(timer);
    timer = setTimeout(() => void refresh(), PAUSE_MS);
  };
  const refresh = async () => {
    const document = window.activeTextEditor?.document;
    if (document?.languageId !== 'feedplot' || client.state !== State.Running) return item.hide();
    const question: HealthQuestion = { uri: document.uri.toString() };
    try {
      show(await client.sendRequest<Health | null>(serverRequests.health, question));
    } catch {
      item.hide();
    }
  };
  const show = (health: Health | null) => {
    item.text = health ? textOf(health) : '$(circle-slash) No plan imports this file';
    item.tooltip = health
      ? tooltipOf(health)
      : 'Loads, lengths and delays are worked out for a plan and what it imports.';
    item.backgroundColor = health?.errors ? new ThemeColor('statusBarItem.errorBackground') : undefined;
    item.show();
  };
  soon();
  return Disposable.from(
    item,
    new Disposable(() => clearTimeout(timer)),
    window.onDidChangeActiveTextEditor(soon),
    languages.onDidChangeDiagnostics(soon),
    client.onDidChangeState(soon),
  );
}

function textOf({ errors, warnings, worst }: Health): string {
  const state = errors > 0 ? `$(error) ${errors}` : warnings > 0 ? `$(warning) ${warnings}` : '$(check)';
  return worst ? `${state}  ${worst.name} ${worst.share}` : `${state} Plan`;
}

function tooltipOf({ title, errors, warnings, worst }: Health): MarkdownString {
  const text = new MarkdownString();
  text.appendText(title || 'The plan');
  text.appendText(`\n${counted(errors, 'error')}, ${counted(warnings, 'warning')}`);
  if (worst)
    text.appendText(
      `\nMost loaded link: ${worst.name}, ${worst.share}${worst.segment ? ` in ${worst.segment}` : ''}`,
    );
  return text;
}

function counted(count: number, what: string): string {
  return count === 1 ? `1 ${what}` : `${count === 0 ? 'no' : count} ${what}s`;
}
