import { packFrame } from '../../src/physics/packing.ts';
import {
  firstPacketOffset_s,
  packetSpacing_s,
  type SenderType,
  trafficShape,
} from '../../src/physics/traffic-shape.ts';
import { picture } from './pictures.ts';
import { type Check, published } from './source.ts';

/** Format, packing, C_MAX and VRX_FULL of type N, of type W. */
const SHAPES: readonly (readonly [string, 'equal' | 'block', number, number, number, number])[] = [
  ['1080p50', 'equal', 5, 8, 16, 720],
  ['1080p59.94', 'equal', 6, 9, 16, 863],
  ['1080p59.94', 'block', 5, 9, 16, 822],
  ['2160p50', 'equal', 20, 32, 40, 2880],
];

published(
  { source: 'SMPTE ST 2110-21 §6.3.2, §6.6, §7.1.2-7.1.4, formulas quoted in public', label: 'second-hand' },
  SHAPES.flatMap(([format, packing, narrow, narrowHeld, wide, wideHeld]): Check[] => {
    const shape = (type: SenderType) => {
      const at = picture(format);
      return trafficShape(packFrame(at, packing).packets, at.rate, type);
    };
    const name = `${format}, ${packing} packing`;
    return [
      { what: `${name}: C_MAX, type N`, got: () => shape('narrow').most_ahead_packets, expected: narrow },
      {
        what: `${name}: VRX_FULL, type N`,
        got: () => shape('narrow').receiver_packets,
        expected: narrowHeld,
      },
      {
        what: `${name}: VRX_FULL, type NL`,
        got: () => shape('narrow linear').receiver_packets,
        expected: narrowHeld,
      },
      { what: `${name}: C_MAX, type W`, got: () => shape('wide').most_ahead_packets, expected: wide },
      { what: `${name}: VRX_FULL, type W`, got: () => shape('wide').receiver_packets, expected: wideHeld },
    ];
  }),
);

published({ source: 'public notes on 1080p25 with 4115 packets', label: 'second-hand' }, [
  {
    what: 'packet spacing, microseconds',
    got: () => packetSpacing_s(4115, picture('1080p25').rate) * 1e6,
    expected: 9.33,
    within: 0.005,
  },
  {
    what: 'first packet, ms',
    got: () => firstPacketOffset_s(picture('1080p25').rate) * 1e3,
    expected: 1.529,
    within: 0.0005,
  },
]);
