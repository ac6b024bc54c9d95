import { expect, test } from 'vitest';
import { addressingOf } from '../../src/analysis/addresses.ts';
import { analysisOf, kits } from './plans.ts';

const plan = (head: string, sources: readonly string[]) =>
  analysisOf(
    `plan "p" { ${head} }`,
    'kit big { inputs in[1..300] as sdi_3g outputs out[1..300] as sdi_3g network net as ethernet_100g carries uncompressed }',
    'node a : big',
    'node b : big',
    'link a.net <-> b.net',
    ...sources.flatMap((name, i) => [
      `source ${name} sends 1080p50 as sdi_3g into a.in${i + 1}`,
      `destination d_${name} from b.out${i + 1}`,
      `feed ${name} -> d_${name}`,
    ]),
  );
const groupsOf = (...names: string[]) =>
  new Map(
    addressingOf(plan('multicast 239.20.0.0/16', names)).groups.map(({ source, group }) => [
      source.name,
      group,
    ]),
  );

test('a new source renumbers none of the others', () => {
  const names = Array.from({ length: 40 }, (_, i) => `camera_${i}`);
  const before = groupsOf(...names);
  const after = groupsOf('brand_new', ...names.slice(0, 20), 'another', ...names.slice(20));
  for (const name of names) expect(after.get(name)).toBe(before.get(name));
});

test('every group is there once, lies in the prefix and is flooded nowhere', () => {
  const { groups } = addressingOf(
    plan(
      'multicast 239.20.0.0/16',
      Array.from({ length: 250 }, (_, i) => `camera_${i}`),
    ),
  );
  expect(new Set(groups.map(({ group }) => group)).size).toBe(250);
  expect(new Set(groups.map(({ hardwareAddress }) => hardwareAddress)).size).toBe(250);
  for (const { group, flooded } of groups) {
    expect(group).toMatch(/^239\.20\./);
    expect(flooded).toBe(false);
  }
});

// RFC 1112 6.4 (published): the low 23 bits of the group behind 01-00-5E.
test('the hardware address is made of the low 23 bits', () => {
  const { groups } = addressingOf(plan('multicast 239.129.1.0/24', ['cam']));
  const [, , third, fourth] = groups[0]!.group!.split('.').map(Number);
  const hex = (octet: number) => octet.toString(16).toUpperCase().padStart(2, '0');
  expect(groups[0]!.hardwareAddress).toBe(`01-00-5E-01-${hex(third!)}-${hex(fourth!)}`);
});

test('a prefix that is too small leaves some without, one that is no multicast block is told', () => {
  const small = addressingOf(plan('multicast 239.20.1.0/30', ['x', 'y', 'z', 'u', 'v', 'w']));
  expect(small.groups.filter(({ group }) => group === undefined).length).toBeGreaterThan(0);
  expect(small.groupPlaces).toBeLessThan(6);
  expect(addressingOf(plan('multicast 10.0.0.0/16', ['x'])).groupPrefixFault).toBe('no multicast');
  expect(addressingOf(plan('multicast 224.5.0.0/16', ['x'])).groupPrefixFault).toBe(
    'not administratively scoped',
  );
  expect(addressingOf(plan('multicast 239.5.0.0/16', ['x'])).groupPrefixFault).toBeUndefined();
});

test('nodes on the network get an address, those written down keep theirs and are not given away', () => {
  const analysis = analysisOf(
    'plan "p" { subnet 10.20.0.0/29 }',
    kits,
    'node a : edge_box { address 10.20.0.3 }',
    'node b : edge_box { address 10.20.0.3 }',
    'node c : edge_box { address 10.99.0.1 }',
    ...['d', 'e', 'f', 'g', 'h', 'i'].map((name) => `node ${name} : edge_box`),
    'node m : mixer_4',
  );
  const { nodes, nodePlaces } = addressingOf(analysis);
  expect(nodePlaces).toBe(6);
  const told = new Map(nodes.map((one) => [one.node.name, one]));
  expect(told.has('m')).toBe(false);
  expect(told.get('a')).toMatchObject({ address: '10.20.0.3', stated: true, outside: false });
  expect(told.get('a')!.sharedWith.map(({ name }) => name)).toEqual(['b']);
  expect(told.get('c')!.outside).toBe(true);
  const given = nodes.filter(({ stated }) => !stated).map(({ address }) => address);
  // Six places, one of them written down: five are given, the sixth node has none.
  expect(given.filter((address) => address !== undefined)).toHaveLength(5);
  expect(given.filter((address) => address === undefined)).toHaveLength(1);
  expect(given).not.toContain('10.20.0.3');
});

test('a very large prefix is no trouble', () => {
  const { groups, groupPlaces } = addressingOf(plan('multicast 224.0.0.0/4 subnet 0.0.0.0/1', ['x', 'y']));
  expect(groups).toHaveLength(2);
  expect(groupPlaces).toBeGreaterThan(1000);
});
