import { cableStockOf } from './cable-pieces.ts';
import { add } from './lists.ts';
import type { Analysis, CablePiece, CableStock, Link, Place, Run } from './model.ts';

/** Cables that lie the same way and are pulled together. */
export interface Pull {
  /** The runs that they lie in, one after another; empty within one place or where the way is not known. */
  readonly runs: readonly Run[];
  /** The two places; both the same within one place. */
  readonly places: readonly [Place | undefined, Place | undefined];
  /** Longest first; what lies in one sheath stands behind its first. */
  readonly cables: readonly PulledCable[];
}

export interface PulledCable {
  readonly link: Link;
  /** Undefined for a core of another cable's sheath, and for what is installed. */
  readonly piece: CablePiece | undefined;
}

/** The cables of a plan in the order of pulling: the longest way first, within one place last, what is installed apart. */
export interface Pulling {
  readonly pulls: readonly Pull[];
  /** The house's own: nothing to pull, only to plug. */
  readonly installed: readonly Pull[];
}

export function pullingOf(analysis: Analysis, stock: CableStock = cableStockOf(analysis)): Pulling {
  const pieces = new Map(stock.pieces.map((piece) => [piece.link, piece]));
  const isInstalled = (link: Link) => link.installed || link.sheath.installed;
  const cables = analysis.links.map((link): PulledCable => ({ link, piece: pieces.get(link) }));
  return {
    pulls: grouped(cables.filter(({ link }) => !isInstalled(link))),
    installed: grouped(cables.filter(({ link }) => isInstalled(link))),
  };
}

function grouped(cables: readonly PulledCable[]): Pull[] {
  const groups = new Map<string, PulledCable[]>();
  for (const cable of cables) add(groups, wayOf(cable.link), cable);
  return [...groups.values()]
    .map((group): Pull => {
      const [first] = group;
      const { runs, places } = first!.link.length;
      return { runs, places, cables: [...group].sort(byLength) };
    })
    .sort((a, b) => Number(a.runs.length === 0) - Number(b.runs.length === 0) || longest(b) - longest(a));
}

/** The same for a cable that is written from the other end. */
function wayOf({ length: { runs, places } }: Link): string {
  const indexes = runs.map((run) => run.index);
  if (indexes.length > 0 && indexes[0]! > indexes.at(-1)!) indexes.reverse();
  if (indexes.length > 0) return `runs ${indexes.join()}`;
  return `places ${places.map((place) => place?.index ?? -1).sort((a, b) => a - b)}`;
}

function byLength(a: PulledCable, b: PulledCable): number {
  const sheaths = b.link.sheath === a.link.sheath ? 0 : lengthOf(b.link.sheath) - lengthOf(a.link.sheath);
  return sheaths || a.link.sheath.index - b.link.sheath.index || a.link.index - b.link.index;
}

function lengthOf({ length }: Link): number {
  return length.length_m ?? 0;
}

function longest({ cables }: Pull): number {
  return cables.reduce((most, { link }) => Math.max(most, lengthOf(link)), 0);
}
