/** What the extension asks the server for a drawing, over the protocol. */
import { expect, test } from 'vitest';
import type { Scene } from '../../src/documents/drawing/scene.ts';
import {
  type Drawing,
  type DrawingQuestion,
  type PlaceInText,
  serverRequests,
  type ThingsAt,
} from '../../src/server/protocol.ts';
import { benchText } from '../bench/plans.ts';
import { Editor } from '../server/client.ts';
import { files, kit, show } from '../server/small-show.ts';

const name = 'show.feedplot';

async function openShow(text = show): Promise<Editor> {
  const editor = await Editor.start({ files });
  await editor.open(name, text);
  return editor;
}

function drawn(editor: Editor, more: Partial<DrawingQuestion> = {}, file = name): Promise<Drawing | null> {
  const question: DrawingQuestion = { uri: editor.uri(file), place: null, have: null, ...more };
  return editor.connection.sendRequest(serverRequests.drawing, question);
}

function thingsAt(editor: Editor, where: string): Promise<ThingsAt | null> {
  const question = { uri: editor.uri(name), position: editor.at(name, where) };
  return editor.connection.sendRequest(serverRequests.thingAt, question);
}

async function placeOf(editor: Editor, id: string, what: string): Promise<string | undefined> {
  const { plan } = (await drawn(editor))!;
  const place = await editor.connection.sendRequest<PlaceInText | null>(serverRequests.thingPlace, {
    plan,
    id,
    what,
  });
  return place ? `${editor.nameOf(place.uri)}: ${editor.slice(name, place.range)}` : undefined;
}

const titlesOf = (scene: Scene | null | undefined) => scene?.boxes.map(({ title }) => title);

test('a plan is drawn from any of its files, what belongs to none is not', async () => {
  await using editor = await Editor.start({ files: { ...files, 'lone.feedplot': kit } });
  await editor.open(name, show);
  await editor.open('kit.feedplot', kit);
  await editor.open('lone.feedplot', kit);
  const own = await drawn(editor);
  expect(own?.plan).toBe(editor.uri(name));
  expect(titlesOf(own?.scene)).toContain('Box S');
  expect((await drawn(editor, {}, 'kit.feedplot'))?.plan).toBe(editor.uri(name));
  expect(await drawn(editor, {}, 'lone.feedplot')).toBeNull();
  expect(await drawn(editor, {}, 'missing.feedplot')).toBeNull();
});

test('a drawing is sent again only when something of it has changed', async () => {
  await using editor = await openShow();
  const first = await drawn(editor);
  expect((await drawn(editor, { have: first!.version }))?.scene).toBeNull();
  await editor.replace(name, 'place desk', '// a remark\nplace desk');
  expect((await drawn(editor, { have: first!.version }))?.scene).toBeNull();

  await editor.replace(name, '"Box S"', '"Box on the stage"');
  const labelled = await drawn(editor, { have: first!.version });
  expect(titlesOf(labelled?.scene)).toContain('Box on the stage');

  await editor.replace(name, 'over rg6 1 m', 'over rg6 2 m');
  const longer = await drawn(editor, { have: labelled!.version });
  expect(longer?.scene?.wires.map(({ text }) => text)).toContain('2 m');
});

test('while the text is broken the last whole drawing stays', async () => {
  await using editor = await openShow();
  const before = await drawn(editor);
  await editor.replace(name, 'node mixer "Mixer"', 'node (( "Mixer"');
  const broken = await drawn(editor, { have: before!.version });
  expect(broken).toMatchObject({ stale: true, scene: null });
  // One who opens the drawing now sees the same.
  expect(titlesOf((await drawn(editor))?.scene)).toContain('Mixer');
  await editor.replace(name, 'node (( "Mixer"', 'node mixer "Mixer"');
  expect(await drawn(editor)).toMatchObject({ stale: false });
});

