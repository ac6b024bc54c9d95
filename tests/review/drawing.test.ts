import { expect, test } from 'vitest';
import { arrow } from '../../src/documents/drawing/compare-scenes.ts';
import { drawSvg } from '../../src/documents/drawing/draw-svg.ts';
import { marksIn, seatOf } from '../../src/documents/drawing/marks.ts';
import { placeScene } from '../../src/documents/drawing/place-scene.ts';
import { reviewScenes } from '../../src/documents/review/scenes.ts';
import { sideOf } from './reviews.ts';
import { changed, kit, plan, withCamera } from './shows.ts';

const show = changed(plan, 'import "kit.feedplot"', kit);

const compared = (old: string, fresh: string) =>
  reviewScenes(sideOf(old, 'a').analysis, sideOf(fresh, 'b').analysis);

const marked = (
  old: string,
  fresh: string,
  side: 'before' | 'after' = 'after',
  segment: string | null = null,
) => [...marksIn(compared(old, fresh).marks[side], segment)].map(([id, mark]) => `${mark} ${id}`).sort();

test('nothing is marked where nothing differs, whatever it is called', () => {
  expect(marked(show, show)).toEqual([]);
  expect(
    marked(
      show,
      changed(changed(show, 'box_p', 'stage_box'), 'place platform', 'place wing')
        .replaceAll(' at platform', ' at wing')
        .replace('desk <-> platform', 'desk <-> wing'),
    ),
  ).toEqual([]);
  expect(marked(show, changed(show, 'box_d.net1 <-> box_p.net1', 'box_p.net1 <-> box_d.net1'))).toEqual([]);
});

test('what is added, and what it changes', () => {
  const more = withCamera(show, 'close', 3);
  expect(marked(show, more)).toEqual(
    ['added box_d.out3>mixer.in3', 'added close', 'added close>box_p.in3', 'changed trunk'].filter(
      (one) => one !== 'changed mixer',
    ),
  );
  expect(marked(more, show)).toEqual([
    'changed trunk',
    'removed box_d.out3>mixer.in3',
    'removed close',
    'removed close>box_p.in3',
  ]);
  expect(marked(more, show, 'before')).toEqual(marked(more, show));
});

test('what stands or is plugged elsewhere has a seat before and a seat after', () => {
  const moved = changed(show, '<-> box_p.net1', '<-> box_p.net2');
  expect(marked(show, moved)).toEqual(['added trunk', `removed ${seatOf('trunk')}`].sort());
  const carried = changed(show, '"Speaker\'s screen" at platform', '"Speaker\'s screen" at desk');
  expect(marked(show, carried)).toEqual(
    [
      'added speaker',
      'added box_p.out1>speaker',
      `removed ${seatOf('speaker')}`,
      `removed ${seatOf('box_p.out1>speaker')}`,
    ].sort(),
  );
});

test('figures stand as before and after', () => {
  const { after } = compared(show, withCamera(show, 'close', 3));
  const load = after.situations[0]!.ribbons.find(({ ribbon }) => ribbon === 'trunk')!;
  expect(load.backward.text).toBe('46.3 % free → 19.5 % free');
  expect(load.forward.text).toBe('73.2 % free');
  const longer = compared(show, changed(show, '40 m "left wall"', '50 m "left wall"')).after;
  expect(longer.ribbons[0]!.detail).toContain('46 m');
  expect(longer.ribbons[0]!.detail).toMatch(/46 m.* → .*56 m/);
  expect(arrow('T1 · 58 m', 'T1 · 64 m')).toBe('T1 · 58 m → 64 m');
  expect(arrow('', '64 m')).toBe('nothing → 64 m');
});

test('what differs in one part of the show only is marked there', () => {
  const text = `${show}segment talk\n`;
  const black = `${text}black speaker in talk\n`;
  expect(marked(text, black)).toEqual([]);
  expect(marked(text, black, 'after', 'talk')).toContain('changed speaker');
});

test('a picture keeps its number in both drawings, and one that is gone has its own', () => {
  const { before, after } = compared(
    withCamera(show, 'close', 3),
    changed(show, 'source right', 'source new_one "New" at desk sends 1080p59.94\nsource right'),
  );
  const numbers = (scene: typeof before) => new Map(scene.pictures.map(({ name, number }) => [name, number]));
  for (const name of ['left', 'right', 'program'])
    expect(numbers(before).get(name)).toBe(numbers(after).get(name));
  expect([...numbers(after).values()]).not.toContain(numbers(before).get('close'));
  expect(new Set(numbers(before).values()).size).toBe(before.pictures.length);
});

test('both drawings have everything in the same places; what came is missing before, what is gone stays in place', async () => {
  const { before, after, marks } = compared(
    withCamera(show, 'close', 3),
    `${show}place lobby\ndestination lobby_screen "Lobby" at desk takes 1080p59.94 as sdi_3g from box_d.out4 over rg6 1 m\n`,
  );
  const placement = await placeScene(after);
  const [left, right] = [
    drawSvg(before, placement, { marks: marks.before }),
    drawSvg(after, placement, { marks: marks.after }),
  ];
  const idsIn = (svg: string) => new Set([...svg.matchAll(/data-id="([^"]*)"/g)].map(([, id]) => id));
  expect(idsIn(left)).not.toContain('lobby_screen');
  expect(idsIn(right)).toContain('lobby_screen');
  expect(idsIn(left)).toContain('close');
  expect(idsIn(right)).toContain('close');
  const at = (svg: string, id: string) =>
    new RegExp(`data-id="${id}"[^>]*>.*?<rect x="([\\d.]+)" y="([\\d.]+)"`).exec(svg)!.slice(1);
  for (const id of ['close', 'box_p', 'mixer']) expect(at(left, id)).toEqual(at(right, id));
});

test('marks are told by shapes: a plus, dots and a minus, and by stepping back', async () => {
  const { after, marks } = compared(
    `${show}place attic\nnode gone : edge_box at desk\n`,
    `${show}node came : mixer_8 at platform\n`,
  );
  const svg = drawSvg(after, await placeScene(after), { marks: marks.after });
  const placed = drawSvg(after, await placeScene(after));
  expect(placed).not.toContain('class="mark"');
  expect(svg.match(/class="mark"/g)).toHaveLength(2);
  expect(svg).toMatch(/<g class="removed"[^>]*stroke-dasharray="1.5 3.5"><g class="node" data-id="gone"/);
  expect(svg).toMatch(/<g class="added"[^>]*><g class="node" data-id="came"/);
  expect(svg).toMatch(/<g class="aside" opacity="0\.34"><g class="node" data-id="mixer"/);
  expect(svg).toContain('A plus in a ring: added.');
});
