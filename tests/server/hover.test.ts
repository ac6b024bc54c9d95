/** What a hover says of everything that has a figure. */
import { expect, test } from 'vitest';
import type { Hover, MarkupContent } from 'vscode-languageserver-protocol';
import { Editor } from './client.ts';
import { files, show } from './small-show.ts';

async function hovers(text = show): Promise<Editor & { said(where: string): Promise<string> }> {
  const editor = await Editor.start({ files });
  await editor.open('show.feedplot', text);
  const said = async (where: string) => {
    const hover = await editor.ask<Hover | null>('textDocument/hover', 'show.feedplot', where);
    return (hover?.contents as MarkupContent | undefined)?.value ?? '';
  };
  return Object.assign(editor, { said });
}

test('a link: both directions with load, share and pictures, the fullest segment, length against reach', async () => {
  await using editor = await hovers();
  const said = await editor.said('link tr|unk');
  // 10GBASE-T reaches 100 m on Cat 6A (IEEE 802.3 clause 55); 40 m of run and twice 3 m of slack.
  expect(said).toMatch(/\| `box_s\.net1` → `box_d\.net1` \| 5\.368 Gb\/s \| 53\.7 % \| wide, close \|/);
  expect(said).toMatch(/\| `box_d\.net1` → `box_s\.net1` \| 2\.684 Gb\/s \| 26\.8 % \| program \|/);
  expect(said).toMatch(/Fullest `box_s\.net1` → `box_d\.net1`: \*\*53\.7 %\*\* of 10 Gb\/s/);
  expect(said).toMatch(/Length: \*\*46 m\*\* from runs and slack by `stage <-> desk`/);
  expect(said).toMatch(/Reach: at most 100 m/);
  expect(said).toMatch(/load of trunk, box_s\.net1 to box_d\.net1: 5\.368 Gb\/s/);
});

test('a link without a name answers on its first word and on its arrow', async () => {
  await using editor = await hovers();
  const said = await editor.said('li|nk mixer.out1');
  expect(said).toMatch(/^`mixer\.out1` → `box_d\.in1` · 3G-SDI over rg6/);
  expect(said).toMatch(/Carries program/);
  expect(await editor.said('link mixer.out1 -|> box_d')).toBe(said);
});

test('a source: its rate on the network and on its cable, with the working', async () => {
  await using editor = await hovers();
  const said = await editor.said('source wi|de');
  expect(said).toMatch(/On the network: \*\*2\.684 Gb\/s\*\*/);
  // SMPTE ST 424: 1080p59.94 in 10 bit 4:2:2 is 2.97/1.001 Gb/s.
  expect(said).toMatch(/On its cable: 2\.967 Gb\/s as 3G-SDI/);
  expect(said).toMatch(/Goes to mixer\.in1/);
  expect(said).toMatch(/= 1920 x 1080 x 20 x 60000\/1001 = 2\.486 Gb\/s/);
});

test('a destination: what feeds it, by which way, how late, in each segment', async () => {
  await using editor = await hovers();
  const said = await editor.said('destination scr|een');
  expect(said).toMatch(/`program` → `screen`: \*\*[\d.]+ ms, 5 frames\*\*, at most 6 frames/);
  expect(said).toMatch(
    /by `mixer\.out1` → `box_d\.in1` → `box_d\.net1` → `box_s\.net1` → `box_s\.out1` → `screen`/,
  );
  expect(said).toMatch(/`clean` → `screen` in \*\*finale\*\*/);
});

test('a node with its ports, a port with what is plugged in, and what is free', async () => {
  await using editor = await hovers();
  const node = await editor.said('node box|_d');
  expect(node).toMatch(/Edge box at desk/);
  expect(node).toMatch(/Free: 2 of 4 inputs, 2 of 4 outputs, 1 of 2 network ports/);
  expect(node).toMatch(/\| `net1` \|\s+\| trunk to `box_s\.net1` \| 1 out 26\.8 %, 2 in 53\.7 % \|/);
  expect(await editor.said('box_s.ne|t1')).toMatch(
    /network port as 10GBASE-T[\s\S]*Plugged: trunk to `box_d\.net1`/,
  );
  expect(await editor.said('box_d.out|2 ->')).toMatch(/output as 3G-SDI[\s\S]*Plugged: `mixer\.in2`/);
});

test('kinds of things: cable, interface, kit', async () => {
  await using editor = await hovers();
  expect(await editor.said('over cat6|a')).toMatch(/`ethernet_10g_t` \| 100 m \| IEEE 802\.3/);
  expect(await editor.said(': mixer|_4 at')).toMatch(
    /4 inputs: in1 \(sdi_3g\)[\s\S]*Delay 1 frame[\s\S]*Nodes: mixer/,
  );
  await editor.open('kit.feedplot', files['kit.feedplot']);
  const hover = await editor.ask<Hover>('textDocument/hover', 'kit.feedplot', 'as sdi|_3g');
  expect((hover.contents as MarkupContent).value).toMatch(/3G-SDI[\s\S]*Rate 2\.97 Gb\/s/);
});

test('places, runs and segments', async () => {
  await using editor = await hovers();
  expect(await editor.said('place sta|ge')).toMatch(
    /Here: box_s, wide, close, screen[\s\S]*Run to desk: 40 m/,
  );
  expect(await editor.said('ru|n stage')).toMatch(/Length: \*\*40 m\*\*[\s\S]*1 cable lies here: trunk/);
  expect(await editor.said('segment fin|ale')).toMatch(
    /`clean` → `screen` in \*\*finale\*\*[\s\S]*Ended here: `program -> screen`/,
  );
});

test('a format: what it asks of the network, of SDI and of a display link', async () => {
  await using editor = await hovers();
  const said = await editor.said('sends 1080p|59.94 into box_s.in1');
  expect(said).toMatch(/On the network: \*\*2\.684 Gb\/s\*\*; one way fit .*3 in 10 Gb\/s/);
  // CTA-861: the pixel clock of 1080p59.94 is 148.352 MHz.
  expect(said).toMatch(/On a display link: 148\.352 MHz/);
});

test('words of the language, the name of a check, a length in the other unit', async () => {
  await using editor = await hovers(`${show}accept link-unused on trunk "to come"\n`);
  expect(await editor.said('instead o|f program')).toMatch(/`instead of` – Takes the place/);
  expect(await editor.said('no|de box_s')).toMatch(/One box of a kit[\s\S]*```feedplot/);
  expect(await editor.said('accept link-un|used')).toMatch(/\*\*link-unused\*\* · \w+/);
  expect(await editor.said('desk 4|0 m')).toBe('40 m is 131 ft');
});

test('a file that no plan imports still has help for its words', async () => {
  await using editor = await Editor.start({ files: {} });
  await editor.open('lone.feedplot', 'place desk "Desk"\n');
  const hover = await editor.ask<Hover>('textDocument/hover', 'lone.feedplot', 'pla|ce');
  expect((hover.contents as MarkupContent).value).toMatch(/A spot where kit stands/);
  expect(await editor.ask('textDocument/hover', 'lone.feedplot', 'place de|sk')).toBeNull();
});

test('names and descriptions cannot smuggle in Markdown or HTML', async () => {
  const evil = '/** <img src=x> [click](command:evil) */\nsegment evil_one "**bold** <script>`"\n';
  await using editor = await hovers(show + evil);
  const said = await editor.said('segment evi|l_one');
  expect(said).toContain('\\*\\*bold\\*\\* \\<script\\>\\`');
  expect(said).toContain('\\<img src=x\\> \\[click\\]');
});
