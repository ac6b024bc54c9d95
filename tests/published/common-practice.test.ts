import { flowsThatFit } from '../../src/physics/capacity.ts';
import { COAX_NEAR_LIMIT } from '../../src/physics/coax.ts';
import { COAX_PROPAGATION } from '../../src/physics/delay.ts';
import { flowLoads } from '../../src/physics/flows.ts';
import { smallestSdi } from '../../src/physics/sdi.ts';
import { picture } from './pictures.ts';
import { published } from './source.ts';

const withSound = (format: string) =>
  flowLoads(picture(format), { kind: 'uncompressed', packing: 'equal' }).total_bits_per_second;

published({ source: 'facts of the trade without a source', label: 'common practice' }, [
  {
    what: 'one direction of 10 Gb/s holds three uncompressed 1080p59.94 with their sound, not four',
    got: () => flowsThatFit(10e9, withSound('1080p59.94')),
    expected: 3,
  },
  {
    what: '3G-SDI takes 1080p60',
    got: () => smallestSdi(picture('1080p60'))?.name ?? 'none',
    expected: '3G-SDI',
  },
  {
    what: 'a 2160p60 picture needs 12G-SDI',
    got: () => smallestSdi(picture('2160p60'))?.name ?? 'none',
    expected: '12G-SDI',
  },
  { what: 'coax keeps a tenth of its reach in hand', got: () => COAX_NEAR_LIMIT, expected: 0.9 },
  { what: 'foamed coax, ns per m', got: () => COAX_PROPAGATION.delay_s_per_m * 1e9, expected: 4 },
]);
