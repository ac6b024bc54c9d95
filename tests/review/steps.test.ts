import { describe, expect, test } from 'vitest';
import type { Review, Step } from '../../src/documents/review/review.ts';
import { reviewed, textsOf } from './reviews.ts';
import { changed, kit, plan, withCamera } from './shows.ts';

const show = changed(plan, 'import "kit.feedplot"', kit);

const after = (...changes: [string, string][]): Review =>
  reviewed(
    show,
    changes.reduce((text, [from, to]) => changed(text, from, to), show),
  );

/** Steps of hands on cables and boxes, without the look at the end. */
const work = ({ steps }: Review): readonly Step[] => steps.filter(({ kind }) => kind !== 'look');

describe('what to do', () => {
  test('a camera more: set it up, plug it, set the output that shows it, look', () => {
    const review = reviewed(show, withCamera(show, 'close', 3));
    expect(textsOf(review)).toEqual([
      'Set up close camera (Camera); power it from Blue socket.',
      'Plug RG-6 class coax, 8 m, from close camera to Box P · in3.',
      'Plug RG-6 class coax, 1 m, from Box D · out3 to Mixer · in3.',
      'Set Box D · out3 to show close camera.',
      'Look: Mixer · in3 shows close camera.',
    ]);
    expect(review.steps.map(({ place }) => place)).toEqual(['Platform', 'Platform', 'Desk', 'Desk', 'Desk']);
    expect(review.steps.flatMap(({ dark }) => dark)).toEqual([]);
  });

  test('a camera less: its picture ends as planned, and nothing is said to go dark', () => {
    const review = reviewed(withCamera(show, 'close', 3), show);
    expect(textsOf(review)).toEqual([
      'Unplug RG-6 class coax from close camera and from Box P · in3.',
      'Unplug RG-6 class coax from Box D · out3 and from Mixer · in3.',
      'Take out close camera: the plan has it no longer.',
    ]);
    expect(review.steps.map(({ dark, ends }) => [dark, ends])).toEqual([
      [[], ['Mixer · in3']],
      [[], []],
      [[], []],
    ]);
  });

  test('a second trunk that takes over: it is plugged and switched to before the first comes out', () => {
    const review = after([
      'link trunk "T1" box_d.net1 <-> box_p.net1',
      'link trunk_c "T3" box_d.net2 <-> box_p.net2',
    ]);
    // Another name, label and sockets at both ends: another cable.
    expect(textsOf(review).slice(0, 2)).toEqual([
      'Lay and plug T3, Cat 6A, 46 m (along left wall), from Box D · net2 here to Box P · net2 at Platform.',
      'Unplug T1 from Box D · net1 here and from Box P · net1 at Platform.',
    ]);
    expect(review.steps.flatMap(({ dark }) => dark)).toEqual([]);
  });

  test('two cables that change their sockets: one end waits, and each picture is dark as short as can be', () => {
    const review = after(
      ['link box_d.out1 -> mixer.in1', 'link box_d.out1 -> mixer.in9'],
      ['link box_d.out2 -> mixer.in2', 'link box_d.out2 -> mixer.in1'],
      ['mixer.in9', 'mixer.in2'],
      ['feed left -> mixer.in1', 'feed left -> mixer.in9'],
      ['feed right -> mixer.in2', 'feed right -> mixer.in1'],
      ['feed left -> mixer.in9', 'feed left -> mixer.in2'],
    );
    expect(work(review).map(({ text, dark, back }) => [text, dark, back])).toEqual([
      [
        'Unplug RG-6 class coax (its other end stays in Box D · out1) from Mixer · in1 and keep it at hand.',
        ['Mixer · in1'],
        [],
      ],
      [
        'Move RG-6 class coax (its other end stays in Box D · out2) from Mixer · in2 to Mixer · in1.',
        ['Mixer · in2'],
        ['Mixer · in1'],
      ],
      [
        'Plug the end of RG-6 class coax (its other end stays in Box D · out1) that you kept at hand into Mixer · in2.',
        [],
        ['Mixer · in2'],
      ],
    ]);
  });

  test('a socket that another cable has to leave first', () => {
    const review = after(
      ['link box_d.out1 -> mixer.in1', 'link box_d.out1 -> mixer.in4'],
      ['link box_d.out2 -> mixer.in2', 'link box_d.out2 -> mixer.in1'],
      ['feed left -> mixer.in1', 'feed left -> mixer.in4'],
      ['feed right -> mixer.in2', 'feed right -> mixer.in1'],
    );
    expect(work(review).map(({ text }) => text)).toEqual([
      'Move RG-6 class coax (its other end stays in Box D · out1) from Mixer · in1 to Mixer · in4.',
      'Move RG-6 class coax (its other end stays in Box D · out2) from Mixer · in2 to Mixer · in1.',
    ]);
  });

  test('a box of another kind stands beside the old one until every cable has moved', () => {
    const review = after(
      ['node box_p "Box P" : edge_box', 'node box_p "Box P" : edge_box_2'],
      [
        'kit mixer_8',
        `${kit.slice(1, kit.indexOf('kit mixer_8')).replace('edge_box "Edge box"', 'edge_box_2 "Edge box, second make"')}kit mixer_8`,
      ],
    );
    const texts = textsOf(review);
    expect(texts.slice(0, 2)).toEqual([
      'Set up the new Box P (Edge box, second make); power it from Blue socket.',
      'Set the new Box P: out1 shows Program.',
    ]);
    expect(texts).toContain(
      'Move T1 (its other end stays in Box D · net1 at Desk) from the old Box P · net1 to the new Box P · net1.',
    );
    expect(texts).toContain('Take out the old Box P: the plan has it no longer.');
    expect(texts.indexOf('Take out the old Box P: the plan has it no longer.')).toBeGreaterThan(
      texts.findLastIndex((text) => text.startsWith('Move')),
    );
  });

  test('a new box gets its address before anything is plugged into it', () => {
    const addressed = changed(show, 'slack 3 m', 'slack 3 m subnet 10.20.0.0/24');
    const { steps } = reviewed(
      addressed,
      `${addressed}node box_a "Box A" : edge_box at desk powered by white { address 10.20.0.9 }\n`,
    );
    expect(steps.map(({ kind, text }) => [kind, text])).toEqual([
      ['set up', 'Set up Box A (Edge box); power it from White socket.'],
      ['set', 'Set Box A: address 10.20.0.9.'],
    ]);
  });

  test('a cable of which both ends move is the same cable: nobody lays a second one', () => {
    const review = after([
      'link trunk "T1" box_d.net1 <-> box_p.net1',
      'link trunk "T1" box_p.net2 <-> box_d.net2',
    ]);
    const all = ['Mixer · in1', 'Mixer · in2', "Speaker's screen"];
    expect(work(review).map(({ place, text, dark, back }) => [place, text, dark, back])).toEqual([
      [
        'Desk',
        'Move one end of T1 (its other end at Platform moves too) from Box D · net1 to Box D · net2.',
        all,
        [],
      ],
      [
        'Platform',
        'Move one end of T1 (its other end at Desk moves too) from Box P · net1 to Box P · net2.',
        [],
        all,
      ],
    ]);
  });

  test('what has another label gets it first, because every later step calls it so', () => {
    const review = after(
      ['node box_p "Box P"', 'node stage_box "Stage box"'],
      ['box_p.', 'stage_box.'],
      ['link trunk "T1"', 'link trunk "Main"'],
    );
    expect(review.steps.map(({ kind, place, text }) => [kind, place, text])).toEqual([
      ['label', 'Platform', 'Label Box P anew: it is called Stage box from now on.'],
      ['label', 'Desk', 'Label T1 anew: it is called Main from now on.'],
    ]);
  });

  test('a box that is carried is unplugged first and plugged last; what is dark meanwhile is said', () => {
    const review = reviewed(
      `${show}place annex "Annex"\nrun platform <-> annex 20 m\n`,
      changed(
        `${show}place annex "Annex"\nrun platform <-> annex 20 m\n`,
        '"Speaker\'s screen" at platform',
        '"Speaker\'s screen" at annex',
      ).replace('box_p.out1 over rg6 6 m', 'box_p.out1 over rg6'),
    );
    expect(work(review).map(({ text, dark, back }) => [text, dark, back])).toEqual([
      ["Unplug RG-6 class coax from Box P · out1 and from Speaker's screen.", ["Speaker's screen"], []],
      ["Carry Speaker's screen here from Platform.", [], []],
      [
        "Lay and plug RG-6 class coax, 26 m (along Platform ↔ Annex), from Box P · out1 here to Speaker's screen at Annex.",
        [],
        ["Speaker's screen"],
      ],
    ]);
  });

  test('another circuit: everything that runs through the box is dark for a moment', () => {
    const review = after([
      'node box_p "Box P" : edge_box at platform powered by blue',
      'node box_p "Box P" : edge_box at platform powered by white',
    ]);
    expect(work(review)).toMatchObject([
      {
        kind: 'power',
        place: 'Platform',
        text: 'Power Box P from White socket instead of Blue socket.',
        dark: ['Mixer · in1', 'Mixer · in2', "Speaker's screen"],
        back: ['Mixer · in1', 'Mixer · in2', "Speaker's screen"],
      },
    ]);
    const second = after([
      'node box_p "Box P" : edge_box at platform powered by blue',
      'node box_p "Box P" : edge_box at platform powered by blue, white',
    ]);
    expect(work(second)).toMatchObject([{ kind: 'power', dark: [], back: [] }]);
  });

  test('a spare is laid and left unplugged; one that becomes the main cable is plugged', () => {
    const spare = `${show}link trunk_b "T2" box_d.net2 <-> box_p.net2 over cat6a standby for trunk\n`;
    expect(textsOf(reviewed(show, spare))).toEqual([
      'Lay T2, Cat 6A, 46 m (along left wall) from Box D to Box P at Platform; leave it unplugged: it is the spare for T1.',
    ]);
    expect(textsOf(reviewed(spare, show))).toEqual([
      'Take up T2, the spare from Box D to Box P at Platform.',
    ]);
    expect(work(reviewed(spare, changed(spare, ' standby for trunk', ''))).map(({ text }) => text)).toEqual([
      'Plug T2, from Box D · net2 here to Box P · net2 at Platform.',
    ]);
    expect(work(reviewed(changed(spare, ' standby for trunk', ''), spare)).map(({ text }) => text)).toEqual([
      'Unplug T2 from Box D · net2 here and from Box P · net2 at Platform. Leave it lying: it is a spare now.',
    ]);
  });

  test('another picture on an output is a setting, told with what it showed', () => {
    const review = after(
      ['feed left -> mixer.in1', 'feed right -> mixer.in1'],
      ['feed right -> mixer.in2', 'feed left -> mixer.in2'],
    );
    expect(work(review).map(({ kind, text }) => [kind, text])).toEqual([
      ['set', 'Set Box D · out1 to show Right camera; it showed Left camera.'],
      ['set', 'Set Box D · out2 to show Left camera; it showed Right camera.'],
    ]);
  });

  test('a proof is of the way that was proved: it is asked for again', () => {
    const proved = `${show}proved left -> mixer.in1 on 2027-05-13\n`;
    const { steps } = reviewed(proved, changed(proved, 'box_d.out1 -> mixer.in1', 'box_d.out4 -> mixer.in1'));
    expect(steps.at(-1)!.text).toBe(
      'Look: Mixer · in1 shows Left camera (proved on 2027-05-13: prove it again).',
    );
  });

  test('what nobody touches is no step: lengths, prices, names, limits', () => {
    for (const [from, to] of [
      ['40 m "left wall"', '44 m "left wall"'],
      ['costs 560', 'costs 600'],
      ['box_p', 'stage_box'],
      ['headroom 10 %', 'headroom 20 %'],
      ['feed program -> speaker', 'feed program -> speaker within 9 frames'],
    ] as const)
      expect(textsOf(after([from, to]))).toEqual([]);
  });

  test('a picture of one segment is named with it', () => {
    const withSegment = `${show}segment talk "The talk"
destination aux "Aux screen" at desk takes 1080p59.94 as sdi_3g from box_d.out4 over rg6 1 m
feed right -> aux
feed left -> aux instead of right in talk
`;
    const { steps } = reviewed(
      withSegment,
      changed(withSegment, 'box_p.in1 over rg6 8 m', 'box_p.in4 over rg6 8 m'),
    );
    expect(steps[0]!.dark).toEqual(['Mixer · in1', 'Aux screen in The talk']);
  });
});

