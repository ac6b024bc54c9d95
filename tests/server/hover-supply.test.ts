/** What hovers say of losses, and of what the house and the cases give. */
import { expect, test } from 'vitest';
import type { Hover, MarkupContent } from 'vscode-languageserver-protocol';
import { Editor } from './client.ts';
import { files, show } from './small-show.ts';

async function hovers(text: string): Promise<Editor & { said(where: string): Promise<string> }> {
  const editor = await Editor.start({ files });
  await editor.open('show.feedplot', text);
  const said = async (where: string) => {
    const hover = await editor.ask<Hover | null>('textDocument/hover', 'show.feedplot', where);
    return (hover?.contents as MarkupContent | undefined)?.value ?? '';
  };
  return Object.assign(editor, { said });
}

const withSpare = `${show.replace('feed program -> screen\n', 'feed program -> screen redundant\n')}
place gallery
run stage <-> gallery 30 m
run gallery <-> desk 30 m
link spare box_s.net2 <-> box_d.net2 over cat6a by gallery standby for trunk
`;

test('a link, a run and a node: what goes dark when they fail, and what comes back', async () => {
  await using editor = await hovers(withSpare);
  const back = 'If it fails: back once `spare` is plugged: mixer.in1, mixer.in2, screen';
  expect(await editor.said('link tr|unk')).toContain(back);
  expect(await editor.said('ru|n stage <-> desk')).toContain(back);
  expect(await editor.said('link tr|unk')).toContain(
    'If it fails in **finale**: back once `spare` is plugged',
  );
  expect(await editor.said('node box|_s')).toContain(
    'If it fails: **go dark:** mixer.in1, mixer.in2, screen',
  );
  expect(await editor.said('link box_d.out1 -|> mixer.in1')).toContain('**goes dark:** mixer.in1');
  expect(await editor.said('link sp|are')).not.toContain('If it fails');
});

test('a redundant feed: that it survives, or what breaks it', async () => {
  await using editor = await hovers(withSpare);
  expect(await editor.said('fe|ed program')).toContain('survives any single loss after re-plugging `spare`');
  await editor.replace('show.feedplot', ' by gallery standby for trunk', ' standby for trunk');
  expect(await editor.said('fe|ed program')).toContain('**does not survive** the loss of `stage <-> desk`');
});

// By hand: 12 + 30 W of 16 A x 230 V x 80 % = 2944 W; 6 Mb/s x 1.25 x 1360/1316 = 7.751 Mb/s of half of 20 Mb/s; the
// other 2.249 Mb/s are 1.741 Mb/s before recovery and headers; 50 Mb/s for 8 h are 180 GB; 2 kg and 46 m x 55 g/m = 4.53 kg.
test('circuits, uplinks, cases, stock, recorders and addresses', async () => {
  await using editor = await hovers(`${show
    .replace('slack 3 m', 'slack 3 m\n  lasts 8 h\n  subnet 10.20.0.0/24')
    .replace(
      'place desk "Desk"',
      'place desk "Desk"\nkit player { draws 12 W }\nkit wall { draws 30 W }\ncircuit stage_16 at stage 16 A 230 V\nuplink hall_net at desk 20 Mb/s',
    )
    .replace('source wide "Wide camera" at', 'source wide "Wide camera" : player at')
    .replace('over rg6 12 m\nsource close', 'over rg6 12 m powered by stage_16\nsource close')
    .replace('destination screen "Stage screen" at', 'destination screen "Stage screen" : wall at')
    .replace(
      'within 6 frames',
      'within 6 frames powered by stage_16 streams 6 Mb/s records 50 Mb/s sound after 100 ms',
    )}
stock cat6a 2 of 50 m costs 40
case grey "Case 1" holds trunk, "gaffer tape" weighs 2 kg up to 23 kg
`);
  expect(await editor.said('circuit stage|_16')).toMatch(
    /Carries \*\*42 W\*\* of 2944 W, 80 % of the breaker \(1\.4 %\)[\s\S]*Feeds wide, screen/,
  );
  expect(await editor.said('uplink hall|_net')).toMatch(
    /Usable, half of it: 10 Mb\/s[\s\S]*\*\*7\.751 Mb\/s\*\* \(77\.5 %\)[\s\S]*Another stream of 1\.741 Mb\/s still fits/,
  );
  expect(await editor.said('case gr|ey')).toMatch(
    /Holds trunk, gaffer tape[\s\S]*\*\*4\.8 kg\*\* of 23 kg[\s\S]*Weight not known of gaffer tape/,
  );
  expect(await editor.said('st|ock cat6a')).toMatch(
    /\*\*cat6a\*\* · 2 of 50 m[\s\S]*For trunk[\s\S]*Left over: 1/,
  );
  expect(await editor.said('destination scr|een')).toMatch(
    /Draws 30 W, powered by stage_16[\s\S]*Sound: [\d.]+ ms late[\s\S]*Records 180 GB/,
  );
  expect(await editor.said('node box|_s')).toMatch(/Address `10\.20\.0\.\d+`, assigned/);
});
