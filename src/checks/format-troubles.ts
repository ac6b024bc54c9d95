import type { Analysis, FormatFault, Link, Segment, Source } from '../analysis/model.ts';
import type { Statement } from '../plan/plan.ts';
import type { Finding } from './finding.ts';
import { linkText } from './words.ts';

/** A picture that does not go, or hardly goes, through an interface. */
export type Misfit = Extract<FormatFault, { readonly kind: 'too big' | 'doubtful' | 'not carried' }>;
/** A copy-protected picture on a cable that is no display link. */
export type Unprotected = Extract<FormatFault, { readonly kind: 'protected' }>;

/** A fault on a cable: once for each source and interface, however many cables, feeds and segments have it. */
export interface FormatTrouble<F extends Misfit | Unprotected> {
  readonly source: Source;
  readonly fault: F;
  /** Empty when it holds in the plan without segments. */
  readonly segments: readonly Segment[];
  /** The other cables on which the same happens. */
  readonly others: Finding['related'];
}

/** The pictures that have this trouble with an interface. */
export function misfits(
  analysis: Pick<Analysis, 'remarkable'>,
  kind: Misfit['kind'],
): FormatTrouble<Misfit>[] {
  return troubles(analysis, (fault) => (fault.kind === kind ? (fault as Misfit) : undefined));
}

/** The copy-protected pictures that leave their display links. */
export function unprotected(analysis: Pick<Analysis, 'remarkable'>): FormatTrouble<Unprotected>[] {
  return troubles(analysis, (fault) => (fault.kind === 'protected' ? fault : undefined));
}

/** Where a misfit is told: at the format of the source where its own cable is the trouble, else at the cable. */
export function misfitPlace({ source, fault }: FormatTrouble<Misfit>): {
  statement: Statement;
  part: string | undefined;
} {
  const { statement } = fault.step.link;
  const own = statement === source.statement && source.statement.fact.format !== undefined;
  return { statement, part: own ? 'formats/0' : undefined };
}

interface Collected<F extends Misfit | Unprotected> extends FormatTrouble<F> {
  readonly segments: Segment[];
  readonly links: Set<Link>;
  readonly others: Finding['related'][number][];
}

function troubles<F extends Misfit | Unprotected>(
  { remarkable }: Pick<Analysis, 'remarkable'>,
  pick: (fault: FormatFault) => F | undefined,
): FormatTrouble<F>[] {
  const collected = new Map<Source, Map<string, Collected<F>>>();
  for (const { feed, segment, formatFaults } of remarkable.deliveries) {
    for (const any of formatFaults) {
      const fault = pick(any);
      if (fault === undefined || !feed.source) continue;
      const ofSource = collected.get(feed.source) ?? new Map<string, Collected<F>>();
      collected.set(feed.source, ofSource);
      const key = 'interface' in fault ? fault.interface.name : '';
      const known = ofSource.get(key);
      if (known) addTo(known, fault, segment);
      else ofSource.set(key, begin(feed.source, fault, segment));
    }
  }
  return [...collected.values()].flatMap((ofSource) => [...ofSource.values()]);
}

function begin<F extends Misfit | Unprotected>(
  source: Source,
  fault: F,
  segment: Segment | undefined,
): Collected<F> {
  return { source, fault, segments: segment ? [segment] : [], links: new Set([fault.step.link]), others: [] };
}

function addTo<F extends Misfit | Unprotected>(
  known: Collected<F>,
  { step }: F,
  segment: Segment | undefined,
): void {
  if (segment && known.segments.length > 0 && !known.segments.includes(segment)) known.segments.push(segment);
  if (known.links.has(step.link)) return;
  known.links.add(step.link);
  const message = `The same on ${linkText(step.link)}.`;
  known.others.push({ place: { statement: step.link.statement }, message });
}
