import { expect, test } from 'vitest';
import { analysisOf } from './plans.ts';

test('an interface accepts what those accept that it accepts, each once, the nearest first', () => {
  const { interfaces } = analysisOf();
  const names = interfaces.get('sdi_12g')!.accepts.map(({ name }) => name);
  expect(names).toEqual(['sdi_12g', 'sdi_6g', 'sdi_3g', 'sdi_hd', 'sdi_sd']);
});

test('interfaces that accept each other in a circle are told and do no harm', () => {
  const { interfaces, cycles } = analysisOf(
    'interface a { signal sdi accepts b }',
    'interface b { signal sdi accepts c }',
    'interface c { signal sdi accepts a }',
  );
  expect(interfaces.get('b')!.accepts.map(({ name }) => name)).toEqual(['b', 'c', 'a']);
  expect(cycles.map(({ kind, statements }) => [kind, statements.length])).toEqual([['accepts', 3]]);
});

test('a cable has from the one it is like what it does not state', () => {
  const { cables } = analysisOf(
    'cable base { medium pair resistance 9 ohm per 100 m delay 5 ns per m }',
    'cable cord { like base stranded 20 % weighs 40 g per m }',
    'cable long_cord { like cord screened }',
  );
  const cord = cables.get('long_cord')!;
  expect(cord).toMatchObject({
    medium: 'twisted pair',
    strandedShare: 0.2,
    screened: true,
    likeCycle: false,
  });
  expect(cord.delay_s_per_m).toBeCloseTo(5e-9, 15);
  expect(cord.knownAs).toEqual(['long_cord', 'cord', 'base']);
});

test('cables that are like each other are told once', () => {
  const { cables, cycles } = analysisOf('cable a { like b }', 'cable b { like a }', 'cable c { like a }');
  expect(cables.get('a')!.likeCycle).toBe(true);
  expect(cycles.map(({ kind, statements }) => [kind, statements.length])).toEqual([['like', 2]]);
});

test('ports are expanded from ranges; loop-throughs follow one by one, a splitter copies one input', () => {
  const { kits } = analysisOf(
    'kit box { inputs in[1..2], usb as sdi_3g outputs loop[1..2] as sdi_3g follow in[1..2] }',
    'kit split { inputs in1 outputs out[1..3] follow in1 }',
  );
  const follows = (kit: string) =>
    kits.get(kit)!.ports.map(({ name, follows: of }) => `${name}<${of?.name ?? ''}`);
  expect(follows('box')).toEqual(['in1<', 'in2<', 'usb<', 'loop1<in1', 'loop2<in2']);
  expect(follows('split')).toEqual(['in1<', 'out1<in1', 'out2<in1', 'out3<in1']);
});

test('an absurd range is cut and told, not expanded', () => {
  const { kits } = analysisOf('kit absurd { inputs in[1..1000000] outputs out[1..1000000] }');
  expect(kits.get('absurd')!.ports.length).toBeLessThanOrEqual(4096);
  const all = analysisOf(
    ...Array.from(
      { length: 3 },
      (_, i) =>
        `kit k${i} { inputs in[1..900] outputs a[1..900], b[1..900], c[1..900], d[1..900], e[1..900] }`,
    ),
  ).kits;
  expect(all.get('k2')!.ports.length).toBeLessThanOrEqual(4096);
  expect(all.get('k2')!.faults.map(({ kind }) => kind)).toContain('range too large');
});

test('mistakes in a kit are told', () => {
  const { kits } = analysisOf(
    'kit wrong {',
    '  inputs in[1..2], in1 as sdi_3g',
    '  outputs a follow gone',
    '  outputs b follow a',
    '  outputs c[1..3] follow in[1..2]',
    '}',
  );
  expect(kits.get('wrong')!.faults.map(({ kind, name }) => `${kind}: ${name}`)).toEqual([
    'port declared twice: in1',
    'follows nothing: gone',
    'follows an output: a',
    'follow counts differ: in',
  ]);
});

test('kits that carry pictures in the same way share a kind', () => {
  const { kits, carriedKinds } = analysisOf(
    'kit a { carries uncompressed }',
    'kit b { carries uncompressed 4:2:2 10 bit }',
    'kit c { carries compressed 8:1 }',
    'kit d { carries compressed at 180 Mb/s }',
  );
  expect(kits.get('a')!.carries).toBe(kits.get('b')!.carries);
  expect(carriedKinds.map(({ text }) => text)).toEqual([
    'uncompressed',
    'compressed 8:1',
    'compressed at 180 Mb/s',
  ]);
});

test('a plan without settings has the defaults', () => {
  const { settings } = analysisOf('place hall');
  expect(settings).toMatchObject({
    statement: undefined,
    headroomShare: 0.1,
    slack_m: 0,
    slackStated: false,
    units: 'metric',
    packing: 'equal',
    tagged: false,
    lipsync: 'bt1359',
    rate: undefined,
  });
});
