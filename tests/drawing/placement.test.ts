/** Where things lie: no words over words, no cable through a box, and nothing moves that need not. */
import { describe, expect, test } from 'vitest';
import { arrange, type LayOut } from '../../src/documents/drawing/arrange.ts';
import { makeScene } from '../../src/documents/drawing/make-scene.ts';
import { laneHeight, ribbonScale } from '../../src/documents/drawing/measures.ts';
import { placeScene } from '../../src/documents/drawing/place-scene.ts';
import type { Placement } from '../../src/documents/drawing/placement.ts';
import type { Scene } from '../../src/documents/drawing/scene.ts';
import { Random } from '../incremental/random.ts';
import { faultsOf, wordsOf } from './geometry.ts';
import { randomPlan } from './random-plans.ts';
import {
  analysisOfExample,
  analysisOfText,
  exampleNames,
  mistakeNames,
  sceneOfExample,
  sceneOfMistakes,
  sceneOfText,
} from './scenes.ts';

describe('every drawing is clean', () => {
  test.each(exampleNames)('%s', async (name) => {
    const scene = sceneOfExample(name);
    const placement = await placeScene(scene);
    expect(wordsOf(scene, placement, null).length).toBeGreaterThan(40);
    expect(faultsOf(scene, placement)).toEqual([]);
  });

  test.each(exampleNames)(
    'every place and every picture of %s',
    async (name) => {
      const analysis = analysisOfExample(name);
      const choices = [
        ...[...analysis.places.keys()].map((place) => ({ place })),
        ...[...analysis.sources.keys()].map((source) => ({ source })),
      ];
      for (const choice of choices) {
        const scene = makeScene(analysis, choice);
        expect(faultsOf(scene, await placeScene(scene)), JSON.stringify(choice)).toEqual([]);
      }
    },
    120_000,
  );

  test.each(mistakeNames)('mistakes, %s', async (file) => {
    const scene = sceneOfMistakes(file);
    expect(faultsOf(scene, await placeScene(scene))).toEqual([]);
  });

  test('plans by chance', async () => {
    let things = 0;
    for (let start = 0; start < 60; start++) {
      const scene = sceneOfText(randomPlan(new Random(start), 8 + start));
      const placement = await placeScene(scene);
      expect(faultsOf(scene, placement), `the plan of ${start}`).toEqual([]);
      things += placement.boxes.size + placement.wires.size + placement.ribbons.size;
    }
    expect(things).toBeGreaterThan(2000);
  }, 300_000);
});

/** What finds no faults anywhere finds none either where there are some. */
describe('a fault is found', () => {
  const scene = sceneOfExample('starter');
  const shifted = async (change: (placement: Placement) => Partial<Placement>) => {
    const placement = await placeScene(scene);
    return faultsOf(scene, { ...placement, ...change(placement) }).join('\n');
  };

  test('a box over what stands beside it', async () => {
    const faults = await shifted(({ boxes }) => ({
      boxes: new Map(boxes).set('mixer', { ...boxes.get('mixer')!, ...at(boxes.get('box_desk')!) }),
    }));
    expect(faults).toContain('box box_desk lies over box mixer');
    expect(faults).toMatch(/“Box D” of box box_desk lies over|“Vision mixer” of box mixer lies over/);
    expect(faults).toContain('a port of mixer is not on its edge');
  });

  test('a cable through a box', async () => {
    const faults = await shifted(({ boxes, wires }) => {
      const { x, y, width, height } = boxes.get('mixer')!;
      const points = [
        { x: x - 20, y: y + height / 2 },
        { x: x + width + 20, y: y + height / 2 },
      ];
      return { wires: new Map(wires).set('mixer.out1>box_desk.in1', { points, label: undefined }) };
    });
    expect(faults).toContain('cable mixer.out1>box_desk.in1 goes through box mixer');
    expect(faults).toContain('wire mixer.out1>box_desk.in1 does not reach its ports');
  });

  test('words that leave their place', async () => {
    const faults = await shifted(({ ribbons }) => ({
      ribbons: new Map(ribbons).set('trunk', { ...ribbons.get('trunk')!, width: 30 }),
    }));
    expect(faults).toMatch(/“T1 · Cat 6A” of ribbon trunk leaves its place/);
  });

  function at({ x, y }: { x: number; y: number }): { x: number; y: number } {
    return { x, y };
  }
});

