import type { Building } from './building.ts';
import type { RawLink } from './links.ts';
import type { CableLength, LinkEnd, Place, Run, Settings } from './model.ts';
import type { NameBook } from './names.ts';
import { RunGraph } from './run-graph.ts';

/** How long each link is, and in which runs it lies. */
export class Lengths {
  readonly #places: ReadonlyMap<string, Place>;
  readonly #settings: Settings;
  readonly #names: NameBook;
  readonly #found: RunGraph;
  /** The runs as planned; the same as found where nothing was measured. */
  readonly #planned: RunGraph;
  readonly #measuredLinks: ReadonlyMap<RawLink, number>;

  constructor(
    places: ReadonlyMap<string, Place>,
    runs: readonly Run[],
    settings: Settings,
    measuredLinks: ReadonlyMap<RawLink, number>,
    names: NameBook,
  ) {
    this.#places = places;
    this.#settings = settings;
    this.#names = names;
    this.#measuredLinks = measuredLinks;
    this.#found = new RunGraph(places.size, runs, (run) => run.length_m);
    this.#planned = runs.some((run) => run.measured)
      ? new RunGraph(places.size, runs, (run) => run.planned_m)
      : this.#found;
  }

  /** The places that cables are said to be laid through and that there are not. */
  tellPlaces(links: readonly RawLink[]): void {
    for (const link of links) {
      if (link.sheath !== link) continue;
      const { statement } = link;
      statement.fact.by.forEach((name, i) => {
        this.#names.find(this.#places, name, 'place', statement, `by/${i}`);
      });
    }
  }

  /** Gives every link its length; one that shares a sheath has that of the sheath. */
  measure(links: readonly RawLink[]): void {
    for (const link of links) if (link.sheath === link) link.length = this.#lengthOf(link);
    for (const link of links) if (link.sheath !== link) link.length = link.sheath.length;
  }

  /** Measures anew. @returns the links whose length is not what it was. */
  measureAgain(links: readonly RawLink[]): RawLink[] {
    const before = links.map(({ length }) => length);
    this.measure(links);
    return links.filter((link, i) => {
      const isSame = equalLengths(before[i]!, link.length);
      if (isSame) link.length = before[i]!;
      return !isSame;
    });
  }

  #lengthOf(link: RawLink): CableLength {
    const stops = this.#stopsOf(link);
    const { fact } = link.statement;
    const way = wayThrough(this.#found, stops);
    const plannedWay = this.#planned === this.#found ? way : wayThrough(this.#planned, stops);
    const computed_m = this.#withSlack(way, stops);
    const planned_m = fact.length_m ?? this.#withSlack(plannedWay, stops);
    const measured_m = this.#measuredLinks.get(link);
    const runMeasured = way?.runs.some((run) => run.measured !== undefined) ?? false;
    const result: Building<CableLength> = {
      length_m: measured_m ?? fact.length_m ?? computed_m,
      from: measured_m !== undefined ? 'measured' : fact.length_m !== undefined ? 'stated' : 'runs',
      planned_m,
      runs: way?.runs ?? noRuns,
      missing: undefined,
      places: [stops[0], stops[stops.length - 1]] as const,
      temperature_c: hottest(way?.runs ?? noRuns),
    };
    if (measured_m === undefined && runMeasured && computed_m !== undefined) {
      result.length_m = computed_m;
      result.from = 'measured';
    }
    if (result.length_m === undefined) {
      result.from = undefined;
      result.missing = this.#whyMissing(stops);
    }
    return result;
  }

  /** The places that the cable goes through, its two ends included. */
  #stopsOf(link: RawLink): readonly (Place | undefined)[] {
    const first = placeOf(link.from);
    const last = placeOf(link.to);
    const { by } = link.statement.fact;
    if (by.length === 0) return [first, last];
    const between = by.flatMap((name) => this.#places.get(name) ?? []);
    return [first, ...between, last];
  }

  /** Slack at each end; within one place that is all there is. */
  #withSlack(way: Laid | undefined, stops: readonly (Place | undefined)[]): number | undefined {
    if (way === undefined) return undefined;
    const withinOnePlace = stops.length === 2 && stops[0] === stops[1];
    if (withinOnePlace && !this.#settings.slackStated) return undefined;
    return way.length_m + 2 * this.#settings.slack_m;
  }

  #whyMissing(stops: readonly (Place | undefined)[]): CableLength['missing'] {
    if (stops.some((place) => place === undefined)) return 'no place';
    return stops.length === 2 && stops[0] === stops[1] ? 'no slack' : 'no run';
  }
}

const noRuns: readonly Run[] = [];

function equalLengths(a: CableLength, b: CableLength): boolean {
  return (
    a.length_m === b.length_m &&
    a.planned_m === b.planned_m &&
    a.from === b.from &&
    a.missing === b.missing &&
    a.temperature_c === b.temperature_c &&
    a.runs.length === b.runs.length &&
    a.runs.every((run, i) => run === b.runs[i])
  );
}

interface Laid {
  readonly length_m: number;
  readonly runs: readonly Run[];
}

const nowhere: Laid = { length_m: 0, runs: noRuns };

function wayThrough(graph: RunGraph, stops: readonly (Place | undefined)[]): Laid | undefined {
  if (stops.length === 2) {
    const [from, to] = stops;
    if (from === undefined || to === undefined) return undefined;
    return from === to ? nowhere : graph.shortest(from, to);
  }
  let length_m = 0;
  const runs: Run[] = [];
  for (let i = 1; i < stops.length; i++) {
    const [from, to] = [stops[i - 1], stops[i]];
    const way = from && to && graph.shortest(from, to);
    if (!way) return undefined;
    length_m += way.length_m;
    runs.push(...way.runs);
  }
  return { length_m, runs };
}

function placeOf({ port }: LinkEnd): Place | undefined {
  return port?.owner.place;
}

function hottest(runs: readonly Run[]): number | undefined {
  let hottest_c: number | undefined;
  for (const { temperature_c } of runs) {
    if (temperature_c !== undefined && temperature_c > (hottest_c ?? -Infinity)) hottest_c = temperature_c;
  }
  return hottest_c;
}
