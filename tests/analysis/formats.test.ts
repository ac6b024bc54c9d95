import { expect, test } from 'vitest';
import { formatFormat } from '../../src/physics/raster.ts';
import { analysisOf, deliveryOf, kits } from './plans.ts';

const converters = `
kit up_converter { inputs in1 as hdmi_2_0 outputs out1 as sdi_12g follow in1 }
kit scaler { inputs in1 as hdmi_2_0 outputs out1 as sdi_3g follow in1 gives 1080p50 delay 1 frame }
kit hdmi_box { inputs in[1..2] as hdmi_2_0 outputs out[1..2] as hdmi_2_0 network net as ethernet_10g carries uncompressed }
kit raw_box { inputs in1 as hdmi_2_0 outputs out1 as hdmi_2_0 network net as ethernet_25g carries uncompressed RGB 8 bit }
`;

/** The format on every cable of a feed's way. */
function formatsOf(feed: string, ...statements: string[]): (string | undefined)[] {
  const { routes } = deliveryOf(analysisOf(kits, converters, ...statements), feed);
  return routes[0]!.steps.map(({ format }) => format && formatFormat(format));
}

const faultsOf = (feed: string, ...statements: string[]) =>
  deliveryOf(analysisOf(kits, converters, ...statements), feed).formatFaults;

test('what a source leaves out follows from its connector: SDI or HDMI', () => {
  expect(
    formatsOf(
      'cam -> screen',
      'node s : splitter',
      'source cam sends 1080p50 as sdi_3g into s.in1',
      'destination screen from s.out1',
      'feed cam -> screen',
    ),
  ).toEqual(['1080p50 4:2:2 10 bit audio 16', '1080p50 4:2:2 10 bit audio 16']);
});

test('the network and SDI carry 4:2:2 10 bit whatever HDMI delivered, with the sound of the source', () => {
  expect(
    formatsOf(
      'laptop -> screen',
      'node a : hdmi_box',
      'node b : edge_box',
      'link a.net <-> b.net1 over cat6a 5 m',
      'source laptop sends 1080p60 as hdmi_2_0 into a.in1',
      'destination screen from b.out1',
      'feed laptop -> screen',
    ),
  ).toEqual(['1080p60 RGB 8 bit audio 2', '1080p60 4:2:2 10 bit audio 2', '1080p60 4:2:2 10 bit audio 2']);
  expect(
    formatsOf(
      'laptop -> screen',
      'node c : up_converter',
      'source laptop sends 2160p60 as hdmi_2_0 into c.in1',
      'destination screen from c.out1',
      'feed laptop -> screen',
    )[1],
  ).toBe('2160p60 4:2:2 10 bit audio 2');
});

test('a kit may carry RGB as it is', () => {
  expect(
    formatsOf(
      'laptop -> screen',
      'node a : raw_box',
      'node b : raw_box',
      'link a.net <-> b.net over om4 5 m',
      'source laptop sends 1080p60 as hdmi_2_0 into a.in1',
      'destination screen from b.out1',
      'feed laptop -> screen',
    )[1],
  ).toBe('1080p60 RGB 8 bit audio 2');
});

test('an output that gives another format changes the picture from there on, not its sound', () => {
  expect(
    formatsOf(
      'laptop -> screen',
      'node s : scaler',
      'node split : splitter',
      'link s.out1 -> split.in1',
      'source laptop sends 1920x1200p60 as hdmi_2_0 into s.in1',
      'destination screen from split.out1',
      'feed laptop -> screen',
    ),
  ).toEqual([
    '1920x1200p60 RGB 8 bit audio 2',
    '1080p50 4:2:2 10 bit audio 2',
    '1080p50 4:2:2 10 bit audio 2',
  ]);
});

test('a node may say what one of its outputs gives', () => {
  expect(
    formatsOf(
      'cam -> screen',
      'node s : splitter { gives out2 720p50 }',
      'source cam sends 1080p50 as sdi_3g into s.in1',
      'destination screen from s.out2',
      'feed cam -> screen',
    )[1],
  ).toBe('720p50 4:2:2 10 bit audio 16');
});

// 1080p60 is 2.97 Gb/s, HD-SDI stops at 1.485 (SMPTE ST 292-1, second-hand); 2160p60 is 11.88 Gb/s.
test('a picture too big for an interface is told with what it needs and what there is', () => {
  const faults = faultsOf(
    'cam -> screen',
    'kit old { inputs in1 as sdi_hd outputs out1 as sdi_hd follow in1 }',
    'node o : old',
    'source cam sends 1080p60 as sdi_hd into o.in1',
    'destination screen from o.out1',
    'feed cam -> screen',
  );
  expect(faults).toHaveLength(2);
  expect(faults[0]).toMatchObject({
    kind: 'too big',
    needs: 2.97e9,
    limit: 1.485e9,
    unit: 'bits_per_second',
  });
});

