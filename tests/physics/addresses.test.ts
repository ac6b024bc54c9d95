import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  flowGroup,
  formatAddress,
  formatPrefix,
  hostAddress,
  isFlooded,
  parseAddress,
  parsePrefix,
  prefixHolds,
  prefixSize,
  shareHardwareAddress,
} from '../../src/physics/addresses.ts';

const shown = (address: number | undefined) => (address === undefined ? 'none' : formatAddress(address));

test('addresses are written so that they are read back', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 ** 32 - 1 }), (address) => {
      expect(parseAddress(formatAddress(address))).toBe(address);
    }),
  );
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 32 }),
      fc.integer({ min: 0, max: 2 ** 32 - 1 }),
      (bits, address) => {
        const prefix = { first: address - (address % 2 ** (32 - bits)), bits };
        expect(parsePrefix(formatPrefix(prefix))).toEqual(prefix);
        expect(prefixHolds(prefix, address)).toBe(true);
        expect(prefixHolds(prefix, prefix.first - 1)).toBe(false);
        expect(prefixHolds(prefix, prefix.first + prefixSize(prefix))).toBe(false);
      },
    ),
  );
});

test('blanks around an address do not matter', () => {
  expect(parseAddress(' 10.20.0.9 ')).toBe(parseAddress('10.20.0.9'));
  expect(parsePrefix(' 10.20.0.0/24 ')).toEqual(parsePrefix('10.20.0.0/24'));
});

describe('addresses of nodes', () => {
  test.each([
    ['10.20.0.0/24', 1, '10.20.0.1'],
    ['10.20.0.0/24', 254, '10.20.0.254'],
    ['10.20.0.0/24', 255, 'none'],
    ['10.20.0.0/30', 2, '10.20.0.2'],
    ['10.20.0.0/30', 3, 'none'],
    ['10.20.0.0/31', 1, '10.20.0.0'],
    ['10.20.0.0/31', 2, '10.20.0.1'],
    ['10.20.0.0/31', 3, 'none'],
    ['10.20.0.7/32', 1, '10.20.0.7'],
    ['10.20.0.7/32', 2, 'none'],
    ['10.0.0.0/8', 256, '10.0.1.0'],
  ])('%s, number %d: %s', (prefix, n, expected) => {
    expect(shown(hostAddress(parsePrefix(prefix), n))).toBe(expected);
  });
});

describe('groups of flows', () => {
  test.each([
    ['239.10.0.0/16', 1, '239.10.0.1'],
    ['239.10.0.0/24', 7, '239.10.0.7'],
    ['239.10.0.0/24', 255, '239.10.0.255'],
    ['239.10.0.0/24', 256, 'none'],
    ['239.10.0.9/32', 1, '239.10.0.9'],
    ['239.10.0.9/32', 2, 'none'],
    // The first 256 of these land where switches flood.
    ['239.0.0.0/8', 1, '239.0.1.0'],
    ['239.128.0.0/16', 1, '239.128.1.0'],
    ['239.128.0.0/24', 1, 'none'],
    ['239.128.0.128/25', 1, 'none'],
    ['239.128.0.0/23', 256, '239.128.1.255'],
    ['239.128.0.0/23', 257, 'none'],
    // 2^23 - 256 of them have a hardware address of their own.
    ['239.0.0.0/8', 2 ** 23 - 256, '239.127.255.255'],
    ['239.0.0.0/8', 2 ** 23 - 255, 'none'],
  ])('%s, number %d: %s', (prefix, n, expected) => {
    expect(shown(flowGroup(parsePrefix(prefix), n))).toBe(expected);
  });

  test('are never flooded and never share a hardware address', () => {
    const blocks = fc.constantFrom('239.0.0.0/8', '239.128.0.0/20', '239.10.0.0/16', '232.0.0.0/8');
    const numbers = fc.integer({ min: 1, max: 3000 });
    fc.assert(
      fc.property(blocks, numbers, numbers, (block, a, b) => {
        const [first, second] = [flowGroup(parsePrefix(block), a), flowGroup(parsePrefix(block), b)];
        expect(first !== undefined && isFlooded(first)).toBe(false);
        if (a !== b && first !== undefined && second !== undefined)
          expect(shareHardwareAddress(first, second)).toBe(false);
      }),
    );
  });

  test('need a multicast block', () => {
    expect(() => flowGroup(parsePrefix('10.0.0.0/8'), 1)).toThrow('multicast group 10.0.0.0 is refused');
  });
});