test('a picture that the broken text has lost is still in the drawing, wherever one looks', async () => {
  await using editor = await openShow();
  const before = await drawn(editor);
  const stage = await drawn(editor, { place: 'stage' });
  await editor.replace(name, 'feed wide -> mixer.in1', 'feed wide -> (( mixer.in1');
  await editor.replace(name, 'over rg6 12 m within', 'over rg6 9 m within');
  expect(await drawn(editor)).toMatchObject({ stale: true, scene: before!.scene });
  expect((await drawn(editor, { place: 'stage' }))?.scene).toEqual(stage!.scene);
});

test('what is typed while a drawing is made is in the next one', async () => {
  await using editor = await openShow(benchText(2000));
  const before = await drawn(editor);
  const making = drawn(editor);
  const edits = [
    ['feed camera0_1 -> mixer0.in1', 'feed camera0_2 -> mixer0.in1'],
    ['feed program0 -> screen0_1', '// feed program0 -> screen0_1'],
  ] as const;
  await Promise.all(edits.map(([from, to]) => editor.replace(name, from, to)));
  expect((await making)?.scene).toEqual(before!.scene);
  expect((await drawn(editor))?.scene).not.toEqual(before!.scene);
}, 60_000);

test('one place is drawn with what is plugged into it', async () => {
  await using editor = await openShow();
  const stage = await drawn(editor, { place: 'stage' });
  expect(stage?.places).toEqual([
    { name: 'desk', title: 'Desk' },
    { name: 'stage', title: 'Stage, left' },
  ]);
  expect(stage?.place).toBe('stage');
  expect(titlesOf(stage?.scene)).toEqual(['Box S', 'Box D', 'Wide camera', 'close', 'Stage screen']);
  expect(stage?.scene?.edition).toContain('Stage, left');
  expect((await drawn(editor, { place: 'gone' }))?.place).toBeNull();
});

test('a plan that is too large is drawn place by place', async () => {
  await using editor = await openShow(benchText(5000));
  const drawing = await drawn(editor);
  expect(drawing).toMatchObject({ onlyPlaces: true, place: 'core_room' });
  expect(drawing!.scene!.boxes.length).toBeLessThan(200);
}, 60_000);

test('every thing of the drawing is found in the text', async () => {
  await using editor = await openShow();
  const { scene } = (await drawn(editor))!;
  for (const { id, kind } of scene!.boxes) expect(await placeOf(editor, id, kind)).toBe(`${name}: ${id}`);
  for (const { id } of scene!.rooms) expect(await placeOf(editor, id, 'room')).toBe(`${name}: ${id}`);
  for (const { id } of scene!.ribbons) expect(await placeOf(editor, id, 'ribbon')).toBe(`${name}: ${id}`);
  for (const { id } of scene!.wires) expect(await placeOf(editor, id, 'wire'), id).toBeDefined();
  expect(await placeOf(editor, 'wide>box_s.in1', 'wire')).toBe(`${name}: wide`);
  expect(await placeOf(editor, 'constructor', 'node')).toBeUndefined();
});

test('the cursor is in what its statement makes', async () => {
  await using editor = await openShow();
  expect(await thingsAt(editor, 'node |mixer')).toEqual({ kind: 'thing', names: ['mixer'] });
  expect(await thingsAt(editor, 'no|de mixer')).toEqual({ kind: 'thing', names: ['mixer'] });
  expect(await thingsAt(editor, 'link tr|unk')).toEqual({ kind: 'thing', names: ['trunk'] });
  expect(await thingsAt(editor, 'link box_d.out1 |->')).toEqual({
    kind: 'thing',
    names: ['box_d.out1>mixer.in1'],
  });
  expect(await thingsAt(editor, 'source wi|de')).toEqual({ kind: 'thing', names: ['wide'] });
  expect(await thingsAt(editor, 'source prog|ram')).toEqual({ kind: 'picture', names: ['program'] });
  expect(await thingsAt(editor, 'place de|sk')).toEqual({ kind: 'room', names: ['desk'] });
  expect(await thingsAt(editor, 'feed program -> scr|een')).toEqual({
    kind: 'feed',
    names: ['program -> screen'],
  });
  expect(await thingsAt(editor, 'plan "Sm|all')).toBeNull();
});
