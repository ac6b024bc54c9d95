/** The drawing as SVG: whole, readable in black and white, harmless whatever a plan calls its things. */
import { describe, expect, test } from 'vitest';
import { inkOn, pictureColour } from '../../src/documents/drawing/colours.ts';
import { drawParts, drawSvg } from '../../src/documents/drawing/draw-svg.ts';
import { placeScene } from '../../src/documents/drawing/place-scene.ts';
import type { Scene } from '../../src/documents/drawing/scene.ts';
import { type ThemeName, themes } from '../../src/documents/drawing/themes.ts';
import { wordsOf } from './geometry.ts';
import { exampleNames, sceneOfExample, sceneOfMistakes, sceneOfText } from './scenes.ts';

const finals = sceneOfExample('finals');
const placement = await placeScene(finals);
const themeNames = Object.keys(themes) as ThemeName[];

/** Elements and attributes that a drawing is made of; nothing of them acts or reads anything. */
const elements = ['svg', 'g', 'title', 'rect', 'circle', 'path', 'text', 'defs', 'pattern'];

describe('the document', () => {
  const svg = drawSvg(finals, placement);

  test('has only elements that draw', () => {
    const used = new Set([...svg.matchAll(/<([a-z]+)/g)].map(([, name]) => name));
    expect([...used].filter((name) => !elements.includes(name!))).toEqual([]);
  });

  test('has no style, no script, no address but that of its own language', () => {
    expect(svg).not.toMatch(/\sstyle=|<style|<script|\son[a-z]+=|href/);
    expect([...svg.matchAll(/\b(?:https?|data|file):[^"' ]*/g)].map(([all]) => all)).toEqual([
      'http://www.w3.org/2000/svg',
    ]);
  });

  test('closes what it opens', () => {
    for (const name of elements) {
      const opened = [...svg.matchAll(new RegExp(`<${name}[ >](?:[^>]*[^/])?>|<${name}>`, 'g'))].length;
      const closed = [...svg.matchAll(new RegExp(`</${name}>`, 'g'))].length;
      expect(opened, name).toBe(closed);
    }
  });

  test('has every thing once, with its words', () => {
    const { boxes, wires, ribbons, rooms } = finals;
    const groups = [...svg.matchAll(/<g class="(\w+)" data-id="([^"]*)"[^>]*aria-label="([^"]*)"/g)];
    expect(groups.length).toBe(boxes.length + wires.length + ribbons.length + rooms.length);
    for (const [, , id, words] of groups) expect(words!.length, id).toBeGreaterThan(2);
  });
});

describe('every figure that is drawn is said', () => {
  test.each(exampleNames)('%s', async (name) => {
    const scene = sceneOfExample(name);
    const at = await placeScene(scene);
    for (const { segment } of scene.situations) {
      for (const markup of drawParts(scene, at, { segment }).things.values()) {
        const said = /aria-label="([^"]*)"/.exec(markup)?.[1] ?? '';
        const drawn = [...markup.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, words]) => words!);
        for (const figure of drawn.flatMap(
          (words) => words.match(/\d+(?:\.\d+)? (?:%|(?:m|ft|dB|frames?|ms|Gb\/s|Mb\/s)\b)/g) ?? [],
        ))
          expect(said).toContain(figure);
      }
    }
  });
});

