import { expect, test } from 'vitest';
import { analysisOf, kits } from './plans.ts';

test('a name that nothing declares is one entry with all its places', () => {
  const { names } = analysisOf(
    kits,
    'node box : edge_box at hall',
    'node other : edge_box at hall',
    'feed nobody -> box.in1',
    'feed nobody -> nowhere',
  );
  expect(names.unknown.map(({ wanted, name, uses }) => [wanted, name, uses.map(({ part }) => part)])).toEqual(
    [
      ['place', 'hall', ['places/0', 'places/0']],
      ['source', 'nobody', ['source', 'source']],
      ['target', 'nowhere', ['targets/0.thing']],
    ],
  );
});

test('a name that stands for another kind of thing is told with what it is', () => {
  const { names } = analysisOf(kits, 'place a', 'node box : edge_box at a', 'feed box -> box.in1');
  expect(names.unknown).toHaveLength(1);
  expect(names.unknown[0]).toMatchObject({ wanted: 'source', name: 'box' });
  expect(names.unknown[0]!.declaredAs?.fact.kind).toBe('node');
});

test('a port that the kit does not have is told once for its node', () => {
  const { names } = analysisOf(
    kits,
    'node box : edge_box',
    'link box.in9 -> box.out1',
    'source cam into box.in9 sends 1080p50',
    'feed cam -> box.in9',
  );
  expect(names.unknownPorts.map(({ node, name, uses }) => [node.name, name, uses.length])).toEqual([
    ['box', 'in9', 3],
  ]);
});

test('labels and formats for ports that are not there are told', () => {
  const { names } = analysisOf(kits, 'node box : edge_box { label inn "Cam" gives outt 1080p50 }');
  expect(names.unknownPorts.map(({ name, uses }) => [name, uses[0]!.part])).toEqual([
    ['inn', 'labels/0.port'],
    ['outt', 'gives/0.port'],
  ]);
});

test('the first statement of a name counts, whatever it declares', () => {
  const { names, nodes, sources, things } = analysisOf(
    kits,
    'source twin sends 1080p50',
    'node twin : edge_box at nowhere',
    'link twin a.b -> c.d',
  );
  expect(things.get('twin')?.kind).toBe('source');
  expect([...nodes.keys()]).toEqual([]);
  expect([...sources.keys()]).toEqual(['twin']);
  expect(names.duplicates).toHaveLength(1);
  expect(names.duplicates[0]).toMatchObject({ space: 'things', name: 'twin' });
  expect(names.duplicates[0]!.others.map(({ fact }) => fact.kind)).toEqual(['node', 'link']);
  // The node that does not count is not read further: its place is not missed.
  expect(names.unknown.map(({ name }) => name)).toEqual(['a', 'c']);
});

test('spaces are apart: a place, a kit and a node may share a name', () => {
  const { names } = analysisOf(kits, 'place edge_box', 'node edge_box : edge_box at edge_box');
  expect(names.duplicates).toEqual([]);
});

test('a thousand statements of one name are one entry', () => {
  const { names, nodes } = analysisOf(kits, ...Array.from({ length: 1000 }, () => 'node box : edge_box'));
  expect(nodes.size).toBe(1);
  expect(names.duplicates).toHaveLength(1);
  expect(names.duplicates[0]!.others).toHaveLength(999);
});

test.each(['__proto__', 'constructor', 'toString', 'hasOwnProperty'])(
  '%s is a name like any other',
  (name) => {
    const analysis = analysisOf(
      kits,
      `place ${name}`,
      `kit ${name} { inputs ${name} as sdi_3g outputs out1 as sdi_3g follow ${name} }`,
      `node n : ${name} at ${name}`,
      `source s at ${name} sends 1080p50 as sdi_3g into n.${name} over rg6 1 m`,
      `destination ${name}x at ${name} from n.out1 over rg6 1 m`,
      `feed s -> ${name}x`,
    );
    expect(analysis.names).toEqual({ duplicates: [], unknown: [], unknownPorts: [] });
    expect(analysis.deliveries[0]!.routes[0]!.ports.map(({ text }) => text)).toEqual([
      's',
      `n.${name}`,
      'n.out1',
      `${name}x`,
    ]);
  },
);

test('names in subjects, cases, stock, streams and segments are looked up', () => {
  const { names } = analysisOf(
    'segment s without a1',
    'case c holds a2',
    'stock a3 1 of 10 m',
    'destination d streams 6 Mb/s over a4 powered by a5',
    'accept link-reach on a6 "why"',
    'measured a7 3 m',
    'proved a8 -> a9 on 2027-01-01',
  );
  expect(names.unknown.map(({ wanted, name }) => `${wanted} ${name}`).sort()).toEqual([
    'cable a3',
    'circuit a5',
    'subject a6',
    'subject a7',
    'subject a8',
    'subject a9',
    'thing a1',
    'thing a2',
    'uplink a4',
  ]);
});
