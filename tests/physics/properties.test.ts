import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type CoaxLoss, coaxLoss_db, coaxReach_m, fitCoaxLoss } from '../../src/physics/coax.ts';
import { judgeFibre } from '../../src/physics/fibre.ts';
import { flowLoads } from '../../src/physics/flows.ts';
import {
  frameIpOctets,
  frameWireOctets,
  packFrame,
  packFullest,
  pictureLoad_bits_per_second,
} from '../../src/physics/packing.ts';
import { activePayload_bits_per_second } from '../../src/physics/pixel-group.ts';
import { delivered, powerClassOf, poweredDevice } from '../../src/physics/power-over-ethernet.ts';
import { type Picture, SAMPLINGS, type Sampling } from '../../src/physics/raster.ts';
import { frameRate } from '../../src/physics/rate.ts';
import { pairReach_m } from '../../src/physics/twisted-pair.ts';

const samplings = fc.constantFrom<Sampling>(...SAMPLINGS);
const depths = fc.constantFrom(8, 10, 12, 16);
const rates = fc.constantFrom(
  frameRate(24000, 1001),
  frameRate(24, 1),
  frameRate(25, 1),
  frameRate(30, 1),
  frameRate(50, 1),
  frameRate(60000, 1001),
  frameRate(120, 1),
);

/** Any picture that can exist: 4:2:0 wants even columns and rows, interlaced even rows in each field. */
const pictures: fc.Arbitrary<Picture> = fc
  .record({
    width: fc.integer({ min: 1, max: 2000 }),
    height: fc.integer({ min: 1, max: 200 }),
    scan: fc.constantFrom<'p' | 'i'>('p', 'i'),
    rate: rates,
    sampling: samplings,
    depth_bits: depths,
  })
  .map(({ width, height, ...rest }) => ({ width: width * 2, height: height * 4, ...rest }));

const packings = fc.constantFrom<'equal' | 'block'>('equal', 'block');

test('a faster picture is a greater load', () => {
  fc.assert(
    fc.property(pictures, packings, fc.boolean(), (picture, packing, tagged) => {
      const faster = { ...picture, rate: frameRate(picture.rate.numerator * 2, picture.rate.denominator) };
      const load = pictureLoad_bits_per_second(picture, packing, tagged);
      expect(pictureLoad_bits_per_second(faster, packing, tagged)).toBeCloseTo(load * 2, -1);
      expect(load).toBeGreaterThan(0);
    }),
  );
});

test('more rows are a greater load', () => {
  fc.assert(
    fc.property(pictures, packings, (picture, packing) => {
      const taller = { ...picture, height: picture.height + 4 };
      expect(pictureLoad_bits_per_second(taller, packing)).toBeGreaterThan(
        pictureLoad_bits_per_second(picture, packing),
      );
    }),
  );
});

// Equal packets may cost less for a wider row: 1280 pixels need four packets a row to be equal, 1282 cannot be equal
// and need three. Running blocks have no such step, and whole groups keep the last one from hiding a pixel.
test('wider rows are a greater load in blocks', () => {
  fc.assert(
    fc.property(pictures, (picture) => {
      const wider = { ...picture, width: picture.width + 8 };
      expect(pictureLoad_bits_per_second(wider, 'block')).toBeGreaterThan(
        pictureLoad_bits_per_second(picture, 'block'),
      );
      expect(activePayload_bits_per_second(wider)).toBeGreaterThan(activePayload_bits_per_second(picture));
    }),
  );
});

const deeper = fc.constantFrom<readonly [number, number]>([8, 10], [10, 12], [12, 16]);

test('more bits a sample are a greater load', () => {
  fc.assert(
    fc.property(pictures, deeper, (picture, [fewer, more]) => {
      // Whole groups of every depth, so that no row is filled up with zeros, and rows longer than a packet.
      const whole = { ...picture, width: picture.width * 4 + 1280 };
      const thin = { ...whole, depth_bits: fewer };
      const thick = { ...whole, depth_bits: more };
      expect(activePayload_bits_per_second(thick)).toBeGreaterThan(activePayload_bits_per_second(thin));
      expect(packFrame(thick, 'equal').data_octets).toBeGreaterThan(packFrame(thin, 'equal').data_octets);
      expect(pictureLoad_bits_per_second(thick, 'block')).toBeGreaterThan(
        pictureLoad_bits_per_second(thin, 'block'),
      );
    }),
  );
  fc.assert(
    fc.property(pictures, deeper, (picture, [fewer, more]) => {
      const thin: Picture = { ...picture, sampling: '4:2:2', depth_bits: fewer };
      const thick: Picture = { ...picture, sampling: '4:2:2', depth_bits: more };
      expect(pictureLoad_bits_per_second(thick)).toBeGreaterThan(pictureLoad_bits_per_second(thin));
    }),
  );
});

