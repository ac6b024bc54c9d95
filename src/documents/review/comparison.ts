import type { Analysis, Link, Segment, Source, Target } from '../../analysis/model.ts';
import type { Statement } from '../../plan/plan.ts';
import { Titles } from '../sheets/titles.ts';
import { type Matching, matchPlans } from './matching.ts';
import type { Renames } from './renames.ts';
import type { Named } from './review.ts';

/** A cable of the old plan and the one that it became. */
export interface LinkPair {
  readonly before: Link | undefined;
  readonly after: Link | undefined;
}

/** Two plans with what became of what. A thing that goes on is called as the new plan calls it. */
export class Comparison {
  readonly was: Analysis;
  readonly is: Analysis;
  readonly matching: Matching;
  readonly renames: Renames;
  /** Every cable of both plans, in order of the new plan. */
  readonly links: readonly LinkPair[];
  readonly titles: { readonly was: Titles; readonly is: Titles };
  readonly #becomes: ReadonlyMap<Link, Link>;

  constructor(was: Analysis, is: Analysis) {
    this.was = was;
    this.is = is;
    this.matching = matchPlans(was.plan, is.plan);
    this.renames = this.matching.renames;
    this.titles = { was: new Titles(was), is: new Titles(is) };
    this.links = pairLinks(was, is, this.matching);
    this.#becomes = new Map(
      this.links.flatMap(({ before, after }) => (before && after ? [[before, after]] : [])),
    );
  }

  /** What an old cable became; undefined: it is gone. */
  linkNow(old: Link): Link | undefined {
    return this.#becomes.get(old);
  }

  oldSource(source: Source): Named {
    const now = this.is.sources.get(this.renames.of('things', source.name));
    return now ? this.source(now) : { name: source.name, title: this.titles.was.of(source) };
  }

  source(source: Source): Named {
    return { name: source.name, title: this.titles.is.of(source) };
  }

  oldLink(old: Link): Named {
    const now = this.linkNow(old);
    return now ? this.link(now) : { name: old.name, title: this.titles.was.link(old) };
  }

  link(link: Link): Named {
    return { name: link.name, title: this.titles.is.link(link) };
  }

  oldSegment(segment: Segment | undefined): Named | null {
    if (!segment) return null;
    const now = this.is.segments.get(this.renames.of('segments', segment.name));
    return now ? this.segment(now) : { name: segment.name, title: this.titles.was.of(segment) };
  }

  segment(segment: Segment | undefined): Named | null {
    return segment ? { name: segment.name, title: this.titles.is.of(segment) } : null;
  }

  oldTarget(target: Target): string {
    return this.titles.was.target(target);
  }

  target(target: Target): string {
    return this.titles.is.target(target);
  }
}

function pairLinks(was: Analysis, is: Analysis, { pairs }: Matching): LinkPair[] {
  const oldBy = byStatement(was);
  const newBy = byStatement(is);
  return pairs.flatMap(({ before, after }): LinkPair[] => {
    const [old, fresh] = [before && oldBy.get(before.statement), after && newBy.get(after.statement)];
    return old || fresh ? [{ before: old, after: fresh }] : [];
  });
}

function byStatement({ links }: Analysis): Map<Statement, Link> {
  return new Map(links.map((link) => [link.statement, link]));
}
