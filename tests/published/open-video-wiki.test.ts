import { activePayload_bits_per_second } from '../../src/physics/pixel-group.ts';
import { sdiRate_bits_per_second } from '../../src/physics/sdi.ts';
import { picture } from './pictures.ts';
import { published } from './source.ts';

published(
  { source: 'worked calculation at git.ete.moe/CESNET/UltraGrid/wiki/HD-bandwidth', label: 'published' },
  [
    {
      id: 'W1.10',
      what: '1920x1080 at 30 frames/s, 4:2:2 10 bit: active payload, b/s',
      got: () => activePayload_bits_per_second(picture('1080p30')),
      expected: 1_244_160_000,
    },
    {
      what: 'the same with blanking, b/s',
      got: () => sdiRate_bits_per_second(picture('1080p30')) ?? 'none',
      expected: 1_485_000_000,
    },
  ],
);
