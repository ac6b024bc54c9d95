import type { Analysis } from '../../analysis/model.ts';
import { findingJson, findingShape } from '../findings/json.ts';
import type { LocatedFinding } from '../findings/located.ts';
import { feedJson, feedShape } from './feeds.ts';
import { linkJson, linkShape } from './links.ts';
import { nodeJson, nodeShape } from './nodes.ts';
import { list, object, orNull, text, type ValueOf, whole } from './schema.ts';
import { sourceJson, sourceShape } from './sources.ts';

/** The whole analysis of a plan, as `feedplot show --json` prints it. */
export const analysisShape = object(
  'What Feedplot works out about a plan. Quantities are in SI units, told by the end of the key',
  {
    schema: whole(
      'Version of this shape: 1. A key that is added keeps it; one that changes its meaning raises it',
    ),
    plan: object('The plan itself', {
      title: text('Its title'),
      revision: orNull(text('Its revision')),
      file: text('Its file, from the folder in which the command ran'),
    }),
    findings: list('Everything that is wrong or doubtful, by file and line', findingShape),
    links: list('Every cable, in order of statements', linkShape),
    feeds: list('Every feed: those that always hold, then by segment those that differ there', feedShape),
    sources: list('Every source, in order of statements', sourceShape),
    nodes: list('Every box, in order of statements', nodeShape),
  },
);

/**
 * @param file Name of the plan's file.
 * @param findings The findings of this analysis.
 */
export function analysisJson(
  analysis: Analysis,
  file: string,
  findings: readonly LocatedFinding[],
): ValueOf<typeof analysisShape> {
  const { settings } = analysis;
  return {
    schema: 1,
    plan: {
      title: settings.title,
      revision: settings.statement?.fact.revision ?? null,
      file,
    },
    findings: findings.map(findingJson),
    links: analysis.links.map((link) => linkJson(analysis, link)),
    feeds: analysis.deliveries.map(feedJson),
    sources: [...analysis.sourceFigures.values()].map(sourceJson),
    nodes: [...analysis.nodes.values()].map(nodeJson),
  };
}
