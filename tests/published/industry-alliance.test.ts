import { approximateLoad } from '../../src/physics/packing.ts';
import { sdiOverIp } from '../../src/physics/sdi-over-ip.ts';
import { picture } from './pictures.ts';
import { published } from './source.ts';

published(
  {
    source: "an industry alliance's presentation, 1080p50 as ST 2110-20 and as ST 2022-6",
    label: 'second-hand',
  },
  [
    {
      what: 'ST 2110-20 at the IP layer (packets with 1425 octets of samples), Gb/s',
      got: () => (approximateLoad(picture('1080p50')).packets * 50 * (1425 + 48) * 8) / 1e9,
      expected: 2.143,
      percent: 0.1,
    },
    {
      id: 'W2.6',
      what: 'ST 2022-6 at the IP layer, Gb/s',
      got: () => sdiOverIp(picture('1080p50')).ip_bits_per_second / 1e9,
      expected: 3.074,
      percent: 0.1,
    },
  ],
);
