import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Analysis, Delivery, Link, Port } from '../../src/analysis/model.ts';
import { analysisOf, words } from './plans.ts';

/**
 * Boxes, switches and a matrix with random cables between them, at most one in a socket; cameras at some boxes, screens
 * at others.
 */
const boxes = ['a', 'b', 'c'];
const switches = ['s', 't', 'u'];
const networkPorts = [
  ...boxes.flatMap((box) => [`${box}.net1`, `${box}.net2`]),
  ...switches.flatMap((one) => [1, 2, 3, 4].map((i) => `${one}.net${i}`)),
];
const kits = `
kit box {
  inputs in[1..3] as sdi_3g
  outputs out[1..3] as sdi_3g
  outputs loop1 as sdi_3g follow in1
  network net[1..2] as ethernet_10g
  carries uncompressed
}
kit switch { network net[1..4] as ethernet_10g forwards }
kit matrix { inputs in[1..2] as sdi_3g outputs out[1..2] as sdi_3g routes inputs to outputs }
`;

const plant = fc
  .record({
    order: fc.shuffledSubarray(networkPorts, { minLength: 8 }),
    arrows: fc.array(fc.constantFrom('<->', '<->', '<->', '->'), { minLength: 9, maxLength: 9 }),
    matrixIn: fc.constantFrom('a.out2', 'b.out2', 'c.loop1'),
    matrixOut: fc.constantFrom('a.in2', 'b.in2', 'c.in2'),
    from: fc.constantFrom(...boxes),
    to: fc.constantFrom(...boxes),
  })
  .map(({ order, arrows, matrixIn, matrixOut, from, to }) => {
    const links: string[] = [];
    for (let i = 0; i + 1 < order.length; i += 2)
      links.push(`link l${i} ${order[i]} ${arrows[i / 2]} ${order[i + 1]}`);
    return {
      from,
      to,
      statements: [
        kits,
        ...boxes.map((box) => `node ${box} : box`),
        ...switches.map((one) => `node ${one} : switch`),
        'node m : matrix',
        ...links,
        `link mi ${matrixIn} -> m.in1`,
        `link mo m.out2 -> ${matrixOut}`,
        `source cam sends 1080p50 as sdi_3g into ${from}.in1`,
        `destination screen from ${to}.out1`,
      ],
    };
  });

/** Whether a node passes a picture from one port to another, as the language says. */
function passes(from: Port, to: Port): boolean {
  const node = from.owner;
  if (from === to || to.owner !== node || !node.kit) return false;
  const { carries, forwards, routes } = node.kit;
  if (from.role === 'input' && to.role === 'network') return carries !== undefined;
  if (from.role === 'network' && to.role === 'network') return forwards;
  if (from.role === 'network' && to.role === 'output') return carries !== undefined && !to.kitPort?.follows;
  if (from.role === 'input' && to.role === 'output') {
    return to.kitPort?.follows ? to.kitPort.follows === from.kitPort : routes;
  }
  return false;
}

interface Cable {
  readonly link: Link;
  readonly from: Port;
  readonly to: Port;
}

/** Every way on which no cable is taken twice the same way round, by trying everything. */
function allWays(analysis: Analysis, start: Port, end: Port): Cable[][] {
  const cables = analysis.links.flatMap((link): Cable[] => {
    const [from, to] = [link.from.port!, link.to.port!];
    return [
      ...(link.carriesForward ? [{ link, from, to }] : []),
      ...(link.carriesBackward ? [{ link, from: to, to: from }] : []),
    ];
  });
  const ways: Cable[][] = [];
  const go = (way: Cable[]) => {
    const at = way[way.length - 1]!.to;
    if (at === end) {
      ways.push(way);
      return;
    }
    for (const next of cables) {
      if (passes(at, next.from) && !way.includes(next)) go([...way, next]);
    }
  };
  for (const first of cables) if (first.from === start) go([first]);
  return ways;
}

const orderOf = (way: readonly Cable[]) => way.map(({ link }) => link.index);

function compare(a: readonly number[], b: readonly number[]): number {
  if (a.length !== b.length) return a.length - b.length;
  const at = a.findIndex((value, i) => value !== b[i]);
  return at < 0 ? 0 : a[at]! - b[at]!;
}

function common(one: ReadonlySet<Link>, other: ReadonlySet<Link>): number {
  return [...one].filter((link) => other.has(link)).length;
}

function linksOf(delivery: Delivery, copy = 0): number[] {
  return delivery.routes[copy]?.steps.map(({ link }) => link.index) ?? [];
}

test('the way found is the shortest there is, and the first by order of statements', () => {
  fc.assert(
    fc.property(plant, ({ statements }) => {
      const analysis = analysisOf(...statements, 'feed cam -> screen');
      const [delivery] = analysis.deliveries;
      const start = analysis.sources.get('cam')!.port!;
      const end = analysis.destinations.get('screen')!.port!;
      const ways = allWays(analysis, start, end).sort((a, b) => compare(orderOf(a), orderOf(b)));
      expect(delivery!.routes.length).toBe(ways.length > 0 ? 1 : 0);
      if (ways.length === 0) return;
      expect(linksOf(delivery!)).toHaveLength(ways[0]!.length);
      // A way round that comes back to where it was is only promised to be short.
      const straight = ways[0]!.every(
        ({ to }, i) => ways[0]!.findIndex((one) => one.to.owner === to.owner) === i,
      );
      if (straight) expect(linksOf(delivery!)).toEqual(orderOf(ways[0]!));
      const isTied = straight && ways[1]?.length === ways[0]!.length;
      if (straight) expect(delivery!.ties.length > 0).toBe(isTied);
      expect(words(delivery!.routes[0]!.ports)).toContain('screen');
    }),
    { numRuns: 400 },
  );
});

/** Without a cable that is taken both ways round: such a way does not help a copy. */
function takesEachOnce(way: readonly Cable[]): boolean {
  return new Set(orderOf(way)).size === way.length;
}

// Not for a picture that comes back to its own box: there a copy could only help by turning round somewhere.
test('two copies are apart whenever two ways apart exist', () => {
  fc.assert(
    fc.property(
      plant.filter(({ from, to }) => from !== to),
      ({ statements }) => {
        const analysis = analysisOf(...statements, 'feed cam -> screen seamless');
        const [delivery] = analysis.deliveries;
        const start = analysis.sources.get('cam')!.port!;
        const end = analysis.destinations.get('screen')!.port!;
        const networks = allWays(analysis, start, end)
          .filter(takesEachOnce)
          .map((way) => new Set(way.filter(({ link }) => link.network).map(({ link }) => link)));
        const areApart = networks.some((one, i) =>
          networks.some((other, k) => k >= i && common(one, other) === 0),
        );
        if (areApart) expect(delivery!.sharedLinks.map(({ name }) => name)).toEqual([]);
        if (delivery!.routes.length === 0) return;
        const [first, second] = delivery!.routes.map(
          ({ steps }) => new Set(steps.filter(({ link }) => link.network).map(({ link }) => link)),
        );
        expect(common(first!, second!)).toBe(delivery!.sharedLinks.length);
      },
    ),
    { numRuns: 400 },
  );
});
