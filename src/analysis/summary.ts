import { cableStockOf } from './cable-pieces.ts';
import { packingOf } from './case-weights.ts';
import { poweringOf } from './circuit-loads.ts';
import { costOf } from './costs.ts';
import { failuresOf } from './failures.ts';
import type { Analysis, Cost, Delivery, Failure, Traffic } from './model.ts';

/** The few figures by which two designs are told apart. */
export interface Summary {
  /** Feeds whose picture arrives wherever it is wished, and all feeds. */
  readonly arriving: number;
  readonly feeds: number;
  readonly boxes: number;
  /** Cables to pull: how many, and all that are known how long they are, in metres. */
  readonly cables: number;
  readonly cable_m: number;
  /** Needed or spare pieces of cable that no stock has. */
  readonly toGet: number;
  readonly cost: Cost;
  /** Kinds of kit and cable without a price. */
  readonly unpriced: number;
  /** All cases with what is in them. */
  readonly weight_kg: number;
  readonly power_w: number;
  /** Of the network links the one that is fullest, in any segment. */
  readonly fullest: Traffic | undefined;
  /** The picture that comes last to where it is watched. */
  readonly latest: Delivery | undefined;
  /** The single loss that darkens most. */
  readonly worstLoss: Failure | undefined;
}

export function summaryOf(analysis: Analysis): Summary {
  const stock = cableStockOf(analysis);
  const cost = costOf(analysis, stock);
  const lost = new Set(analysis.deliveries.flatMap(({ feed, noRoute }) => (noRoute ? [feed] : [])));
  const feeds = analysis.feeds.filter(({ repeats }) => !repeats);
  return {
    arriving: feeds.filter((feed) => !lost.has(feed)).length,
    feeds: feeds.length,
    boxes: analysis.nodes.size,
    cables: stock.pieces.length,
    cable_m: sum(stock.pieces.map(({ needed_m }) => needed_m ?? 0)),
    toGet: [...stock.pieces, ...stock.spares].filter(({ from }) => from === 'get').length,
    cost,
    unpriced: cost.lines.filter(({ each }) => each === undefined).length,
    weight_kg: sum(packingOf(analysis, stock).cases.map(({ weight_kg }) => weight_kg)),
    power_w: sum(poweringOf(analysis).places.map(({ load_w }) => load_w)),
    fullest: most(analysis.traffic, ({ link, worst }) => (link.network ? worst.share : undefined)),
    latest: most(analysis.deliveries, ({ delay }) => delay.delay_s),
    worstLoss: failuresOf(analysis)[0],
  };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** The first of those with the greatest figure; what has none does not count. */
function most<T>(items: readonly T[], figure: (item: T) => number | undefined): T | undefined {
  let best: T | undefined;
  let greatest = 0;
  for (const item of items) {
    const value = figure(item);
    if (value === undefined || value <= greatest) continue;
    greatest = value;
    best = item;
  }
  return best;
}
