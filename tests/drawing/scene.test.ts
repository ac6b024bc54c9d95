/** What a drawing shows: the figures of the analysis in words, the pictures where they ride, what is wrong in words. */
import { describe, expect, test } from 'vitest';
import { deliveriesHolding } from '../../src/analysis/holding.ts';
import { loadIn } from '../../src/analysis/traffic.ts';
import { describeTrace, namesOnWays } from '../../src/documents/drawing/descriptions.ts';
import { makeScene } from '../../src/documents/drawing/make-scene.ts';
import type { Scene } from '../../src/documents/drawing/scene.ts';
import { firstLines } from '../../src/extension/webview/first-lines.ts';
import { formatShare } from '../../src/physics/display.ts';
import { findingTexts } from '../support/fixtures.ts';
import { analysisOfExample, exampleNames, sceneOfExample, sceneOfText } from './scenes.ts';

const situationOf = (scene: Scene, segment: string | null) =>
  scene.situations.find((one) => one.segment === segment)!;
const watchedIn = (scene: Scene, box: string, segment: string | null = null) =>
  situationOf(scene, segment).watched.find((one) => one.box === box);
const boxOf = (scene: Scene, id: string) => scene.boxes.find((one) => one.id === id)!;

/** Kits and places for small plans; a box has one network port of 10 Gb/s each way. */
const head = `plan "Small" { rate 59.94 headroom 5 % slack 3 m }
kit box { inputs in[1..6] as sdi_3g outputs out[1..6] as sdi_3g network net[1..2] as ethernet_10g_t carries uncompressed delay 1 frame }
place a "Left"
place b "Right"
run a <-> b 40 m
node one "Box one" : box at a
node two "Box two" : box at b
`;
const camera = (n: number) =>
  `source camera${n} at a sends 1080p59.94 as sdi_3g into one.in${n} over rg6 5 m\n`;
const screen = (n: number, more = '') =>
  `destination screen${n} at b takes 1080p59.94 as sdi_3g from two.out${n} over rg6 5 m ${more}\n`;

describe('figures are those of the analysis', () => {
  test.each(exampleNames)('loads of every link of %s in every part of the show', (name) => {
    const analysis = analysisOfExample(name);
    const scene = makeScene(analysis);
    let compared = 0;
    for (const [i, { ribbons }] of scene.situations.entries()) {
      const { segment } = analysis.situations[i]!;
      for (const { ribbon, forward, backward } of ribbons) {
        const link = analysis.links.find((one) => one.name === ribbon)!;
        const load = loadIn(analysis.traffic[link.index]!, segment);
        for (const [lane, direction] of [
          [forward, load.forward],
          [backward, load.backward],
        ] as const) {
          expect(lane.load_bits_per_second).toBe(direction.load_bits_per_second);
          expect(lane.text).toBe(`${formatShare(1 - direction.share!)} free`);
          expect(lane.strands.length).toBe(direction.flows.length);
          compared++;
        }
      }
    }
    expect(compared).toBeGreaterThan(0);
  });

  test('the trunk of the starter plan, worked out by hand at its head: 80.5 and 53.7 %', () => {
    const scene = sceneOfExample('starter');
    const { forward, backward } = situationOf(scene, null).ribbons[0]!;
    expect(forward.text).toBe('19.5 % free');
    expect(backward.text).toBe('46.3 % free');
    expect(situationOf(scene, null).subtitle).toBe('worst link T1 80.5 %');
    expect(scene.ribbons[0]).toMatchObject({ title: 'T1 · Cat 6A', detail: '58 m, 100 m reach' });
  });

  test('lengths are written in the units of the plan', () => {
    const wire = (name: 'starter' | 'finals', id: string) =>
      sceneOfExample(name).wires.find((one) => one.id === id)?.text;
    expect(wire('starter', 'wide>box_platform.in1')).toBe('18 m');
    // 12 m are 39.37 ft: 1 ft is 0.3048 m exactly (international yard and pound agreement, 1959).
    expect(wire('finals', 'bench>box_p.in1')).toBe('39 ft');
  });

  test('delays stand beneath destinations, with their limit in its unit and whether they were measured', () => {
    const scene = sceneOfExample('finals');
    expect(watchedIn(scene, 'judges')).toMatchObject({ text: '5.5 of 6 frames measured', trouble: false });
    expect(watchedIn(scene, 'overflow')?.text).toMatch(/^\d+(\.\d)? of 150 ms$/);
    expect(watchedIn(scene, 'projector')?.text).toBe('4 frames');
    // A cable alone delays nobody by a frame that could be seen.
    expect(watchedIn(scene, 'foyer_screen')?.text).toBe('0 ms');
  });
});

