import { ROW_HEADER_OCTETS, SEQUENCE_OCTETS } from '../../src/physics/packet-headers.ts';
import { packFrame } from '../../src/physics/packing.ts';
import { activePayload_bits_per_second, bitsPerPixel, pixelGroup } from '../../src/physics/pixel-group.ts';
import { LARGEST_SIDE, type Sampling } from '../../src/physics/raster.ts';
import { picture } from './pictures.ts';
import { type Check, published } from './source.ts';

function group(sampling: Sampling, depth_bits: number, expected: string): Check {
  return {
    what: `${sampling} at ${depth_bits} bit: octets / pixels of a group`,
    got: () => {
      const { octets, pixels } = pixelGroup(sampling, depth_bits);
      return `${octets}/${pixels}`;
    },
    expected,
  };
}

published({ source: 'RFC 4175 (September 2005) §4.3, pixel groups', label: 'published' }, [
  group('4:2:2', 8, '4/2'),
  group('4:2:2', 10, '5/2'),
  group('4:2:2', 12, '6/2'),
  group('4:2:2', 16, '8/2'),
  group('4:4:4', 8, '3/1'),
  group('4:4:4', 10, '15/4'),
  group('4:4:4', 12, '9/2'),
  group('4:4:4', 16, '6/1'),
  group('RGB', 8, '3/1'),
  group('RGB', 10, '15/4'),
  group('RGB', 12, '9/2'),
  group('RGB', 16, '6/1'),
  group('4:2:0', 8, '6/4'),
  group('4:2:0', 12, '9/4'),
]);

// RFC 4175 prints 15 octets for a group it defines as four pixels: 60 bit. An open implementation has eight pixels.
published({ source: 'open implementation of RFC 4175, 4:2:0 at 10 bit', label: 'second-hand' }, [
  group('4:2:0', 10, '15/8'),
]);

published({ source: 'RFC 4175 §4.2, header sizes and 15 bit row numbers', label: 'published' }, [
  { what: 'extended sequence number, octets', got: () => SEQUENCE_OCTETS, expected: 2 },
  { what: 'row header, octets', got: () => ROW_HEADER_OCTETS, expected: 6 },
  { what: 'largest number of a row or pixel', got: () => LARGEST_SIDE, expected: 32_767 },
]);

const USEFUL_BITS: readonly (readonly [Sampling, number, number])[] = [
  ['4:2:2', 8, 16],
  ['4:2:2', 10, 20],
  ['4:2:2', 12, 24],
  ['4:4:4', 8, 24],
  ['4:4:4', 10, 30],
  ['4:4:4', 12, 36],
  ['4:2:0', 8, 12],
  ['4:2:0', 10, 15],
  ['4:2:0', 12, 18],
];

published({ source: 'RFC 4175 §4.3, samples times depth', label: 'derived' }, [
  ...USEFUL_BITS.map(([sampling, depth_bits, expected]) => ({
    what: `${sampling} at ${depth_bits} bit: useful bits a pixel`,
    got: () => bitsPerPixel(sampling, depth_bits),
    expected,
  })),
  {
    id: 'W1.1',
    what: '1920x1080p59.94: active payload, Gb/s',
    got: () => activePayload_bits_per_second(picture('1080p59.94')) / 1e9,
    expected: 2.485834,
    within: 0.00001,
  },
  {
    id: 'W1.2',
    what: '1920x1080p59.94, four equal packets a row: packets a frame',
    got: () => packFrame(picture('1080p59.94'), 'equal').packets,
    expected: 4320,
  },
]);
