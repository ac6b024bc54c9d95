import type { Analysis, Link, Place } from '../analysis/model.ts';
import type { Statement } from '../plan/plan.ts';
import type { Check, Report } from './check.ts';
import { changedPlan, smallPlan } from './example-plans.ts';
import type { Finding, Fix } from './finding.ts';
import { addStatement } from './fixes/declare.ts';
import { cablePart, counted, linkStart, linkSubject, shown } from './words.ts';

export const lengthUnknown: Check = {
  name: 'length-unknown',
  severity: 'warning',
  summary: 'Nothing says how long a cable is.',
  explanation: `Whether the cable reaches is not judged, and no list says which piece to bring. That is found out when
the drum is empty ten metres short.

**How it is judged.** A measured length counts first, then a measured run, a stated length, and last the shortest chain
of runs between the two places (or by the places behind \`by\`) with \`slack\` at each end. Within one place it is twice
the slack, where the plan states one. What is missing the same way between the same places is told once.

**What mends it.** A length behind the cable, a \`run\` between the two places, \`at PLACE\` on both ends, or \`slack\`
in the plan.`,
  examples: [
    { wrong: changedPlan('run stage <-> desk 40 m', ''), right: smallPlan() },
    { wrong: changedPlan('over rg6 5 m', 'over rg6').replace('  slack 2 m\n', ''), right: smallPlan() },
  ],

  find(analysis, report) {
    // A run whose length cannot be read is told as that, and may be the one that is missing.
    const runUnread = analysis.runs.some(({ statement }) => hasUnreadLength(statement));
    for (const links of alike(analysis.remarkable.links).values()) {
      if (runUnread && links[0]?.length.missing === 'no run') continue;
      report(reportOf(analysis, links));
    }
  },
};

/** Links that lack a length for the same reason between the same places, by that reason. */
function alike(links: readonly Link[]): Map<string, Link[]> {
  const groups = new Map<string, Link[]>();
  for (const link of links) {
    const { length, statement } = link;
    const { missing, places } = length;
    // One in the sheath of another has the length of that one; an unknown place or cable is told as such.
    if (missing === undefined || link.sheath !== link || statement.fact.cable === undefined) continue;
    if (!link.from.port || !link.to.port || namesUnknownPlace(link) || hasUnreadLength(statement)) continue;
    const ends = places.map((place) => place?.index ?? '').sort();
    const key = missing === 'no place' ? `${missing} ${link.index}` : `${missing} ${ends.join()}`;
    const group = groups.get(key);
    if (group) group.push(link);
    else groups.set(key, [link]);
  }
  return groups;
}

function hasUnreadLength({ faults }: Statement): boolean {
  return faults.some(({ part }) => part.startsWith('lengths'));
}

/** Whether a place is written that is not declared: mending that name may well give the length. */
function namesUnknownPlace({ from, to, length }: Link): boolean {
  return [from, to].some(({ port }, i) => {
    const fact = port?.owner.statement.fact;
    const written = fact && 'place' in fact ? fact.place : undefined;
    return written !== undefined && length.places[i] === undefined;
  });
}

function reportOf(analysis: Analysis, [link, ...others]: readonly Link[]): Report {
  const { statement } = link!;
  return {
    statement,
    part: cablePart(link!),
    subject: linkSubject(link!),
    message: messageOf(link!, others.length),
    related: others.map(relatedTo),
    fixes: () => fixesOf(analysis, link!),
  };
}

function relatedTo(link: Link): Finding['related'][number] {
  return { place: { statement: link.statement, part: cablePart(link) }, message: 'This one too.' };
}

function messageOf(link: Link, others: number): string {
  const more = others > 0 ? ` (and ${counted(others, 'other cable')} like it)` : '';
  const start = `${linkStart(link)} has no length${more}`;
  const [from, to] = link.length.places;
  switch (link.length.missing) {
    case 'no place':
      return `${start}: ${withoutPlace(link)} does not say where it stands. Write \`at PLACE\` there, or a length behind the cable.`;
    case 'no slack':
      return `${start}: it stays within ${shown(from?.name ?? 'one place')}, and the plan has no \`slack\` to take it from. Write a length behind the cable, or \`slack\` in the plan.`;
    default:
      return `${start}: no chain of runs with a length leads from ${shown(from?.name ?? '')} to ${shown(to?.name ?? '')}${byText(link)}. Write a \`run\` between them, or a length behind the cable.`;
  }
}

function byText({ statement }: Link): string {
  const { by } = statement.fact;
  return by.length > 0 ? ` by ${by.map(shown).join(', ')}` : '';
}

function withoutPlace({ from, to, length }: Link): string {
  const end = length.places[0] ? to : from;
  return shown(end.port?.owner.name ?? end.text);
}

function fixesOf(analysis: Analysis, link: Link): readonly Fix[] {
  const { statement, length } = link;
  const [from, to] = length.places;
  const { settings } = analysis;
  if (length.missing === 'no run' && from && to && statement.fact.by.length === 0) {
    return [addRunFix(analysis, link, from, to)];
  }
  if (length.missing === 'no slack' && settings.statement) {
    const edit = { kind: 'insertInside', statement: settings.statement, text: 'slack 2 m' } as const;
    return [{ title: 'Plan with 2 m of slack at each end', edits: [edit] }];
  }
  return [];
}

/** A run whose length is a guess, and says so: how long it is only a person on site can tell. */
function addRunFix(analysis: Analysis, link: Link, from: Place, to: Place): Fix {
  const text = `run ${from.name} <-> ${to.name} 30 m "a guess: measure it"`;
  return {
    title: `Add a run from ${shown(from.name)} to ${shown(to.name)}, its length to be measured`,
    edits: [addStatement(analysis, 'run', text, link.statement)],
  };
}