// 2160p60 at 10 bit RGB needs 742.5 MHz, the class has 600 MHz (numbers W4.6).
test('on a display link the character rate is what counts', () => {
  const [fault] = faultsOf(
    'laptop -> box.in1',
    'node box : hdmi_box',
    'source laptop sends 2160p60 RGB 10 bit as hdmi_2_0 into box.in1',
    'feed laptop -> box.in1',
  );
  expect(fault).toMatchObject({ kind: 'too big', needs: 742.5e6, limit: 600e6, unit: 'hz' });
});

// Without its coding a fixed-rate link of 4 x 8 Gb/s has 28.44 Gb/s (16 of 18 bits); 2160p119.88 at 8 bit has a pixel clock
// of 1188/1.001 MHz, 24 bit each: 28.48 Gb/s: it fits only if the blanking is compacted (numbers 4, doubt).
test('on fixed-rate lanes like is compared with like, and what depends on the devices is doubtful', () => {
  const [fault] = faultsOf(
    'laptop -> box.in1',
    'interface lanes_8g { signal hdmi clock 600 MHz lanes 4 of 8 Gb/s }',
    'kit wall { inputs in1 as lanes_8g }',
    'node box : wall',
    'source laptop sends 2160p119.88 as lanes_8g into box.in1',
    'feed laptop -> box.in1',
  );
  expect(fault).toMatchObject({ kind: 'doubtful', unit: 'bits_per_second' });
  const { needs, limit } = fault as { needs: number; limit: number };
  expect(needs / 1e9).toBeCloseTo((1188 / 1.001) * 24e-3, 6);
  expect(limit / 1e9).toBeCloseTo((32 * 16) / 18, 6);
});

test('sound does not ride on a picture interface, nor a picture on one for sound', () => {
  const plan = [
    'kit desk { inputs mic as aes3 inputs in1 as sdi_3g }',
    'node d : desk',
    'source mics sends audio 2 as aes3 into d.mic',
    'source tone sends audio 2 as sdi_3g into d.in1',
    'feed mics -> d.mic',
    'feed tone -> d.in1',
  ];
  expect(faultsOf('mics -> d.mic', ...plan)).toEqual([]);
  expect(faultsOf('tone -> d.in1', ...plan)).toMatchObject([{ kind: 'not carried' }]);
});

test('standard definition rides on an interface that accepts it, and on no other', () => {
  const on = (face: string) =>
    faultsOf(
      'cam -> box.in1',
      `kit one { inputs in1 as ${face} }`,
      'interface hd_only { signal sdi rate 1.485 Gb/s }',
      'node box : one',
      `source cam sends 576i50 as ${face} into box.in1`,
      'feed cam -> box.in1',
    ).map(({ kind }) => kind);
  expect(on('sdi_3g')).toEqual([]);
  expect(on('sdi_sd')).toEqual([]);
  expect(on('hd_only')).toEqual(['not carried']);
});

test('a destination takes what it states, to the exact rate', () => {
  const taken = (formats: string) =>
    faultsOf(
      'cam -> screen',
      'node s : splitter',
      'source cam sends 1080p59.94 as sdi_3g into s.in1',
      `destination screen ${formats} from s.out1`,
      'feed cam -> screen',
    ).map(({ kind }) => kind);
  expect(taken('')).toEqual([]);
  expect(taken('takes 1080p59.94')).toEqual([]);
  expect(taken('takes 1080p60')).toEqual(['not taken']);
  expect(taken('takes 1080p50, 1080p59.94')).toEqual([]);
  expect(taken('takes 1080p59.94 4:4:4')).toEqual(['not taken']);
});

test('a copy-protected picture may not leave display links', () => {
  const stays = [
    'kit hdmi_split { inputs in1 as hdmi_2_0 outputs out[1..2] as hdmi_2_0 follow in1 }',
    'node h : hdmi_split',
    'node c : up_converter',
    'link h.out2 -> c.in1',
    'source disc sends 1080p60 as hdmi_2_0 into h.in1 encrypted',
    'destination near from h.out1',
    'destination far from c.out1',
    'feed disc -> near, far',
  ];
  expect(faultsOf('disc -> near', ...stays)).toEqual([]);
  const [fault] = faultsOf('disc -> far', ...stays);
  expect(fault).toMatchObject({ kind: 'protected', step: { link: { name: 'c.out1>far' } } });
});

test('a source without a format counts nothing and is no fault of its feeds', () => {
  const analysis = analysisOf(
    kits,
    'node a : edge_box',
    'node b : edge_box',
    'link a.net1 <-> b.net1 over cat6a 5 m',
    'source cam as sdi_3g into a.in1',
    'destination screen takes 1080p50 from b.out1',
    'feed cam -> screen',
  );
  const delivery = deliveryOf(analysis, 'cam -> screen');
  expect(delivery.format).toBeUndefined();
  expect(delivery.formatFaults).toEqual([]);
  expect(analysis.sourceFigures.get('cam')!.format).toBeUndefined();
});

test('interlaced pictures have the house rate by their fields', () => {
  const differs = (format: string) =>
    analysisOf('plan "p" { rate 50 }', `source s sends ${format}`).sourceFigures.get('s')!.rateDiffers;
  expect([differs('1080i50'), differs('1080p50'), differs('1080p25'), differs('audio 2')]).toEqual([
    false,
    false,
    true,
    false,
  ]);
});