describe('what moves', () => {
  /** All of a scene that a layout may read. */
  const shape = ({ rooms, boxes, wires, ribbons }: Scene) => ({ rooms, boxes, wires, ribbons });

  test('the same scene lies the same every time', async () => {
    const scene = sceneOfExample('finals');
    expect(await placeScene(scene)).toEqual(await placeScene(scene));
  });

  test('a load moves nothing: a layout reads nothing of what rides on the cables', async () => {
    const plan = (rate: string) => `plan "Loads" { rate ${rate} }
kit box { inputs in[1..2] as sdi_3g outputs out[1..2] as sdi_3g network net as ethernet_10g carries uncompressed }
place a
place b
node box_a : box at a
node box_b : box at b
link trunk box_a.net <-> box_b.net over cat6a 40 m
source camera at a sends 1080p${rate} as sdi_3g into box_a.in1 over rg6 5 m
destination screen at b takes 1080p${rate} as sdi_3g from box_b.out1 over rg6 5 m
feed camera -> screen`;
    const [slow, fast] = [sceneOfText(plan('25')), sceneOfText(plan('50'))];
    expect(slow.situations[0]!.ribbons[0]!.forward).not.toEqual(fast.situations[0]!.ribbons[0]!.forward);
    expect(shape(slow)).toEqual(shape(fast));
    expect(await placeScene(slow)).toEqual(await placeScene(fast));
  });

  test('rooms stand from left to right as their places are written', async () => {
    const plan = (places: string) => `plan "Order" { rate 50 }
kit box { network net as ethernet_10g forwards }
${places}
node one : box at a
node two : box at b
link one.net <-> two.net over cat6a 10 m`;
    const left = async (places: string, room: string) =>
      (await placeScene(sceneOfText(plan(places)))).rooms.get(room)!.x;
    expect(await left('place a\nplace b', 'a')).toBeLessThan(await left('place a\nplace b', 'b'));
    expect(await left('place b\nplace a', 'b')).toBeLessThan(await left('place b\nplace a', 'a'));
  });
});

describe('ribbons have one scale', () => {
  const scene = sceneOfExample('arena');
  const scale = ribbonScale(scene);
  const heights = new Map(
    scene.ribbons.map((ribbon) => [ribbon.capacity_bits_per_second, laneHeight(ribbon, scale)]),
  );

  test('25 Gb/s are two and a half times as high as 10 Gb/s', () => {
    expect(heights.get(25e9)! / heights.get(10e9)!).toBeCloseTo(2.5, 10);
  });

  test('what would be too thin to see is as high as the floor, and the legend says so', async () => {
    expect(scale.floor_bits_per_second).toBeGreaterThan(1e9);
    const { drawSvg } = await import('../../src/documents/drawing/draw-svg.ts');
    const svg = drawSvg(scene, await placeScene(scene));
    expect(svg).toContain('are drawn higher than they are');
    const starter = sceneOfExample('starter');
    expect(drawSvg(starter, await placeScene(starter))).not.toContain('are drawn higher than they are');
  });
});

test('where the layout cannot keep the order as written it is asked without', async () => {
  const scene = sceneOfText('plan "Empty" { rate 50 }\nplace a\nkit k { draws 1 W }\nnode n : k at a');
  const asked: (string | undefined)[] = [];
  const layOut: LayOut = async (graph) => {
    asked.push(graph.layoutOptions?.['elk.layered.considerModelOrder.strategy']);
    if (asked.length === 1) throw new Error('cannot');
    return graph;
  };
  await arrange(scene, layOut);
  expect(asked).toEqual(['NODES_AND_EDGES', undefined]);
  await expect(arrange(scene, () => Promise.reject(new Error('never')))).rejects.toThrow('never');
});

test('a plan without anything has a drawing without anything', async () => {
  const scene = sceneOfText('plan "Empty" { rate 50 }');
  const placement = await placeScene(scene);
  expect(placement.boxes.size).toBe(0);
  expect(faultsOf(scene, placement)).toEqual([]);
});

test('a node whose kit is not known has the ports that are spoken of', async () => {
  const scene = makeScene(
    analysisOfText(`plan "Unknown" { rate 50 }
place a
node n : missing at a
node m : missing at a
link n.out -> m.in over rg6 3 m`),
  );
  expect(scene.boxes.map(({ ports }) => ports.map(({ id }) => id))).toEqual([['n.out'], ['m.in']]);
  expect(faultsOf(scene, await placeScene(scene))).toEqual([]);
});
