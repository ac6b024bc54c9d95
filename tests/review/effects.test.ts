import { describe, expect, test } from 'vitest';
import { reviewed } from './reviews.ts';
import { changed, kit, plan, withCamera } from './shows.ts';

const show = changed(plan, 'import "kit.feedplot"', kit);
const after = (...changes: [string, string][]) =>
  reviewed(
    show,
    changes.reduce((text, [from, to]) => changed(text, from, to), show),
  );

describe('loads', () => {
  test('a picture more on the trunk: the direction, both figures, what is added', () => {
    const { loads } = reviewed(show, withCamera(show, 'close', 3));
    expect(loads).toHaveLength(1);
    const [load] = loads;
    expect(load).toMatchObject({
      change: 'raised',
      name: 'trunk',
      title: 'T1',
      direction: 'backward',
      from: 'Box P · net1',
      to: 'Box D · net1',
      gains: [{ name: 'close', title: 'close camera' }],
      loses: [],
    });
    // Two and three pictures of 1080p59.94 in a 10 Gb/s link: 2 683 765 614 b/s each (2 663 985 614 of picture by
    // SMPTE ST 2110-20 packets of equal size, sound and ancillary data beside it), as the table of the plan shows.
    expect(load!.before!.load_bits_per_second).toBeCloseTo(2 * 2_683_765_614, -2);
    expect(load!.after!.load_bits_per_second).toBeCloseTo(3 * 2_683_765_614, -2);
    expect(load!.after!.capacity_bits_per_second).toBe(10e9);
  });

  test('the worst segment is named, and another worst segment is a change', () => {
    const text = `${show}segment talk "The talk"\nfeed left -> recorder instead of record_out in talk\n`;
    expect(reviewed(text, text).loads).toEqual([]);
    const aux = `${withCamera(show, 'close', 3).replace(/feed close .*/, '')}segment talk "The talk"\nfeed close -> mixer.in3 in talk\n`;
    const { loads } = reviewed(show, aux);
    expect(loads).toMatchObject([
      {
        change: 'raised',
        before: { segment: null },
        after: { segment: { name: 'talk', title: 'The talk' } },
      },
    ]);
  });

  test('a trunk written from its other end has the same load; one plugged elsewhere keeps its directions', () => {
    expect(after(['box_d.net1 <-> box_p.net1', 'box_p.net1 <-> box_d.net1']).loads).toEqual([]);
    expect(after(['box_d.net1 <-> box_p.net1', 'box_p.net2 <-> box_d.net1']).loads).toEqual([]);
  });

  test('a slower cable: the same load of less', () => {
    const faster = changed(show, 'network net[1..2] as ethernet_10g', 'network net[1..2] as ethernet_25g');
    const [load] = reviewed(show, changed(faster, 'over cat6a', 'over cat8')).loads;
    expect(load).toMatchObject({ change: 'lowered' });
    expect(load!.after!.share).toBeLessThan(load!.before!.share!);
  });

  test('a trunk that is new, and one that is gone', () => {
    const two = `${show}link trunk_b "T2" box_d.net2 <-> box_p.net2 over cat6a standby for trunk\n`;
    expect(reviewed(show, two).loads).toMatchObject([
      { change: 'added', name: 'trunk_b', before: undefined },
    ]);
    expect(reviewed(two, show).loads).toMatchObject([
      { change: 'removed', name: 'trunk_b', after: undefined },
    ]);
  });
});

