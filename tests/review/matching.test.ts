import { describe, expect, test } from 'vitest';
import { differencesOf } from '../../src/documents/review/differences.ts';
import { itemsOf } from '../../src/documents/review/items.ts';
import { Renames } from '../../src/documents/review/renames.ts';
import type { Fact } from '../../src/plan/facts.ts';
import { everyStatement } from '../support/every-statement.ts';
import { planOf } from '../support/plans.ts';
import { reviewed, thingsOf } from './reviews.ts';
import { changed, kit, plan } from './shows.ts';

const show = changed(plan, 'import "kit.feedplot"', kit);

const after = (...changes: [string, string][]) =>
  thingsOf(
    reviewed(
      show,
      changes.reduce((text, [from, to]) => changed(text, from, to), show),
    ),
  );

describe('what became of what', () => {
  test('the same plan, with its lines in another order, other comments and other spaces, has no change', () => {
    const lines = show.split('\n');
    const statements = lines.filter((line) => /^(feed|link|source|destination)/.test(line)).reverse();
    const others = lines.filter((line) => !/^(feed|link|source|destination)/.test(line));
    const mixed = [
      ...others,
      '// by hand',
      ...statements.map((line) => line.replace(/ over /, '   over ')),
    ].join('\n');
    expect(after()).toEqual([]);
    expect(thingsOf(reviewed(show, mixed))).toEqual([]);
  });

  test('a renamed node is one change, wherever it is spoken of', () => {
    expect(after(['box_p', 'stage_box'])).toEqual(['renamed node stage_box']);
  });

  test('place, kit, circuit, nodes, sources and the trunk renamed at once are recognised each', () => {
    const names: [string, string][] = [
      ['platform', 'stage'],
      ['edge_box', 'box_4'],
      ['blue', 'socket_7'],
      ['box_p', 'stage_box'],
      ['box_d', 'desk_box'],
      ['source left ', 'source near_camera '],
      ['of left,', 'of near_camera,'],
      ['feed left ', 'feed near_camera '],
      ['trunk', 'main'],
    ];
    expect(after(...names).sort()).toEqual(
      [
        'renamed place stage',
        'renamed kit box_4',
        'renamed circuit socket_7',
        'renamed node stage_box',
        'renamed node desk_box',
        'renamed source near_camera',
        'renamed link main',
      ].sort(),
    );
  });

  test('a name is renamed in its own space only', () => {
    const twins = changed(
      changed(show, 'place platform', 'place mixer2'),
      ' at platform',
      ' at mixer2',
    ).replace('desk <-> platform', 'desk <-> mixer2');
    // The node "mixer" goes on; the place that was called like another thing is renamed.
    expect(thingsOf(reviewed(twins, show))).toEqual(['renamed place platform']);
    const box = 'kit desk { inputs in[1..2] as sdi_3g }\nnode other : desk at desk\n';
    const renamedKit = thingsOf(
      reviewed(show + box, show + box.replace('kit desk', 'kit counter').replace(': desk', ': counter')),
    );
    expect(renamedKit).toEqual(['renamed kit counter']);
  });

  test('ports of a kit that are called otherwise are no new cables', () => {
    const { steps, things, pictures } = reviewed(
      show,
      changed(
        changed(changed(show, 'inputs in[1..4]', 'inputs sdi[1..4]'), 'box_p.in', 'box_p.sdi'),
        'box_d.in',
        'box_d.sdi',
      ),
    );
    expect(steps).toEqual([]);
    expect(pictures).toEqual([]);
    expect(things.map(({ change, name }) => `${change} ${name}`)).toEqual(['changed edge_box']);
  });

  test('another box of the same kit in another place, plugged otherwise, is removed and added', () => {
    const text = changed(
      show,
      'node mixer "Mixer" : mixer_8 at desk powered by white',
      'node table "Table" : mixer_8 at platform',
    );
    expect(
      thingsOf(reviewed(show, changed(changed(text, 'mixer.in', 'table.in'), 'mixer.out', 'table.out'))),
    ).toContain('removed node mixer');
  });

  test('a cable whose one end goes elsewhere was moved, named or not', () => {
    expect(after(['box_d.out2 -> mixer.in2', 'box_d.out2 -> mixer.in5'])).toEqual([
      'moved link box_d.out2 -> mixer.in5',
    ]);
    expect(after(['<-> box_p.net1', '<-> box_p.net2'])).toEqual(['moved link trunk']);
  });

  test('a link written from its other end, a run too, is the same', () => {
    expect(after(['box_d.net1 <-> box_p.net1', 'box_p.net1 <-> box_d.net1'])).toEqual([]);
    expect(after(['run desk <-> platform', 'run platform <-> desk'])).toEqual([]);
  });

  test('a link that gets a name is renamed from its ends', () => {
    const { things } = reviewed(show, changed(show, 'link box_d.out1 ->', 'link tail box_d.out1 ->'));
    expect(things).toMatchObject([
      { change: 'renamed', name: 'tail', was: 'box_d.out1 -> mixer.in1', differences: [] },
    ]);
  });

  test('two feeds written as one are no change; a target more is one thing added', () => {
    const one = changed(
      show,
      'destination recorder',
      'destination aux "Aux" at desk takes 1080p59.94 as sdi_3g from box_d.out3 over rg6 1 m\ndestination recorder',
    );
    const two = `${one}feed program -> aux\n`;
    const joined = changed(one, 'feed program -> speaker', 'feed program -> speaker, aux');
    expect(thingsOf(reviewed(two, joined))).toEqual([]);
    expect(thingsOf(reviewed(one, joined))).toEqual(['added feed program -> aux']);
    expect(thingsOf(reviewed(joined, one))).toEqual(['removed feed program -> aux']);
  });

  test('a segment more for a feed is one wish added', () => {
    const one = `${show}segment first\nsegment second\nfeed left -> speaker instead of program in first\n`;
    const two = changed(one, 'program in first', 'program in first, second');
    expect(thingsOf(reviewed(one, two))).toEqual(['added feed left -> speaker in second']);
  });

  test('names that an object would have of its own', () => {
    const odd = changed(
      changed(changed(show, 'box_p', 'constructor'), 'trunk', '__proto__'),
      'right',
      'toString',
    );
    expect(thingsOf(reviewed(show, odd)).every((text) => text.startsWith('renamed'))).toBe(true);
    expect(thingsOf(reviewed(odd, odd))).toEqual([]);
  });
});

