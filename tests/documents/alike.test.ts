/** Rooms that are furnished alike are laid out once, and lie as if each had been laid out by itself. */
import elkModule from 'elkjs/lib/elk.bundled.js';
import type { ELK } from 'elkjs/lib/elk-api.js';
import { expect, test } from 'vitest';
import { bookParts } from '../../src/documents/book/book.ts';
import { layOutOnce } from '../../src/documents/drawing/alike.ts';
import { arrange } from '../../src/documents/drawing/arrange.ts';
import { checkedExample, checkedPlan } from '../support/example-plans.ts';

const elk = new (elkModule as unknown as new () => ELK)();

/** So many rooms, each with a camera into a mixer and a screen on it. @param name What its things are called. */
function rooms(name: (room: number) => string, count: number): string {
  const kit =
    'kit box "Box" {\n inputs in[1..2] as sdi_3g\n outputs out[1..2] as sdi_3g\n delay 1 frame\n}\nplan "Rooms" { rate 50 }\n';
  return Array.from({ length: count }, (_, i) => {
    const room = name(i);
    return `place p${i} "${room}"\nnode n${i} "Box ${room}" : box at p${i}\nsource s${i} "Camera ${room}" 1080p50 at p${i} into n${i}.in1 length 5 m\ndestination d${i} "Screen ${room}" at p${i} from n${i}.out1 length 5 m\nfeed s${i} -> d${i}\n`;
  }).reduce((text, one) => text + one, kit);
}

async function layoutsOf(text: string) {
  let layouts = 0;
  const once = layOutOnce((graph) => {
    layouts++;
    return elk.layout(graph);
  });
  const { drawings } = bookParts(checkedPlan(text), new Set(['drawing']));
  const places = drawings.slice(1);
  for (const { scene } of places)
    expect(await arrange(scene, once)).toEqual(await arrange(scene, (graph) => elk.layout(graph)));
  return { drawings: places.length, layouts };
}

test('rooms whose names are as long are one layout, others are layouts of their own', async () => {
  // Digits are equally wide in nearly every face; so they are in the drawing's measures.
  expect(await layoutsOf(rooms((i) => `Room ${i}`, 6))).toEqual({ drawings: 6, layouts: 1 });
  expect(await layoutsOf(rooms((i) => `Room ${'m'.repeat(4 * i)}`, 3))).toEqual({ drawings: 3, layouts: 3 });
});

test('the examples lie as they do without it', async () => {
  for (const name of ['finals', 'arena']) {
    const once = layOutOnce((graph) => elk.layout(graph));
    for (const { scene } of bookParts(checkedExample(name), new Set(['drawing'])).drawings)
      expect(await arrange(scene, once)).toEqual(await arrange(scene, (graph) => elk.layout(graph)));
  }
});