describe('in black and white', () => {
  test('every strand has the number of its picture', () => {
    const strands = finals.situations[0]!.ribbons.find(({ ribbon }) => ribbon === 'trunk')!;
    const markup = drawParts(finals, placement).things.get('ribbon trunk')!;
    const numbers = [...markup.matchAll(/<text[^>]*>(\d+)<\/text>/g)].map(([, number]) => Number(number));
    const pictures = [...strands.forward.strands, ...strands.backward.strands].map(({ picture }) => picture);
    expect(numbers.sort()).toEqual(pictures.sort());
  });

  test('what stands by is dashed, what warns is pointed', async () => {
    const things = drawParts(finals, placement).things;
    expect(things.get('ribbon trunk_b')).toContain('stroke-dasharray');
    expect(things.get('ribbon trunk_b')).toContain('stands by for T1');
    const warning = things.get('wire tie_1')!;
    expect(warning).toContain('near its limit');
    expect(warning).toMatch(/<path d="M[\d.]+ [\d.]+l6 -/);
  });

  test('what does not fit into a link is told by a hatched bar and in words', async () => {
    const loads = sceneOfMistakes('loads.feedplot');
    const { things, legend } = drawParts(loads, await placeScene(loads));
    const over = things.get('ribbon second_trunk')!;
    expect(over.match(/url\(#hatch\)/g)).toHaveLength(1);
    expect(over).toContain('▲ 10.74 of 10 Gb/s:');
    expect(over).toContain('735.1 Mb/s too much');
    expect(legend).toContain('A hatched bar');
    expect(things.get('ribbon trunk')).not.toContain('hatch');
    expect(drawParts(finals, placement).legend).not.toContain('hatched');
  });

  test('a screen that no picture reaches is told by a hatched dot, a heavy edge and in words', async () => {
    const ways = sceneOfMistakes('ways.feedplot');
    const { things, legend } = drawParts(ways, await placeScene(ways));
    const [missing] = ways.situations[0]!.watched.filter(({ text }) => text === 'no route');
    const chip = things.get(`box ${missing!.box}`)!;
    expect(chip).toMatch(/<circle [^>]*fill="url\(#hatch\)"/);
    expect(chip).toContain('stroke-width="2.2"');
    expect(chip).toContain('▲ no route');
    expect(legend).toContain('A hatched dot');
    // A screen that shows nothing on purpose has an empty ring.
    const dark = drawParts(finals, placement, { segment: 'interval' }).things.get('box projector')!;
    expect(dark).not.toContain('hatch');
    expect(dark).toContain('stroke-dasharray="2 3"');
  });

  test.each(exampleNames)('no words lie on a strand: %s', async (name) => {
    const scene = sceneOfExample(name);
    const placed = await placeScene(scene);
    let strands = 0;
    for (const { segment } of scene.situations) {
      const { things } = drawParts(scene, placed, { segment });
      for (const words of wordsOf(scene, placed, segment).filter(({ text }) => text.endsWith('free'))) {
        const colours = scene.pictures.map(({ number }) => pictureColour(number));
        const rects = things
          .get(words.thing)!
          .matchAll(/<rect x="([-\d.]+)" y="([-\d.]+)" width="[\d.]+" height="([\d.]+)" fill="(#\w+)"\/>/g);
        for (const [, , y, height, fill] of rects) {
          if (!colours.includes(fill!)) continue;
          strands++;
          const isApart =
            words.at.y >= Number(y) + Number(height) - 0.5 || words.at.y + words.at.height <= Number(y) + 0.5;
          expect(isApart, `“${words.text}” of ${words.thing}`).toBe(true);
        }
      }
    }
    expect(strands).toBeGreaterThan(5);
  });

  test('a segment without a link shows it out of service', async () => {
    const arena = sceneOfExample('arena');
    const { things } = drawParts(arena, await placeScene(arena), { segment: 'spare_test' });
    expect(things.get('ribbon trunk_a')).toContain('out of service');
    expect(things.get('ribbon trunk_spare')).not.toContain('stands by');
  });
});

describe('parts of the show', () => {
  test('have everything in the same place: only colours, numbers and words differ', () => {
    /** All coordinates of boxes, rooms and lanes. */
    const places = (segment: string | null) =>
      [...drawParts(finals, placement, { segment }).things]
        .filter(([key]) => !key.startsWith('wire'))
        .map(([key, markup]) => [key, /<rect [^>]*?(?=rx|fill)/.exec(markup)?.[0]]);
    for (const { segment } of finals.situations) expect(places(segment)).toEqual(places(null));
  });

  test('an unknown one is the plan as it always is', () => {
    expect(drawSvg(finals, placement, { segment: 'no such' })).toBe(drawSvg(finals, placement));
  });

  test('are named at the head', () => {
    expect(drawSvg(finals, placement, { segment: 'results' })).toContain(
      'revision C · 2027-05-14 · Scores on the monitor · worst link T1',
    );
  });
});

describe.each(themeNames)('the theme %s', (theme) => {
  test('has words only in its own two inks, or in what is read on a badge', () => {
    const { ink, faint } = themes[theme];
    const allowed = new Set<string>([
      ink,
      faint,
      ...finals.pictures.map(({ number }) => inkOn(pictureColour(number))),
    ]);
    for (const { segment } of finals.situations) {
      const svg = drawSvg(finals, placement, { theme, segment });
      const inks = [...svg.matchAll(/<text[^>]* fill="(#\w+)"/g)].map(([, colour]) => colour!);
      expect(inks.length).toBeGreaterThan(100);
      expect([...new Set(inks)].filter((colour) => !allowed.has(colour))).toEqual([]);
    }
  });
});

describe('names of any kind', () => {
  const hostile = [
    '<script>alert(1)</script>',
    '"onload="alert(1)',
    "' onclick='alert(1)",
    '&lt;b&gt; & ]]>',
    'ש\u200fלום עולם',
    '\u202Eevil\u202C',
    'x'.repeat(300),
    '😀'.repeat(80),
    '{{1+1}} `2` %s #{3}',
    '\\u003cimg src=x onerror=alert(1)\\u003e',
  ];
  const standIn = 'a label with quotes';
  /** A plan cannot write straight quotes into a label; what else makes a scene might. */
  const quoted = (label: string) => `"${label.includes('"') ? standIn : label}"`;

  test.each(hostile)('%s', async (label) => {
    const written = sceneOfText(`plan ${quoted(label)} { rate 50 revision ${quoted(label)} }
kit box ${quoted(label)} { inputs in1 as sdi_3g outputs out1 as sdi_3g network net as ethernet_10g carries uncompressed }
place __proto__ ${quoted(label)}
place constructor ${quoted(label)}
run __proto__ <-> constructor 10 m
node toString ${quoted(label)} : box at __proto__ { label in1 ${quoted(label)} }
node hasOwnProperty ${quoted(label)} : box at constructor
link valueOf ${quoted(label)} toString.net <-> hasOwnProperty.net over cat6a 10 m
source camera ${quoted(label)} at __proto__ sends 1080p50 as sdi_3g into toString.in1 over rg6 2 m
destination screen ${quoted(label)} at constructor takes 1080p50 as sdi_3g from hasOwnProperty.out1 over rg6 2 m
feed camera -> screen
segment __defineGetter__ ${quoted(label)}`);
    const scene: Scene = JSON.parse(
      JSON.stringify(written).replaceAll(standIn, JSON.stringify(label).slice(1, -1)),
    );
    expect(scene.boxes).toHaveLength(4);
    expect(scene.situations[0]!.traces).toHaveLength(1);
    const at = await placeScene(scene);
    for (const { segment } of scene.situations) {
      const svg = drawSvg(scene, at, { segment });
      const used = new Set([...svg.matchAll(/<([a-zA-Z]+)/g)].map(([, name]) => name));
      expect([...used].filter((name) => !elements.includes(name!))).toEqual([]);
      // Attributes are only ours: what a label brings stays between the quotes.
      const bare = svg.replace(/"[^"]*"|'[^']*'/g, '""').replace(/>[^<]*</g, '><');
      expect(bare).not.toMatch(/alert|onload|onclick|onerror/);
      expect(svg).not.toMatch(/undefined|NaN|\[object/);
      // Marks that turn the direction of writing are shown as what they are.
      expect(svg).not.toMatch(/[\u202a-\u202e\u200f]/);
    }
  });
});

test('a plan without anything says so', async () => {
  const scene = sceneOfText('plan "Empty" { rate 50 }');
  expect(drawSvg(scene, await placeScene(scene))).toContain('Nothing stands anywhere yet.');
});

test('a lane with many strands numbers the heaviest and counts the others', async () => {
  const feeds = Array.from(
    { length: 9 },
    (_, i) => `source s${i} at a sends audio 2 as aes3 into one.in${i} over audio_pair 2 m
destination d${i} at b takes audio 2 as aes3 from two.out${i} over audio_pair 2 m
feed s${i} -> d${i}`,
  ).join('\n');
  const scene = sceneOfText(`plan "Sound" { rate 50 slack 2 m }
kit stage_box { inputs in[0..8] as aes3 outputs out[0..8] as aes3 network net as ethernet_1g carries uncompressed }
place a
place b
run a <-> b 20 m
node one : stage_box at a
node two : stage_box at b
link trunk one.net <-> two.net over cat6a
${feeds}`);
  expect(scene.situations[0]!.ribbons[0]!.forward.strands).toHaveLength(9);
  const markup = drawParts(scene, await placeScene(scene)).things.get('ribbon trunk')!;
  expect(markup).toContain('>+5<');
  const said = /aria-label="([^"]*)"/.exec(markup)![1]!;
  for (let i = 1; i <= 9; i++) expect(said).toContain(`picture ${i}`);
});