test('no packing has fewer packets than the fullest, nor less on the wire than fewest packets and headers', () => {
  fc.assert(
    fc.property(pictures, packings, (picture, packing) => {
      const fullest = packFullest(picture);
      const frame = packFrame(picture, packing);
      expect(frame.data_octets).toBe(fullest.data_octets);
      expect(frame.packets).toBeGreaterThanOrEqual(fullest.packets);
      const rows = picture.sampling === '4:2:0' ? picture.height / 2 : picture.height;
      const row_headers = Math.max(rows, fullest.packets);
      expect(frameWireOctets(frame)).toBeGreaterThanOrEqual(frameWireOctets({ ...fullest, row_headers }));
    }),
  );
});

test('block packing never beats the fullest packing', () => {
  fc.assert(
    fc.property(pictures, (picture) => {
      const usual = { ...picture, width: picture.width + 640, height: picture.height + 360 };
      expect(frameWireOctets(packFrame(usual, 'block'))).toBeGreaterThan(frameWireOctets(packFullest(usual)));
    }),
  );
});

test('packets keep to the size limit and to three row headers', () => {
  fc.assert(
    fc.property(pictures, packings, (picture, packing) => {
      for (const frame of [packFrame(picture, packing), packFullest(picture)]) {
        expect(frame.row_headers).toBeGreaterThanOrEqual(frame.packets);
        expect(frame.row_headers).toBeLessThanOrEqual(frame.packets * 3);
        expect(frameIpOctets(frame)).toBeLessThanOrEqual(frame.packets * (1460 + 20));
      }
    }),
  );
});

/** The same by walking through the rows, packet by packet. */
function packBlocksByWalking(
  groupsPerRow: number,
  rows: number,
  groupsInPacket: number,
): { packets: number; row_headers: number } {
  let [packets, row_headers, position] = [0, 0, 0];
  const all = groupsPerRow * rows;
  while (position < all) {
    const end = Math.min(all, position + groupsInPacket);
    packets++;
    row_headers += Math.floor((end - 1) / groupsPerRow) - Math.floor(position / groupsPerRow) + 1;
    position = end;
  }
  return { packets, row_headers };
}

test('block packing counts packets and row headers as walking through the rows does', () => {
  fc.assert(
    fc.property(fc.integer({ min: 253, max: 3000 }), fc.integer({ min: 1, max: 500 }), (pairs, rows) => {
      const rate = frameRate(50, 1);
      const frame = packFrame(
        { width: pairs * 2, height: rows, scan: 'p', rate, sampling: '4:2:2', depth_bits: 10 },
        'block',
      );
      expect(frame).toMatchObject(packBlocksByWalking(pairs, rows, 1260 / 5));
    }),
  );
});

test('a source loads a link with the sum of its parts', () => {
  fc.assert(
    fc.property(
      pictures,
      fc.integer({ min: 0, max: 64 }),
      fc.boolean(),
      (picture, audio_channels, tagged) => {
        const format = { kind: 'picture', ...picture, audio_channels } as const;
        const loads = flowLoads(format, { kind: 'uncompressed', packing: 'equal' }, tagged);
        expect(loads.total_bits_per_second).toBeCloseTo(
          loads.picture_bits_per_second + loads.sound_bits_per_second + loads.ancillary_bits_per_second,
          0,
        );
        expect(loads.picture_bits_per_second).toBeGreaterThan(loads.active_bits_per_second);
        const compressed = flowLoads(format, { kind: 'compressed', ratio: 8 }, tagged);
        expect(compressed.picture_bits_per_second).toBeLessThan(loads.picture_bits_per_second / 4);
      },
    ),
  );
});

const stated = fc.uniqueArray(
  fc.record({
    frequency_hz: fc.integer({ min: 1, max: 12_000 }).map((megahertz) => megahertz * 1e6),
    loss_db_per_m: fc.double({ min: 0.001, max: 3, noNaN: true }),
  }),
  { minLength: 1, maxLength: 6, selector: (point) => point.frequency_hz },
);

test('whatever losses are stated, the fitted loss is positive and never falls with frequency', () => {
  fc.assert(
    fc.property(stated, fc.integer({ min: 1, max: 11_000 }), (points, megahertz) => {
      const cable = fitCoaxLoss(points);
      const here = coaxLoss_db(cable, megahertz * 1e6, 100);
      expect(here).toBeGreaterThan(0);
      expect(coaxLoss_db(cable, (megahertz + 1) * 1e6, 100)).toBeGreaterThan(here);
    }),
  );
});

