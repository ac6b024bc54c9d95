import { add } from '../../analysis/lists.ts';
import type { Finding } from '../../checks/finding.ts';
import { locate } from '../../checks/finding.ts';
import { counted } from '../findings/located.ts';
import type {
  AcceptanceChange,
  CoverChange,
  Named,
  Review,
  ReviewPlace,
  Step,
  ThingChange,
  ThingKind,
} from './review.ts';
import {
  coverTitle,
  coverWords,
  loadWords,
  pictureWords,
  purchaseWords,
  reachWords,
  thingWords,
  titles,
  totalTitle,
  totalWords,
} from './words.ts';

/** One line of a review. */
export interface Entry {
  /** What it is of, before the colon: a screen, a cable, a place. */
  readonly lead: string;
  readonly text: string;
  /** What stands beneath it, a line each. */
  readonly notes: readonly string[];
  readonly place: ReviewPlace | undefined;
  readonly grave: boolean;
}

export type SectionName =
  | 'merge'
  | 'findings'
  | 'lost'
  | 'steps'
  | 'pictures'
  | 'loads'
  | 'lengths'
  | 'cover'
  | 'mended'
  | 'totals'
  | 'purchases'
  | 'things';

export interface Section {
  readonly name: SectionName;
  readonly title: string;
  /** Said once beneath the title. */
  readonly about: string;
  /** Read first; the others are folded where that can be. */
  readonly open: boolean;
  readonly numbered: boolean;
  /** Beneath the entries. */
  readonly cautions: readonly string[];
  readonly entries: readonly Entry[];
}

/** A review in the order of reading: the worst first, then what to do, then the rest. Empty sections are left out. */
export function sectionsOf(review: Review): Section[] {
  const sections = [
    mergeSection(review),
    findingsSection(review),
    lostSection(review),
    stepsSection(review),
    picturesSection(review),
    loadsSection(review),
    lengthsSection(review),
    coverSection(review),
    mendedSection(review),
    totalsSection(review),
    purchasesSection(review),
    thingsSection(review),
  ];
  return sections.filter(({ entries }) => entries.length > 0);
}

function section(
  name: SectionName,
  title: string,
  entries: readonly Entry[],
  { about = '', open = false, numbered = false, cautions = [] }: Partial<Section> = {},
): Section {
  return { name, title, entries, about, open, numbered, cautions };
}

function entry(lead: string, text: string, place?: ReviewPlace, more: Partial<Entry> = {}): Entry {
  return { lead, text, notes: [], grave: false, place, ...more };
}

function mergeSection({ merge, subjects }: Review): Section {
  const parents = merge ? merge.parents.join(' and ') : '';
  return section(
    'merge',
    'Brought by the merge itself',
    (merge?.findings ?? []).map(findingEntry(subjects)),
    {
      about: `Neither ${parents.replace(' and ', ' nor ')} has this alone: only together they do.`,
      open: true,
    },
  );
}

function findingsSection({ newFindings, noLongerAccepted, merge, subjects }: Review): Section {
  const told = new Set(merge?.findings);
  const entries = [
    ...newFindings.filter((finding) => !told.has(finding)).map(findingEntry(subjects)),
    ...noLongerAccepted.map(({ finding }) => {
      const one = findingEntry(subjects)(finding);
      return { ...one, notes: [...one.notes, 'It was accepted before and is not any more.'] };
    }),
  ];
  return section('findings', 'New errors and warnings', entries, { open: true });
}

/** Messages have the names of the plan; the steps below have what is written on boxes and cables. */
function findingEntry(subjects: Review['subjects']): (finding: Finding) => Entry {
  return (finding) => {
    const { severity, check, subject, message } = finding;
    const title = subject === null ? undefined : subjects.get(subject);
    const lead = `${severity} ${check}${title === undefined ? '' : `, ${title}`}`;
    return entry(lead, message, placeOfFinding(finding, 'new'), { grave: severity === 'error' });
  };
}

function placeOfFinding({ place }: Finding, side: ReviewPlace['side']): ReviewPlace {
  const { file, range } = locate(place);
  return { side, file, range };
}

function lostSection({ pictures, cover }: Review): Section {
  const entries = [
    ...pictures
      .filter(({ change }) => change === 'loses its picture')
      .map((change) => entry(change.title, pictureWords(change), change.place, { grave: true })),
    ...coverEntries(cover.filter(({ change }) => change === 'cover lost')),
  ];
  return section('lost', 'Lost with this change', entries, { open: true });
}

