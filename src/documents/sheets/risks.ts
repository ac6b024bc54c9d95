import type { Finding } from '../../checks/finding.ts';
import type { AcceptedFinding } from '../../checks/findings.ts';
import type { Sheet, SheetInput } from './sheet.ts';

/** What is wrong or doubtful: what is open, and what the crew accepted and why. */
export function riskSheet(
  { titles, analysis }: SheetInput,
  open: readonly Finding[],
  accepted: readonly AcceptedFinding[],
): Sheet {
  const segmentTitle = (name: string | null) => {
    const segment = name === null ? undefined : analysis.segments.get(name);
    return segment ? titles.segment(segment) : '';
  };
  return {
    id: 'risks',
    title: 'Open findings and accepted risks',
    about:
      'What the checks still say about this plan, the errors first; then what was seen, weighed and accepted.',
    empty: 'Nothing is open and nothing had to be accepted.',
    tables: [
      {
        file: 'open-findings',
        group: { heading: 'State', title: 'Open' },
        columns: [{ title: 'Weight' }, { title: 'What' }, { title: 'In' }, { title: 'Check' }],
        rows: worstFirst(open).map((finding) => ({
          ...(finding.subject === null ? {} : { of: finding.subject }),
          cells: [words[finding.severity], finding.message, segmentTitle(finding.segment), finding.check],
        })),
      },
      {
        file: 'accepted-risks',
        group: { heading: 'State', title: 'Accepted' },
        columns: [{ title: 'What' }, { title: 'Why we live with it' }, { title: 'In' }, { title: 'Check' }],
        rows: accepted.map(({ finding, acceptance }) => ({
          ...(finding.subject === null ? {} : { of: finding.subject }),
          cells: [
            finding.message,
            acceptance.fact.reason ?? 'no reason given',
            segmentTitle(finding.segment),
            finding.check,
          ],
        })),
      },
    ],
  };
}

const words = { error: 'ERROR', warning: 'warning', info: 'note' } as const;
const weights = { error: 0, warning: 1, info: 2 } as const;

export function worstFirst(findings: readonly Finding[]): Finding[] {
  return [...findings].sort((a, b) => weights[a.severity] - weights[b.severity]);
}
