/**
 * Two ways for the two copies of a seamless feed (SMPTE ST 2022-7) that share no network link.
 *
 * The first way is the ordinary one where a second can be found beside it. Where none can, the first is taken apart
 * and put together anew: the search for the second may give back links of the first (as a flow of two units is found
 * in a net in which every network link holds one; Ford and Fulkerson 1956, from memory). So two ways are found
 * whenever two exist.
 */
import type { Graph } from './graph.ts';
import type { Obstacles, RouteSearch } from './search.ts';
import type { Way } from './shortest-ways.ts';

export interface Pair {
  readonly ways: readonly [Way, Way];
  /** Network links that both take, because there are no two ways apart. */
  readonly shared: readonly number[];
}

interface Ground extends Obstacles {
  readonly graph: Graph;
  readonly search: RouteSearch;
}

export function findApart(
  ground: Ground,
  first: Way,
  starts: readonly number[],
  ends: readonly number[],
  picture: number,
  isNetwork: (link: number) => boolean,
): Pair {
  const links = [...new Set(first.links.filter(isNetwork))];
  const without = (kept: number | undefined) =>
    keptOff(
      ground,
      links.filter((link) => link !== kept),
      () => ground.search.find(starts, ends, picture),
    );
  if (links.length === 0) return { ways: [first, first], shared: [] };
  const second = without(undefined);
  if (second) return { ways: [first, second], shared: [] };
  const anew = new Rearranged(ground, first, picture, isNetwork).find(starts, ends);
  if (anew) return { ways: anew, shared: [] };
  for (const link of links) {
    const nearly = without(link);
    if (nearly) return { ways: [first, nearly], shared: [link] };
  }
  return { ways: [first, first], shared: links };
}

function keptOff<T>({ linkOff }: Ground, links: readonly number[], work: () => T): T {
  for (const link of links) linkOff[link]!++;
  const result = work();
  for (const link of links) linkOff[link]!--;
  return result;
}

/** An edge that one of the two ways takes. */
interface Edge {
  readonly from: number;
  readonly to: number;
  readonly link: number;
}

class Rearranged {
  readonly #ground: Ground;
  readonly #picture: number;
  /** The edges of the first way, by the vertex that each leads to. */
  readonly #taken = new Map<number, Edge>();
  readonly #takenLinks: ReadonlySet<number>;
  readonly #edges: Edge[];

  constructor(ground: Ground, first: Way, picture: number, isNetwork: (link: number) => boolean) {
    this.#ground = ground;
    this.#picture = picture;
    this.#takenLinks = new Set(first.links.filter(isNetwork));
    this.#edges = edgesOf(ground.graph, first);
    for (const edge of this.#edges) this.#taken.set(edge.to, edge);
  }

  find(starts: readonly number[], ends: readonly number[]): [Way, Way] | undefined {
    const path = this.#search(starts, new Set(ends));
    if (!path) return undefined;
    const edges = [...this.#edges];
    for (const { edge, back } of path) {
      if (!back) edges.push(edge);
      else edges.splice(edges.indexOf(edge), 1);
    }
    const ways = [this.#takeOut(edges, starts, ends), this.#takeOut(edges, starts, ends)];
    const [one, other] = ways;
    if (!one || !other) return undefined;
    return one.links.length <= other.links.length ? [one, other] : [other, one];
  }

  /** From the start over free edges, and backwards over those of the first way, to an end. */
  #search(starts: readonly number[], ends: ReadonlySet<number>): { edge: Edge; back: boolean }[] | undefined {
    const { graph, linkOff } = this.#ground;
    const { outStart, outTo, outLink } = graph;
    const cameBy = new Map<number, { edge: Edge; back: boolean } | undefined>();
    const queue: number[] = [];
    const reach = (vertex: number, edge: Edge, back: boolean) => {
      if (cameBy.has(vertex) || this.#isTaken(vertex)) return;
      cameBy.set(vertex, { edge, back });
      queue.push(vertex);
      this.#ground.search.visited++;
    };
    for (const start of starts) {
      cameBy.set(start, undefined);
      queue.push(start);
    }
    for (let i = 0; i < queue.length; i++) {
      const from = queue[i]!;
      if (ends.has(from)) return pathTo(from, cameBy);
      for (let at = outStart[from]!; at < outStart[from + 1]!; at++) {
        const link = outLink[at]!;
        if (link >= 0 && (linkOff[link]! > 0 || this.#takenLinks.has(link))) continue;
        reach(outTo[at]!, { from, to: outTo[at]!, link }, false);
      }
      const given = this.#taken.get(from);
      if (given) reach(given.from, given, true);
    }
    return undefined;
  }

  #isTaken(vertex: number): boolean {
    const spot = this.#ground.graph.spotOf[vertex]!;
    const there = spot < 0 ? -1 : this.#ground.pictureAt[spot]!;
    return there >= 0 && there !== this.#picture;
  }

  /** Follows edges from a start to an end and takes them out; nothing when a switch would have to send back. */
  #takeOut(edges: Edge[], starts: readonly number[], ends: readonly number[]): Way | undefined {
    const { portOf, forwards } = this.#ground.graph;
    const vertices: number[] = [];
    const links: number[] = [];
    let at = starts.find((start) => edges.some(({ from }) => from === start));
    let before = -1;
    while (at !== undefined) {
      if (portOf[at]! >= 0) vertices.push(at);
      if (ends.includes(at)) return { vertices, links, ties: [] };
      const next: number = edges.findIndex(
        ({ from, to }) => from === at && (forwards[from] !== 1 || portOf[to] !== portOf[before]),
      );
      const [edge] = next < 0 ? [] : edges.splice(next, 1);
      if (edge && edge.link >= 0) links.push(edge.link);
      before = at;
      at = edge?.to;
    }
    return undefined;
  }
}

function pathTo(
  end: number,
  cameBy: ReadonlyMap<number, { edge: Edge; back: boolean } | undefined>,
): { edge: Edge; back: boolean }[] {
  const path: { edge: Edge; back: boolean }[] = [];
  let step = cameBy.get(end);
  while (step) {
    path.push(step);
    step = cameBy.get(step.back ? step.edge.to : step.edge.from);
  }
  return path;
}

/** All edges of a way, those through hubs too. */
function edgesOf(graph: Graph, way: Way): Edge[] {
  const edges: Edge[] = [];
  for (let i = 1; i < way.vertices.length; i++) {
    const [from, to] = [way.vertices[i - 1]!, way.vertices[i]!];
    if (i % 2 === 1) edges.push({ from, to, link: way.links[(i - 1) / 2]! });
    else {
      const hub = hubBetween(graph, from, to);
      edges.push({ from, to: hub, link: -1 }, { from: hub, to, link: -1 });
    }
  }
  return edges;
}

function hubBetween({ outStart, outTo, inStart, inFrom }: Graph, from: number, to: number): number {
  for (let i = outStart[from]!; i < outStart[from + 1]!; i++) {
    for (let k = inStart[to]!; k < inStart[to + 1]!; k++) if (inFrom[k] === outTo[i]) return inFrom[k]!;
  }
  return -1;
}