function stepsSection({ steps, loads, cautions }: Review): Section {
  const entries = steps.map((step) =>
    entry(step.place, step.text, undefined, { notes: stepNotes(step), grave: step.dark.length > 0 }),
  );
  const dark = steps.filter((step) => step.dark.length > 0).length;
  const order =
    dark === 0
      ? 'In this order no running picture goes dark.'
      : `In this order a running picture goes dark only where a step says so: in ${counted(dark, 'step')}.`;
  const full = loads.filter(({ after, change }) => (after?.share ?? 0) > 1 && change !== 'lowered');
  const overfilled = [...new Map(full.map((load) => [load.name, load])).values()];
  const careful =
    overfilled.length === 0
      ? ''
      : ` But what rides on ${titles(overfilled)} breaks up once it is overfilled: mend that first.`;
  const about = order + careful;
  return section('steps', `What to do on site: ${counted(steps.length, 'step')}`, entries, {
    about,
    open: true,
    numbered: true,
    cautions,
  });
}

/** What a step does to pictures, where it does something. */
export function stepNotes({ dark, back, ends }: Step): string[] {
  const momentary = new Set(dark.filter((title) => back.includes(title)));
  const list = (titles: readonly string[]) => titles.filter((title) => !momentary.has(title)).join(', ');
  return [
    momentary.size > 0 ? `Dark while you do it: ${[...momentary].join(', ')}` : '',
    list(dark) ? `Dark from here on: ${list(dark)}` : '',
    ends.length > 0 ? `Ends here, as planned: ${ends.join(', ')}` : '',
    list(back) ? `Back again: ${list(back)}` : '',
  ].filter(Boolean);
}

function picturesSection({ pictures }: Review): Section {
  const entries = pictures
    .filter(({ change }) => change !== 'loses its picture')
    .map((change) =>
      entry(change.title, pictureWords(change), change.place, { grave: change.after?.over ?? false }),
    );
  return section('pictures', `Pictures: ${counted(entries.length, 'change')}`, entries);
}

function loadsSection({ loads }: Review): Section {
  const entries = loads.map((change) =>
    entry(change.title, loadWords(change), change.place, { grave: (change.after?.share ?? 0) > 1 }),
  );
  const links = new Set(loads.map(({ name }) => name)).size;
  return section('loads', `Load of network links: ${counted(links, 'link')}`, entries);
}

function lengthsSection(review: Review): Section {
  const entries = review.reaches.map((change) =>
    entry(change.title, reachWords(change, review), change.place, {
      grave: change.after.verdict === 'beyond',
    }),
  );
  return section('lengths', `Lengths and margins: ${counted(entries.length, 'cable')}`, entries);
}

function coverSection({ cover }: Review): Section {
  const gained = cover.filter(({ change }) => change === 'cover gained');
  return section('cover', 'Failure cover gained', coverEntries(gained));
}

/** Pictures that the same failures hurt in the same way stand together. */
function coverEntries(changes: readonly CoverChange[]): Entry[] {
  const groups = new Map<string, CoverChange[]>();
  for (const change of changes) {
    const { before, after, segment, losses } = change;
    add(groups, JSON.stringify([before, after, segment?.name, losses.map(({ name }) => name)]), change);
  }
  return [...groups.values()].map((group) => entry(coverTitle(group), coverWords(group), group[0]?.place));
}

function mendedSection({ mendedFindings, acceptedFindings }: Review): Section {
  const entries = [
    ...mendedFindings.map((finding) =>
      entry(`${finding.severity} ${finding.check}`, finding.message, placeOfFinding(finding, 'old')),
    ),
    ...acceptedFindings.map(acceptedEntry),
  ];
  const words = [
    mendedFindings.length > 0 ? `${mendedFindings.length} mended` : '',
    acceptedFindings.length > 0 ? `${acceptedFindings.length} accepted` : '',
  ];
  return section('mended', `Gone from the list: ${words.filter(Boolean).join(', ')}`, entries);
}

function acceptedEntry({ finding, acceptance }: AcceptanceChange): Entry {
  const { reason } = acceptance.fact;
  const { file } = acceptance.source;
  return entry(`accepted ${finding.check}`, `${finding.message} Accepted${reason ? `: “${reason}”` : ''}.`, {
    side: 'new',
    file,
    range: acceptance.source.range(),
  });
}

function totalsSection({ totals, currency }: Review): Section {
  const entries = totals.map((total) => entry(totalTitle(total), totalWords(total, currency)));
  return section('totals', 'Cost, weight and power', entries);
}

function purchasesSection(review: Review): Section {
  const entries = review.purchases.map((purchase) => entry(purchase.title, purchaseWords(purchase, review)));
  return section('purchases', 'Cables to buy', entries);
}

function thingsSection({ things }: Review): Section {
  const entries = things.map((thing) => entry(thingLead(thing), thingWords(thing), thing.place));
  return section('things', `What changed in the plan: ${counted(things.length, 'thing')}`, entries);
}

const kinds: Partial<Record<ThingKind, string>> = { black: 'black', accept: 'accepted', node: 'box' };

function thingLead({ kind, name, title }: ThingChange & Named): string {
  const words = title === name ? name : `${name} “${title}”`;
  return `${kinds[kind] ?? kind} ${words}`;
}