describe('pictures', () => {
  const scene = sceneOfExample('finals');
  const numberOf = (name: string) => scene.pictures.find((one) => one.name === name)!.number;
  const on = (id: string, segment: string | null = null) =>
    situationOf(scene, segment).wires.find((one) => one.wire === id)?.pictures;

  test('are numbered as their sources are written', () => {
    expect(scene.pictures.map(({ number }) => number)).toEqual(scene.pictures.map((_, i) => i + 1));
    expect(scene.pictures[0]).toMatchObject({ name: 'scores', title: 'Score laptop' });
  });

  test('ride on every cable of their way, also on a looped-through copy', () => {
    expect(on('mixer.out1>box_d.in1')).toEqual([numberOf('program')]);
    expect(on('box_d.loop1>program_split.in1')).toEqual([numberOf('program')]);
    expect(on('program_split.out1>capture')).toEqual([numberOf('program')]);
  });

  test('are on their own cable even while nobody watches them', () => {
    const lone = sceneOfText(`${head}${camera(1)}`);
    expect(situationOf(lone, null).wires[0]!.pictures).toEqual([1]);
  });

  test('begin at the port that makes them', () => {
    const mixer = boxOf(scene, 'mixer').ports.find(({ id }) => id === 'mixer.out1');
    expect(mixer?.begins).toBe(numberOf('program'));
    expect(boxOf(scene, 'bench').picture).toBe(numberOf('bench'));
  });

  test('change with the part of the show, and nothing else does', () => {
    expect(watchedIn(scene, 'judges')?.picture).toBe(numberOf('program'));
    expect(watchedIn(scene, 'judges', 'results')?.picture).toBe(numberOf('clean'));
    expect(watchedIn(scene, 'projector', 'results')).toMatchObject({
      picture: undefined,
      text: 'no picture',
    });
    for (const { wires, ribbons } of scene.situations) {
      expect(wires.map(({ wire }) => wire)).toEqual(scene.wires.map(({ id }) => id));
      expect(ribbons.map(({ ribbon }) => ribbon)).toEqual(scene.ribbons.map(({ id }) => id));
    }
  });

  test('are followed from end to end, in order', () => {
    const trace = situationOf(scene, null).traces.find(({ feed }) => feed === 'clean -> overflow');
    expect(trace?.passes).toEqual([
      'mixer',
      'mixer.out2>box_d.in2',
      'box_d',
      'trunk',
      'box_p',
      'box_p.out2>overflow',
      'overflow',
    ]);
    expect(describeTrace(trace!, namesOnWays(scene))).toMatch(
      /of 150 ms · Vision mixer → Box D → T1 → Box P → Annex screen$/,
    );
  });

  test.each(exampleNames)('every feed of %s that arrives can be followed', (name) => {
    const analysis = analysisOfExample(name);
    const { situations } = makeScene(analysis);
    for (const [i, { traces }] of situations.entries()) {
      const arriving = deliveriesHolding(analysis, analysis.situations[i]!).filter(
        (one) => one.routes.length > 0,
      );
      expect(traces.map(({ feed }) => feed)).toEqual(arriving.map(({ feed }) => feed.name));
      for (const [j, { passes }] of traces.entries())
        for (const { link } of arriving[j]!.routes.flatMap((route) => route.steps))
          expect(passes).toContain(link.name);
    }
  });
});

describe('what is wrong is told in words', () => {
  test('too much for one link: four pictures of 2.684 Gb/s are 10.74 of 10 Gb/s', () => {
    const feeds = [1, 2, 3, 4].map((n) => `${camera(n)}${screen(n)}feed camera${n} -> screen${n}\n`).join('');
    const scene = sceneOfText(`${head}link trunk one.net1 <-> two.net1 over cat6a\n${feeds}`);
    const { forward } = situationOf(scene, null).ribbons[0]!;
    // 4 times 2,683,765,614 b/s (see the tests of the physics) are 10,735,062,456 b/s.
    expect(forward).toMatchObject({
      over: true,
      text: '10.74 of 10 Gb/s: 735.1 Mb/s too much',
      excess: '735.1 Mb/s too much',
    });
  });

  test('a cable that is too long, and one near its limit', () => {
    const scene = sceneOfText(
      `${head}link trunk one.net1 <-> two.net1 over cat6a 120 m\n${camera(1).replace('5 m', '900 m')}${screen(1)}feed camera1 -> screen1`,
    );
    // 10GBASE-T reaches 100 m on Cat 6A (IEEE 802.3 clause 55).
    expect(scene.ribbons[0]).toMatchObject({
      detail: '120 m',
      trouble: { grave: true, text: 'too long: 120 of 100 m' },
    });
    const coax = scene.wires.find(({ id }) => id === 'camera1>one.in1');
    expect(coax?.trouble).toMatchObject({ grave: true });
    expect(coax?.trouble?.text).toMatch(/^too long: [\d.]+ of [\d.]+ dB$/);
    const near = sceneOfExample('finals').wires.find(({ id }) => id === 'tie_1');
    expect(near?.trouble).toMatchObject({ grave: false });
    expect(near?.trouble?.text).toMatch(/^near its limit: [\d.]+ of 20 dB$/);
  });

  test('a destination without a way, one too late, one with two pictures', () => {
    const scene = sceneOfText(
      `${head}link trunk one.net1 <-> two.net1 over cat6a\n${camera(1)}${camera(2)}${screen(1, 'within 1 frame')}${screen(2)}
destination lone at b takes 1080p59.94 as sdi_3g
feed camera1 -> screen1
feed camera1 -> screen2
feed camera2 -> screen2
feed camera1 -> lone`,
    );
    expect(watchedIn(scene, 'lone')).toMatchObject({ text: 'no route', trouble: true, picture: undefined });
    expect(watchedIn(scene, 'screen1')).toMatchObject({ trouble: true });
    expect(watchedIn(scene, 'screen1')?.text).toMatch(/^2(\.\d+)? of 1 frame — too late$/);
    expect(watchedIn(scene, 'screen2')).toMatchObject({ text: 'two pictures at once', trouble: true });
  });

  test('an input that gets its picture too late', () => {
    const scene = sceneOfExample('finals');
    const arrival = situationOf(scene, null).arrivals.find(({ box }) => box === 'mixer.in2');
    expect(arrival).toMatchObject({ text: '2.4 of 3 frames measured', trouble: false });
  });

  test('a standby, and what is out of service', () => {
    const scene = sceneOfExample('arena');
    expect(scene.ribbons.find(({ id }) => id === 'trunk_spare')?.standbyFor).toBe('Trunk A');
    const spare = situationOf(scene, 'spare_test');
    expect(spare.lost).toContain('trunk_a');
    const strands = (id: string, segment: string | null) =>
      situationOf(scene, segment).ribbons.find(({ ribbon }) => ribbon === id)!.forward.strands.length;
    expect(strands('trunk_spare', null)).toBe(0);
    expect(strands('trunk_spare', 'spare_test')).toBe(strands('trunk_a', null));
  });
});