describe('pictures', () => {
  test.each<[string, [string, string][], string, string]>([
    [
      'another source',
      [
        ['feed program -> speaker', 'feed right -> speaker\n'],
        ['box_p.out1 over rg6 6 m', 'box_d.out3 over rg6'],
      ],
      'shows another',
      'speaker',
    ],
    ['no wish any more', [['feed program -> speaker', '']], 'loses its picture', 'speaker'],
    [
      'a cable that is gone',
      [['link box_d.out2 -> mixer.in2 over rg6 1 m', '']],
      'loses its picture',
      'mixer.in2',
    ],
    ['another cable on the way', [['box_d.out1 -> mixer.in1', 'box_d.out3 -> mixer.in1']], '', ''],
    ['more delay', [['delay 1 frame\n  draws 60', 'delay 2 frames\n  draws 60']], 'later', 'speaker'],
    ['less delay', [['delay 1 frame\n  draws 60', 'delay 0 ms\n  draws 60']], 'sooner', 'speaker'],
  ])('%s', (_, changes, change, name) => {
    const { pictures } = after(...changes);
    if (change === '') expect(pictures).toEqual([]);
    else expect(pictures).toContainEqual(expect.objectContaining({ change, name }));
  });

  test('the worst stands first', () => {
    const { pictures } = after(
      ['delay 1 frame\n  draws 18', 'delay 2 frames\n  draws 18'],
      ['feed right -> mixer.in2', ''],
      ['feed record_out -> recorder', 'feed record_out -> recorder\nfeed left -> mixer.in2'],
    );
    const order = ['loses its picture', 'shows another', 'gains a picture', 'another way', 'later', 'sooner'];
    const ranks = pictures.map(({ change }) => order.indexOf(change));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(new Set(ranks).size).toBeGreaterThan(1);
  });

  test('a change that holds always is not told again for each segment', () => {
    const text = `${show}segment talk\nsegment break\n`;
    const { pictures } = reviewed(text, changed(text, 'feed program -> speaker', ''));
    expect(pictures).toMatchObject([{ change: 'loses its picture', name: 'speaker', segment: null }]);
  });

  test('what changes in one segment is told of that segment', () => {
    const text = `${show}segment talk "The talk"\n`;
    const { pictures } = reviewed(text, `${text}black speaker in talk\n`);
    expect(pictures).toMatchObject([
      { change: 'loses its picture', name: 'speaker', segment: { name: 'talk', title: 'The talk' } },
    ]);
  });

  test('a new segment is compared with what held without it', () => {
    expect(reviewed(show, `${show}segment talk\n`).pictures).toEqual([]);
  });

  test('another way: only the cables that differ', () => {
    const two = `${show}link trunk_b "T2" box_d.net2 <-> box_p.net2 over cat6a\n`;
    const { pictures } = reviewed(
      two,
      changed(two, 'feed program -> speaker', 'feed program -> speaker via box_d.net2'),
    );
    expect(pictures).toMatchObject([{ change: 'another way', name: 'speaker' }]);
    const [{ before, after: is }] = pictures as [(typeof pictures)[number]];
    const names = (way: readonly { name: string }[] | undefined) => way?.map(({ name }) => name);
    expect(names(before?.way)).toContain('trunk');
    expect(names(is?.way)).toContain('trunk_b');
  });
});

describe('lengths and margins', () => {
  test('a longer run takes margin, a shorter one gives it', () => {
    expect(after(['40 m "left wall"', '60 m "left wall"']).reaches).toMatchObject([
      {
        change: 'less margin',
        name: 'trunk',
        before: { length_m: 46 },
        after: { length_m: 66, reach_m: 100 },
      },
    ]);
    expect(after(['40 m "left wall"', '30 m "left wall"']).reaches).toMatchObject([
      { change: 'more margin' },
    ]);
  });

  test('a measurement is told by what it does', () => {
    const { reaches, things } = reviewed(show, `${show}measured trunk 61 m\n`);
    expect(reaches).toMatchObject([{ name: 'trunk', after: { length_m: 61 } }]);
    expect(things).toMatchObject([{ change: 'added', kind: 'measured', name: 'trunk' }]);
  });
});

describe('findings', () => {
  const checks = (findings: readonly { check: string }[]) => findings.map(({ check }) => check);

  test('new ones the most serious first, mended ones apart', () => {
    const { newFindings, mendedFindings } = after(
      ['feed left -> mixer.in1', 'feed left -> mixer.in9'],
      ['powered by white\nlink', 'powered by white\nnode spare : edge_box at desk\nlink'],
    );
    expect(checks(newFindings)[0]).toBe('unknown-port');
    const weight = { error: 0, warning: 1, info: 2 };
    const ranks = newFindings.map(({ severity }) => weight[severity]);
    expect(ranks).toEqual([...ranks].sort());
    expect(mendedFindings).toEqual([]);
  });

  test('other figures are no other finding', () => {
    const full = withCamera(withCamera(show, 'close', 3), 'wide', 4);
    const { newFindings, mendedFindings } = reviewed(
      full,
      changed(full, '1080p59.94 as sdi_3g into box_p.in4', '1080p60 as sdi_3g into box_p.in4'),
    );
    expect(checks(newFindings)).not.toContain('link-overload');
    expect(checks(mendedFindings)).not.toContain('link-overload');
  });

  test('a renamed thing keeps its findings, in a segment that is renamed too', () => {
    const full = `${withCamera(withCamera(show, 'close', 3), 'wide', 4)}segment talk\nblack speaker in talk\n`;
    const { newFindings, mendedFindings } = reviewed(
      full,
      changed(changed(full, 'trunk', 'main_cable'), 'talk', 'lecture'),
    );
    expect([...newFindings, ...mendedFindings]).toEqual([]);
  });

  test('a warning that became the error is not mended', () => {
    const three = changed(withCamera(show, 'close', 3), 'headroom 10 %', 'headroom 30 %');
    const { newFindings, mendedFindings } = reviewed(three, withCamera(three, 'wide', 4));
    expect(checks(newFindings)).toContain('link-overload');
    expect(checks(mendedFindings)).toEqual([]);
    // The other way round the error is mended, and the warning is new.
    const back = reviewed(withCamera(three, 'wide', 4), three);
    expect(checks(back.mendedFindings)).toContain('link-overload');
    expect(checks(back.newFindings)).toContain('link-headroom');
  });

  test('what is accepted is neither mended nor new', () => {
    const odd = changed(
      show,
      'sends 1080p59.94 as sdi_3g into box_p.in1',
      'sends 1080p50 as sdi_3g into box_p.in1',
    );
    const accepted = `${odd}accept rate-differs on left "seen at the rehearsal"\n`;
    const now = reviewed(odd, accepted);
    expect(checks(now.mendedFindings)).toEqual([]);
    expect(now.acceptedFindings).toMatchObject([
      { finding: { check: 'rate-differs' }, acceptance: { fact: { reason: 'seen at the rehearsal' } } },
    ]);
    const noMore = reviewed(accepted, odd);
    expect(checks(noMore.newFindings)).toEqual([]);
    expect(noMore.noLongerAccepted).toMatchObject([{ finding: { check: 'rate-differs' } }]);
  });
});