test('a fit through two points of a real cable runs through both', () => {
  const coefficients = fc.record({
    skin_db: fc.double({ min: 5, max: 50, noNaN: true }),
    dielectric_db: fc.double({ min: 0, max: 5, noNaN: true }),
  });
  const frequencies = fc.tuple(fc.integer({ min: 100, max: 2000 }), fc.integer({ min: 2001, max: 12_000 }));
  fc.assert(
    fc.property(coefficients, frequencies, (parts, megahertz) => {
      const real: CoaxLoss = { ...parts, stated: 2 };
      const points = megahertz.map((one) => ({
        frequency_hz: one * 1e6,
        loss_db_per_m: coaxLoss_db(real, one * 1e6, 1),
      }));
      const fitted = fitCoaxLoss(points);
      for (const { frequency_hz, loss_db_per_m } of points) {
        expect(coaxLoss_db(fitted, frequency_hz, 1) / loss_db_per_m).toBeCloseTo(1, 6);
      }
    }),
  );
});

test('a faster interface never reaches further on one cable', () => {
  const budgets = fc.array(
    fc.record({
      budget_db: fc.integer({ min: 10, max: 50 }),
      frequency_hz: fc.integer({ min: 1, max: 60 }).map((n) => n * 1e8),
    }),
    { minLength: 2, maxLength: 5 },
  );
  fc.assert(
    fc.property(stated, budgets, (points, all) => {
      const cable = fitCoaxLoss(points);
      const bySpeed = [...all].sort((a, b) => a.frequency_hz - b.frequency_hz);
      let before = Number.POSITIVE_INFINITY;
      let frequency = 0;
      for (const budget of bySpeed) {
        const reach = coaxReach_m(cable, budget, all);
        if (budget.frequency_hz > frequency) {
          expect(reach).toBeLessThanOrEqual(before);
          before = reach;
          frequency = budget.frequency_hz;
        }
      }
    }),
  );
});

test('a longer cable never has more margin', () => {
  const lengths = fc.tuple(fc.integer({ min: 0, max: 5000 }), fc.integer({ min: 1, max: 5000 }));
  fc.assert(
    fc.property(stated, lengths, (points, [length_m, more_m]) => {
      const cable = fitCoaxLoss(points);
      expect(coaxLoss_db(cable, 1e9, length_m + more_m)).toBeGreaterThan(coaxLoss_db(cable, 1e9, length_m));
    }),
  );
  fc.assert(
    fc.property(lengths, fc.integer({ min: 0, max: 3 }), ([length_m, more_m], connections) => {
      const limits = { reach_m: 300, loss_db: 2.6 };
      const short = judgeFibre({ length_m, loss_db_per_m: 0.003, connections }, limits);
      const long = judgeFibre({ length_m: length_m + more_m, loss_db_per_m: 0.003, connections }, limits);
      expect(long.margin_db!).toBeLessThan(short.margin_db!);
      if (long.fits) expect(short.fits).toBe(true);
      expect(short.fits).toBe(length_m <= short.allowed_m + 1e-6);
    }),
  );
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 8 }), fc.integer({ min: 0, max: 99 }), (number, length_m) => {
      const power = powerClassOf(number);
      const here = poweredDevice(power, length_m);
      const further = poweredDevice(power, length_m + 1);
      expect(further.device_v).toBeLessThan(here.device_v);
      expect(further.supply_w).toBeGreaterThan(here.supply_w);
      // Class 1 is published as 3.84 W, where computation gives 3.83; class 8 as 71.3 W, where it gives 71.28.
      expect(further.supply_w).toBeLessThanOrEqual(power.supply_w * 1.005);
    }),
  );
});

test('what a supply gives is what arrives and what the cable keeps', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 8 }), fc.integer({ min: 0, max: 100 }), (number, length_m) => {
      const power = powerClassOf(number);
      const there = poweredDevice(power, length_m);
      const back = delivered(there.supply_w, power.supply_v, (power.channel_ohm * length_m) / 100);
      expect(back.device_w).toBeCloseTo(there.device_w, 9);
      expect(back.device_v).toBeCloseTo(there.device_v, 9);
    }),
  );
});

test('warmth and stranded cords only take from a reach', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -20, max: 59 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.boolean(),
      (temperature_c, stranded_share, screened) => {
        const reach = pairReach_m(100, { temperature_c, stranded_share, screened });
        expect(reach).toBeLessThanOrEqual(100);
        expect(reach).toBeGreaterThan(0);
        expect(
          pairReach_m(100, { temperature_c: temperature_c + 1, stranded_share, screened }),
        ).toBeLessThanOrEqual(reach);
        expect(pairReach_m(100, { temperature_c, stranded_share, screened: true })).toBeGreaterThanOrEqual(
          reach,
        );
      },
    ),
  );
});
