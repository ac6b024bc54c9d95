import type { Finding } from '../../checks/finding.ts';
import { countBySeverity, counted } from '../findings/located.ts';
import { allCautions } from '../sheets/cautions.ts';
import { worstFirst } from '../sheets/risks.ts';
import type { CheckedAnalysis } from '../sheets/sheets.ts';
import { prose, text } from './html.ts';
import { cautionsHtml } from './sheet-html.ts';

/** So many open findings are told on the cover; the rest stands in its section. */
const MOST_ON_COVER = 6;

export interface Heading {
  readonly id: string;
  readonly title: string;
}

/** Which plan this is, how it stands, what can hurt, and what is in the book. */
export function coverHtml(checked: CheckedAnalysis, headings: readonly Heading[]): string {
  const { analysis, findings } = checked;
  const fact = analysis.settings.statement?.fact;
  const description = analysis.settings.statement?.description;
  const facts: [string, string][] = [
    ['Revision', fact?.revision ?? 'none stated'],
    ['Date', fact?.date ?? 'none stated'],
    ['Places', [...analysis.places.values()].map((place) => place.statement.label ?? place.name).join('; ')],
    [
      'Size',
      [
        counted(analysis.sources.size, 'picture'),
        counted(analysis.destinations.size, 'destination'),
        counted(analysis.nodes.size, 'box').replace(/boxs$/, 'boxes'),
        counted(analysis.links.length, 'cable'),
      ].join(', '),
    ],
    [
      'Running order',
      [...analysis.segments.values()].map((one) => one.statement.label ?? one.name).join('; '),
    ],
  ];
  return `<header class="cover">
<h1 dir="auto">${text(titleOf(checked))}</h1>
${paragraphs(description ?? '')}
${stateHtml(findings)}
<dl>${facts
    .filter(([, words]) => words !== '')
    .map(([term, words]) => `<dt>${text(term)}</dt><dd dir="auto">${text(words)}</dd>`)
    .join('')}</dl>
${cautionsHtml(allCautions)}
<nav class="contents" aria-label="Contents"><h2>Contents</h2><ol>${headings
    .map(({ id, title }) => `<li><a href="#${id}">${text(title)}</a></li>`)
    .join('')}</ol></nav>
</header>`;
}

/** A comment's text as it was meant: empty lines part paragraphs, and lines that are set in stand by themselves. */
function paragraphs(words: string): string {
  return words
    .split(/\n\s*\n/)
    .filter((one) => one.trim() !== '')
    .map((one) => {
      const lines: string[] = [];
      for (const line of one.split('\n')) {
        if (lines.length === 0 || /^\s/.test(line)) lines.push(line.trim());
        else lines[lines.length - 1] += ` ${line}`;
      }
      return `<p class="description">${lines.map(text).join('<br>')}</p>`;
    })
    .join('\n');
}

export function titleOf({ analysis }: CheckedAnalysis): string {
  return analysis.settings.title || 'Plan without a title';
}

/** The line that says which findings are open, and the worst of them. */
function stateHtml(findings: readonly Finding[]): string {
  const { error, warning } = countBySeverity(findings);
  const open = worstFirst(findings).filter(({ severity }) => severity !== 'info');
  if (open.length === 0) return '<p class="state">No finding is open.</p>';
  const more = open.length - MOST_ON_COVER;
  const shown = open
    .slice(0, MOST_ON_COVER)
    .map(
      ({ severity, message }) =>
        `<li>${severity === 'error' ? '<strong>ERROR</strong> ' : ''}${prose(message)}</li>`,
    );
  const state =
    error > 0
      ? `NOT READY: ${counted(error, 'error')} and ${counted(warning, 'warning')} open`
      : `Open: ${counted(warning, 'warning')}`;
  return `<p class="state">${state}</p><ul class="open">${shown.join('')}${more > 0 ? `<li>and ${more} more: see <a href="#risks">Open findings</a></li>` : ''}</ul>`;
}