test('where a part of the show loses a picture of its own, what holds always goes on there: nothing ends', () => {
  const own = `${show}segment talk "The talk"\nfeed left -> speaker instead of program in talk\n`;
  const usual = `${show}segment talk "The talk"\n`;
  const moved = changed(usual, 'from box_p.out1 over rg6 6 m', 'from box_p.out2 over rg6 6 m');
  const { steps } = reviewed(own, moved);
  expect(steps.flatMap(({ ends }) => ends)).toEqual([]);
  expect(steps.filter(({ dark }) => dark.length > 0).map(({ dark, back }) => [dark, back])).toEqual([
    [["Speaker's screen"], []],
  ]);
});

describe('seamless pictures', () => {
  const two = `${changed(show, 'feed program -> speaker', 'feed program -> speaker seamless')}link trunk_b "T2" box_d.net2 <-> box_p.net2 over cat6a\n`;

  test('stay on while one of their two ways is worked on', () => {
    const { steps } = reviewed(
      two,
      changed(
        two,
        'link trunk_b "T2" box_d.net2 <-> box_p.net2 over cat6a',
        'link trunk_b "T2" box_d.net2 <-> box_p.net2 over cat6',
      ),
    );
    const unplug = steps.find(({ kind, text }) => kind === 'unplug' && text.includes('T2'));
    expect(unplug?.dark).not.toContain("Speaker's screen");
  });
});