describe('ports', () => {
  test('free ones are seen, three on a side, and the others counted', () => {
    const scene = sceneOfExample('starter');
    const { ports, moreFree } = boxOf(scene, 'box_platform');
    expect(ports.filter(({ free }) => free).map(({ title }) => title)).toEqual(['in4', 'out3', 'out4']);
    expect(moreFree).toBe(0);
    const arena = sceneOfExample('arena');
    const switchF = boxOf(arena, 'sw_foh');
    const used = switchF.ports.filter(({ free }) => !free).length;
    const declared = analysisOfExample('arena').nodes.get('sw_foh')!.kit!.ports.length;
    expect(used + switchF.ports.filter(({ free }) => free).length + switchF.moreFree).toBe(declared);
    for (const side of ['west', 'east'])
      expect(switchF.ports.filter((port) => port.free && port.side === side).length).toBeLessThanOrEqual(3);
  });

  test('have what is written at them', () => {
    const { ports } = boxOf(sceneOfExample('finals'), 'box_d');
    expect(ports.find(({ id }) => id === 'box_d.in1')?.title).toBe('in1 Program');
  });

  test('lie where their cable leaves', () => {
    const scene = sceneOfExample('starter');
    const side = (box: string, port: string) =>
      boxOf(scene, box).ports.find(({ id }) => id === `${box}.${port}`)?.side;
    expect(side('box_platform', 'net')).toBe('east');
    expect(side('box_desk', 'net')).toBe('west');
    expect(side('box_platform', 'in1')).toBe('west');
  });
});

describe('a part of a plan', () => {
  const analysis = analysisOfExample('arena');

  test('one place: what stands there and what is plugged into it', () => {
    const scene = makeScene(analysis, { place: 'gallery' });
    expect(scene.boxes.map(({ id }) => id)).toEqual(['spot_in', 'spot']);
    expect(scene.edition).toMatch(/ · Upper gallery, east$/);
    expect(scene.pictures.map(({ name }) => name)).toEqual(['spot']);
  });

  test('one picture: what carries it, in any part of the show', () => {
    const scene = makeScene(analysis, { source: 'live' });
    expect(scene.boxes.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['mixer', 'box_c', 'box_s', 'side_left', 'side_right']),
    );
    expect(scene.boxes.map(({ id }) => id)).not.toContain('camera_decoder');
  });

  test('one feed', () => {
    const scene = makeScene(analysis, { feed: 'sides -> side_left' });
    const ids = scene.boxes.map(({ id }) => id);
    expect(ids).toContain('side_left');
    expect(ids).not.toContain('side_right');
  });

  test('a feed without a way shows its two ends', () => {
    const scene = makeScene(analysisOfExample('starter'), { feed: 'no -> such' });
    expect(scene.boxes).toEqual([]);
    const lone = sceneOfText(`${head}${camera(1)}${screen(1)}feed camera1 -> screen1`, {
      feed: 'camera1 -> screen1',
    });
    expect(lone.boxes.map(({ id }) => id)).toEqual(['camera1', 'screen1']);
  });
});

test('with the lines that are shown while nothing is drawn, something is, and nothing is wrong', () => {
  const plan = `plan "First" { rate 59.94 }\n${firstLines}\n`;
  expect(findingTexts(plan)).toEqual([]);
  const { boxes, wires } = sceneOfText(plan);
  expect(boxes.map(({ id }) => id)).toEqual(['mixer', 'camera']);
  expect(wires).toHaveLength(1);
});
