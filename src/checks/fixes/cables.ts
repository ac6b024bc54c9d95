/** Other cables for a link, as the analysis finds them. */
import { cableChoices } from '../../analysis/cable-choices.ts';
import type { Analysis, Link } from '../../analysis/model.ts';
import type { Fix } from '../finding.ts';
import { quoted } from '../words.ts';

/** More are no help in a menu. */
const MOST_OFFERED = 3;

/** Cables over which the link holds without doubt, those of its own kind first. */
export function cableFixes(analysis: Analysis, link: Link): readonly Fix[] {
  const { statement, cable: present } = link;
  return cableChoices(analysis, link)
    .filter(({ cable, reach }) => cable !== present && reach.verdict === 'good')
    .slice(0, MOST_OFFERED)
    .map(({ cable: { name } }) => ({
      title: `Use a cable that reaches: ${quoted(name)}`,
      edits:
        statement.fact.cable === undefined
          ? [{ kind: 'append', statement, text: `over ${name}` }]
          : [{ kind: 'replace', statement, part: 'cables/0', text: name }],
    }));
}
