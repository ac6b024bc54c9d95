import { oneLine } from '../printable.ts';
import { countBySeverity, counted, type LocatedFinding } from './located.ts';

/** A comment of a pull request may have 65,536 characters; the rest is counted. */
const MOST_CHARACTERS = 60_000;

const marks = { error: '**error**', warning: 'warning', info: 'note' } as const;
const weight = { error: 0, warning: 1, info: 2 } as const;

/** Findings as a table for a comment, the errors first. */
export function findingsMarkdown(findings: readonly LocatedFinding[], plans: readonly string[]): string {
  const { error, warning, info } = countBySeverity(findings);
  const title = `### Feedplot: ${counted(error, 'error')}, ${counted(warning, 'warning')}, ${counted(info, 'note')}`;
  const checked = `Checked: ${plans.map((plan) => code(plan)).join(', ')}`;
  if (findings.length === 0) return `${title}\n\n${checked}\n\nNothing wrong.\n`;
  const rows: string[] = [];
  let room = MOST_CHARACTERS - title.length - checked.length;
  const worstFirst = [...findings].sort((a, b) => weight[a.severity] - weight[b.severity]);
  for (const finding of worstFirst) {
    const row = tableRow(finding);
    if (row.length + 1 > room) break;
    room -= row.length + 1;
    rows.push(row);
  }
  const left = findings.length - rows.length;
  const more = left > 0 ? `\n${left} more are not shown: \`feedplot check --output json\` lists all.\n` : '';
  return `${title}\n\n${checked}\n\n| | check | where | what |\n|---|---|---|---|\n${rows.join('\n')}\n${more}`;
}

function tableRow({ severity, check, file, line, message }: LocatedFinding): string {
  return `| ${marks[severity]} | ${code(check)} | ${code(`${file}:${line}`)} | ${escapeMarkdown(oneLine(message, 2000))} |`;
}

function code(text: string): string {
  return `\`${oneLine(text).replaceAll('`', "'").replaceAll('|', '\\|')}\``;
}

/** Text of a plan must not become markup, a link or a mention. Code between back-quotes of our own messages stays. */
function escapeMarkdown(text: string): string {
  return text
    .split(/(`[^`]*`)/)
    .map((part, i) => (i % 2 === 1 ? part.replaceAll('|', '\\|') : escapeMarkup(part)))
    .join('');
}

function escapeMarkup(text: string): string {
  // Behind an @ stands a space of no width: a name of the plan calls nobody.
  return text.replace(/[\\*_[\]<>|#~`]/g, '\\$&').replaceAll('@', '@&#8203;');
}