describe('failure cover', () => {
  const spare = `${show}link trunk_b "T2" box_d.net2 <-> box_p.net2 over cat6a standby for trunk\n`;

  test('a spare that is gone, and one that came', () => {
    const lost = reviewed(spare, show).cover;
    expect(new Set(lost.map(({ change }) => change))).toEqual(new Set(['cover lost']));
    expect(lost.map(({ name }) => name).sort()).toEqual([
      'left -> mixer.in1',
      'program -> speaker',
      'right -> mixer.in2',
    ]);
    expect(lost[0]).toMatchObject({
      before: 'back after re-plugging',
      after: 'dark',
      losses: [{ name: 'trunk', title: 'T1' }],
    });
    const gained = reviewed(show, spare).cover;
    expect(gained.map(({ change, before, after: is }) => [change, before, is])).toEqual(
      lost.map(({ before, after: is }) => ['cover gained', is, before]),
    );
  });

  test('a cable that comes to lie in the run of the spare is no cover lost either', () => {
    const third = 'place annex "Annex"\nrun desk <-> annex 20 m\nrun annex <-> platform 20 m\n';
    const detour = `${spare.replace('standby for trunk', 'by annex standby for trunk')}${third}`;
    const carried = changed(
      changed(detour, '"Speaker\'s screen" at platform', '"Speaker\'s screen" at annex'),
      'box_p.out1 over rg6 6 m',
      'box_p.out1 over rg6',
    );
    expect(reviewed(detour, carried).cover).toEqual([]);
  });

  test('another cable on the way of a picture is no cover lost', () => {
    expect(after(['box_p.out1 over rg6 6 m', 'box_p.out3 over rg6 9 m']).cover).toEqual([]);
    expect(reviewed(show, withCamera(show, 'close', 3)).cover).toEqual([]);
  });
});

describe('sums', () => {
  test('cost, power, circuits and cases, before and after', () => {
    const cased = `${show}case one "Case 1" holds box_d weighs 5 kg up to 23 kg\n`;
    const heavier = changed(
      changed(cased, 'costs 560', 'costs 600\n  weighs 2 kg'),
      'draws 18 W',
      'draws 20 W',
    );
    const { totals } = reviewed(cased, heavier);
    expect(totals.map(({ what, name, before, after: is, limit }) => [what, name, before, is, limit])).toEqual(
      [
        ['cost', '', 1120, 1200, undefined],
        ['weight', '', 5, 7, undefined],
        // Two boxes, a mixer of 60 W, two cameras of 24 W.
        ['power', '', 36 + 60 + 48, 40 + 60 + 48, undefined],
        // 80 % of 16 A at 230 V: 2944 W (NEC 210.19(A), as numbers of the plan have it).
        ['circuit', 'white', 78, 80, 2944],
        ['circuit', 'blue', 66, 68, 2944],
        ['case', 'one', 5, 7, 23],
      ],
    );
    expect(reviewed(cased, cased).totals).toEqual([]);
  });

  test('a circuit that is new has no before', () => {
    const { totals } = reviewed(show, `${show}circuit green "Green" at desk 10 A 230 V\n`);
    expect(totals).toMatchObject([
      { what: 'circuit', name: 'green', before: undefined, after: 0, limit: 1840 },
    ]);
  });

  test('cables to buy by kind and length, not by link', () => {
    const stocked = `${show}stock cat6a 1 of 50 m costs 40\nstock rg6 any of 10 m costs 5\n`;
    const second = `${stocked}link trunk_b "T2" box_d.net2 <-> box_p.net2 over cat6a\n`;
    expect(reviewed(stocked, stocked).purchases).toEqual([]);
    expect(reviewed(stocked, second).purchases).toEqual([
      { change: 'to buy', name: 'cat6a', title: 'Cat 6A', length_m: 46, count: 1 },
    ]);
    expect(reviewed(second, stocked).purchases).toMatchObject([{ change: 'no longer to buy', count: 1 }]);
    // The piece goes to the other link now: there is nothing to buy.
    const swapped = changed(changed(second, 'trunk_b "T2"', 'zz'), 'trunk "T1"', 'yy');
    expect(reviewed(second, swapped).purchases).toEqual([]);
  });

  test('without any stock nothing is said of buying', () => {
    expect(reviewed(show, withCamera(show, 'close', 3)).purchases).toEqual([]);
  });
});
