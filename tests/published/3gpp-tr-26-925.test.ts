import { approximateLoad } from '../../src/physics/packing.ts';
import { picture } from './pictures.ts';
import { published } from './source.ts';

const gigabits = (format: string) => () => approximateLoad(picture(format)).bits_per_second / 1e9;

// Its "60" columns are 59.94.
const PRINTED: readonly (readonly [string, number, string?, number?])[] = [
  ['1280x720p59.94', 1.178],
  ['1920x1080p50', 2.21],
  ['1920x1080p59.94', 2.65],
  ['3840x2160p50', 8.842],
  ['3840x2160p59.94', 10.6],
  ['3840x2160p100', 17.684],
];

published({ source: '3GPP TR 26.925 §5.4.1, table of video rates, Gb/s', label: 'published' }, [
  { id: 'W1.13', what: '720x576p25', got: gigabits('720x576p25'), expected: 0.221, percent: 0.2 },
  { id: 'W1.9', what: '1280x720p50', got: gigabits('1280x720p50'), expected: 0.982, percent: 0.1 },
  ...PRINTED.map(([format, expected]) => ({ what: format, got: gigabits(format), expected, percent: 0.1 })),
  {
    what: 'its row of 4320 lines, 36.103, is what 7840 pixels give',
    got: gigabits('7840x4320p50'),
    expected: 36.103,
    percent: 0.01,
  },
]);

published({ source: 'VSF TR-05:2018 §7.2.1 for 7680x4320p50', label: 'derived' }, [
  { what: 'the right value, Gb/s', got: gigabits('7680x4320p50'), expected: 35.367, percent: 0.01 },
]);
