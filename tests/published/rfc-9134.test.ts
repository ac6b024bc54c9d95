import { codedRate_bits_per_second, compressedFactor } from '../../src/physics/flows.ts';
import { picture } from './pictures.ts';
import { published } from './source.ts';

const coded = (bits_per_pixel: number) => () =>
  codedRate_bits_per_second(picture('1080p59.94'), { kind: 'compressed', bits_per_pixel }) / 1e6;

published({ source: 'RFC 9134 (October 2021) §1: visually lossless at 2:1 to 10:1', label: 'published' }, [
  {
    what: '10:1 of 20 bit a pixel is 2 bit a pixel, Mb/s',
    got: () => codedRate_bits_per_second(picture('1080p59.94'), { kind: 'compressed', ratio: 10 }) / 1e6,
    expected: (1920 * 1080 * 2 * 60000) / 1001 / 1e6,
  },
  {
    what: '2:1 of 20 bit a pixel is 10 bit a pixel, Mb/s',
    got: () => codedRate_bits_per_second(picture('1080p59.94'), { kind: 'compressed', ratio: 2 }) / 1e6,
    expected: (1920 * 1080 * 10 * 60000) / 1001 / 1e6,
  },
]);

published(
  { source: 'RFC 9134 §4.3: payload header of 4 octets, packets of 1400 octets of data', label: 'derived' },
  [
    {
      id: 'W2.7',
      what: '1080p59.94 at 2 bit a pixel: codestream, Mb/s',
      got: coded(2),
      expected: 248.58,
      percent: 0.1,
    },
    { what: 'wire octets of a packet', got: () => compressedFactor() * 1400, expected: 1400 + 82 },
    { what: 'the same with a VLAN tag', got: () => compressedFactor(true) * 1400, expected: 1400 + 86 },
  ],
);
