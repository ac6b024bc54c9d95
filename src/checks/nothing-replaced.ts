import type { Analysis, Feed, Unmatched } from '../analysis/model.ts';
import type { Statement } from '../plan/plan.ts';
import type { Check } from './check.ts';
import { smallPlan } from './example-plans.ts';
import type { Fix } from './finding.ts';
import { statementsWithUnknownNames } from './unknown-name.ts';
import { inSegments, shown } from './words.ts';

export const nothingReplaced: Check = {
  name: 'nothing-replaced',
  severity: 'error',
  summary: '`instead of` or `black` finds nothing to take the place of.',
  explanation: `The plan says that in a segment one picture takes the place of another, or that a screen goes black; but
that other picture is not there. Either it goes somewhere else than you think, or its name is wrong: in the segment the
screen shows what it always shows.

**How it is judged.** \`instead of OTHER\` needs an always-on feed from OTHER to the same destination; \`black\` needs an
always-on feed to the destination.

**What mends it.** The source that is really there, or leaving the clause out.`,
  examples: [
    {
      wrong: smallPlan(
        'segment talk',
        'source slides at stage sends 1080p50 as sdi_3g into box_s.in2 over rg6 5 m',
        'destination side at desk takes 1080p50 as sdi_3g from box_d.out2 over rg6 5 m',
        'feed slides -> side instead of camera in talk',
      ),
      right: smallPlan(
        'segment talk',
        'source slides at stage sends 1080p50 as sdi_3g into box_s.in2 over rg6 5 m',
        'feed slides -> screen instead of camera in talk',
      ),
    },
  ],

  find(analysis, report) {
    const wrong = statementsWithUnknownNames(analysis);
    const told = new Map<Statement, Set<string>>();
    for (const one of analysis.unmatched) {
      const { statement, part, kind, wanted, segment } = one;
      // Once for each clause, however many segments it speaks of; and not where a name is wrong already.
      const parts = told.get(statement) ?? new Set();
      if (wrong.has(statement) || parts.has(part)) continue;
      told.set(statement, parts.add(part));
      const where = inSegments([segment]);
      report({
        statement,
        part,
        subject: kind === 'black' ? wanted : feedNameOf(analysis, statement),
        segment: segment?.name ?? null,
        message:
          kind === 'black'
            ? `${shown(wanted)} is black anyway${where}: no picture is always there. Leave it out, or write the feed that is missing.`
            : `${shown(wanted)} is not always on${targetText(statement)}, so nothing takes its place${where}. Name the source that is there, or leave \`instead of\` out.`,
        fixes: () => otherSourceFix(analysis, one),
      });
    }
  },
};

/** Of a statement with several targets the first: the clause speaks of all of them. */
function feedNameOf({ feeds }: Analysis, statement: Unmatched['statement']): string | null {
  return feeds.find((feed) => feed.statement === statement)?.name ?? null;
}

function targetText({ fact }: Unmatched['statement']): string {
  const [target, ...others] = fact.targets;
  if (!target || others.length > 0) return ' there';
  return ` at ${shown(target.port === undefined ? target.thing : `${target.thing}.${target.port}`)}`;
}

/** The one source that is always at the same target. */
function otherSourceFix({ feeds }: Analysis, { statement, kind, part }: Unmatched): readonly Fix[] {
  if (kind !== 'instead of' || statement.fact.targets.length !== 1) return [];
  const own = feeds.find((feed) => feed.statement === statement);
  const there = feeds.filter((feed) => isThere(feed, own));
  const [only] = there;
  if (!only || there.length > 1) return [];
  return [
    {
      title: `Let it take the place of ${shown(only.sourceName)}`,
      edits: [{ kind: 'replace', statement, part, text: only.sourceName }],
    },
  ];
}

function isThere(feed: Feed, own: Feed | undefined): boolean {
  return (
    feed !== own && feed.always && feed.targetName === own?.targetName && feed.sourceName !== own.sourceName
  );
}
