import type { Plan, Statement } from '../plan/plan.ts';
import type { Building } from './building.ts';
import { delay } from './delays.ts';
import { sourceFiguresOf } from './figures.ts';
import type { Graph } from './graph.ts';
import type { Analysis, Cycle, Delivery, Measurement, NameReport } from './model.ts';
import { NameBook } from './names.ts';
import { picturesOf } from './pictures.ts';
import { type PlantWorks, plantOf } from './plant.ts';
import { reachesOf } from './reaches.ts';
import { Router } from './router.ts';
import { deliveriesOf } from './situations.ts';
import { speakOf } from './spoken.ts';
import { Statements } from './statements.ts';
import { keepTools, plantKept } from './tools.ts';
import { trafficOf } from './traffic.ts';
import { unusedOf } from './unused.ts';
import { wishesOf } from './wishes.ts';

/**
 * Works out a plan. Pure: the same plan gives the same analysis, whatever is wrong with it, and it never throws.
 *
 * First the plant (what stands and is plugged where), then the show: wishes, ways, formats and flows, delays, loads,
 * reaches. Each stage reads only those before it.
 *
 * @param before An earlier analysis of the plan. While all statements of the plant are the same objects, its plant is
 *   taken over; the result is the same as without.
 */
export function analyse(plan: Plan, before?: Analysis): Analysis {
  const statements = new Statements(plan);
  const plantStatements = statements.ofPlant();
  const kept = before && plantKept(before, plantStatements);
  const works = kept?.works ?? plantOf(statements);
  return showOn(plan, statements, works, plantStatements, kept?.router.graph);
}

function showOn(
  plan: Plan,
  statements: Statements,
  works: PlantWorks,
  plantStatements: readonly Statement[],
  graph: Graph | undefined,
): Analysis {
  const { plant, formats, kinds, subjects, measurements } = works;
  const { settings } = plant;
  const names = new NameBook();
  const wishes = wishesOf(statements, plant, names);
  const { things, places, kits, cables, interfaces } = plant;
  const others = [kits, cables, interfaces, wishes.segments, wishes.cases];
  const spoken = speakOf(statements, wishes.feeds, { names, subjects, things, places, others });

  const usual = kinds.usual();
  const router = new Router(plant, usual, graph);
  const { situations, all, unmatched } = deliveriesOf(plant, wishes, router);
  const pictures = picturesOf(all, formats, usual);
  const cycles: Cycle[] = [...plant.cycles];
  delay(plant, situations, all, pictures.first, { formats, houseRate: settings.rate }, cycles);
  const deliveries = situations.flatMap(({ own }) => own) as Building<Analysis['deliveries'][number]>[];
  for (const [index, delivery] of deliveries.entries()) delivery.index = index;

  const analysis: Analysis = {
    ...plant,
    cycles,
    plan,
    names: merged(works.names.report(), names.report()),
    segments: wishes.segments,
    cases: wishes.cases,
    feeds: wishes.feeds,
    unmatched,
    situations,
    deliveries,
    flows: pictures.flows,
    traffic: trafficOf(plant.links, situations, formats, settings.headroomShare),
    reaches: reachesOf(plant.chains, pictures.fastest),
    sourceFigures: sourceFiguresOf(plant.sources.values(), pictures, formats, usual, settings.rate),
    ...unusedOf(plant, wishes.feeds),
    measurements: [...measurements.all, ...withoutWay(spoken.measurements, deliveries)],
    acceptances: spoken.acceptances,
    proofs: spoken.proofs,
  };
  keepTools(analysis, { works, plantStatements, router, formats, usual });
  return analysis;
}

/** A delay that was measured of a feed that gets nowhere in this plan has no effect. */
function withoutWay(
  measurements: readonly Measurement[],
  deliveries: readonly Delivery[],
): readonly Measurement[] {
  if (measurements.length === 0) return measurements;
  const arriving = new Set(deliveries.flatMap(({ feed, routes }) => (routes.length > 0 ? [feed] : [])));
  return measurements.map((one) =>
    one.useless === undefined && one.of.kind === 'feed' && !one.of.feeds.some((feed) => arriving.has(feed))
      ? { ...one, useless: 'no way' }
      : one,
  );
}

/** One entry for each unknown name, wherever it is used. */
function merged(plant: NameReport, show: NameReport): NameReport {
  const unknown = new Map(plant.unknown.map((one) => [`${one.wanted} ${one.name}`, one]));
  for (const one of show.unknown) {
    const key = `${one.wanted} ${one.name}`;
    const known = unknown.get(key);
    unknown.set(key, known ? { ...known, uses: [...known.uses, ...one.uses] } : one);
  }
  const ports = new Map(plant.unknownPorts.map((one) => [`${one.node.name}.${one.name}`, one]));
  for (const one of show.unknownPorts) {
    const key = `${one.node.name}.${one.name}`;
    const known = ports.get(key);
    ports.set(key, known ? { ...known, uses: [...known.uses, ...one.uses] } : one);
  }
  return {
    duplicates: [...plant.duplicates, ...show.duplicates],
    unknown: [...unknown.values()],
    unknownPorts: [...ports.values()],
  };
}