describe('differences in words', () => {
  const differences = (from: string, to: string) =>
    reviewed(show, changed(show, from, to)).things.flatMap((thing) =>
      thing.differences.map(({ what, before, after: is }) => `${what}: ${before ?? '-'} → ${is ?? '-'}`),
    );

  test.each([
    ['at 40 C', 'left wall"', 'left wall" at 40 C', 'temperature: - → 40 °C'],
    ['a route', '"left wall"', '"right wall"', 'route: “left wall” → “right wall”'],
    ['a length', '40 m', '41 m', 'length: 40 m → 41 m'],
    ['a length by a little', '40 m', '40.004 m', 'length: 40 m → 40.004 m'],
    [
      'ports',
      'network net[1..2] as ethernet_10g',
      'network net[1..4] as ethernet_25g',
      'ports: network net[1..2] as ethernet_10g → network net[1..4] as ethernet_25g',
    ],
    ['a delay', 'delay 1 frame\n  draws 18', 'delay 20 ms\n  draws 18', 'delay: 1 frame → 20 ms'],
    [
      'what it carries',
      'carries uncompressed',
      'carries compressed 8:1',
      'carries: uncompressed → compressed 8:1',
    ],
    ['power', 'powered by white\nlink trunk', 'powered by white, blue\nlink trunk', 'powered by: - → blue'],
    ['a flag', 'over cat6a', 'over cat6a installed', 'installed: - → yes'],
    ['a label', '"T1"', '"Trunk 1"', 'label: T1 → Trunk 1'],
    [
      'a format',
      'destination recorder "Recorder" at desk takes 1080p59.94',
      'destination recorder "Recorder" at desk takes 1080p59.94, 1080p50',
      'takes: - → 1080p50',
    ],
    ['headroom', 'headroom 10 %', 'headroom 15 %', 'headroom: 10 % → 15 %'],
    [
      'a segment-less wish',
      'feed program -> speaker',
      'feed program -> speaker redundant within 5 frames',
      'redundant: - → yes',
    ],
    [
      'sound',
      'destination speaker "Speaker\'s screen"',
      'destination speaker "Speaker\'s screen" sound after 12 ms from 20 m',
      'sound: - → after 12 ms from 20 m',
    ],
  ])('%s', (_, from, to, words) => {
    expect(differences(from, to)).toContain(words);
  });

  test.each(everyStatement.filter((text) => !text.startsWith('import')))(
    'every property has its words: %s',
    (text) => {
      const [item] = itemsOf(planOf(text));
      const { fact } = item!;
      const bare = Object.fromEntries(
        Object.entries(fact).map(([key, value]) => {
          if (key === 'kind' || key === 'name') return [key, value];
          return [key, Array.isArray(value) ? [] : undefined];
        }),
      );
      const before = { ...item!, fact: bare as unknown as Fact };
      const said = differencesOf(before, item!, new Renames(), 'metric');
      const properties = Object.entries(fact).filter(
        ([key, value]) =>
          key !== 'kind' &&
          key !== 'name' &&
          value !== false &&
          !(Array.isArray(value) && value.length === 0),
      );
      expect(said.map(({ what }) => what)).toHaveLength(properties.length);
      for (const { what, before: was, after: is } of said) {
        expect(what).toMatch(/^[a-z ]+$/);
        expect(is).not.toMatch(/[{}]|undefined|NaN|\[object/);
        expect(was).toBeUndefined();
      }
    },
  );
});
