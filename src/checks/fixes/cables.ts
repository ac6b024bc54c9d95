/** Other cables for a link, as the analysis finds them. */
import { cableChoices } from '../../analysis/cable-choices.ts';
import type { Analysis, Link } from '../../analysis/model.ts';
import type { Fix } from '../finding.ts';
import { quoted } from '../words.ts';

/** More are no help in a menu. */
const MOST_OFFERED = 3;

/** Cables over which the link holds without doubt; last those of which only memory says so. */
export function cableFixes(analysis: Analysis, link: Link): readonly Fix[] {
  const holding = cableChoices(analysis, link).filter(
    ({ cable, reach }) => cable !== link.cable && reach.verdict === 'good',
  );
  const sure = holding.filter(({ reach }) => !reach.memoryDecides);
  const remembered = holding.filter(({ reach }) => reach.memoryDecides);
  return [
    ...sure.map(({ cable: { name } }) => useFix(link, name, `Use a cable that reaches: ${quoted(name)}`)),
    ...remembered.map(({ cable: { name } }) =>
      useFix(link, name, `Use ${quoted(name)}, which reaches if its limit is remembered rightly`),
    ),
  ].slice(0, MOST_OFFERED);
}

function useFix({ statement }: Link, name: string, title: string): Fix {
  if (statement.fact.cable === undefined) {
    return { title, edits: [{ kind: 'append', statement, text: `over ${name}` }] };
  }
  return { title, edits: [{ kind: 'replace', statement, part: 'cables/0', text: name }] };
}
