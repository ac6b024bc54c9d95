/** Each kind of change has its mirror: what one change brings, the change back takes. */
import { describe, expect, test } from 'vitest';
import {
  coverChangeKinds,
  loadChangeKinds,
  pictureChangeKinds,
  purchaseKinds,
  type Review,
  reachChangeKinds,
  stepKinds,
  thingChangeKinds,
} from '../../src/documents/review/review.ts';
import { reviewed } from './reviews.ts';
import { changed, kit, plan, withCamera } from './shows.ts';

/** For each kind the one that the change back has, or why there is none. */
const mirrors: Record<
  string,
  { readonly kinds: readonly string[]; readonly of: Record<string, string | { why: string }> }
> = {
  things: {
    kinds: thingChangeKinds,
    of: { added: 'removed', removed: 'added', renamed: 'renamed', moved: 'moved', changed: 'changed' },
  },
  loads: {
    kinds: loadChangeKinds,
    of: { added: 'removed', removed: 'added', raised: 'lowered', lowered: 'raised' },
  },
  pictures: {
    kinds: pictureChangeKinds,
    of: {
      'loses its picture': 'gains a picture',
      'gains a picture': 'loses its picture',
      'shows another': 'shows another',
      'another way': 'another way',
      later: 'sooner',
      sooner: 'later',
    },
  },
  reaches: {
    kinds: reachChangeKinds,
    of: { 'less margin': 'more margin', 'more margin': 'less margin' },
  },
  cover: {
    kinds: coverChangeKinds,
    of: { 'cover lost': 'cover gained', 'cover gained': 'cover lost' },
  },
  purchases: {
    kinds: purchaseKinds,
    of: { 'to buy': 'no longer to buy', 'no longer to buy': 'to buy' },
  },
  steps: {
    kinds: stepKinds,
    of: {
      label: 'label',
      'set up': 'take out',
      'take out': 'set up',
      plug: 'unplug',
      unplug: 'plug',
      move: 'move',
      carry: 'carry',
      power: 'power',
      set: { why: 'an output that shows nothing any more is not set to nothing' },
      lay: 'take up',
      'take up': 'lay',
      look: { why: 'a screen that is dark as planned needs no look' },
    },
  },
};

const show = changed(plan, 'import "kit.feedplot"', kit);
const spare = 'link trunk_b "T2" box_d.net2 <-> box_p.net2 over cat6a standby for trunk\n';
/** With a segment: a part of the show that is new, or gone, has nothing to be compared with. */
const stocked = `${show}segment talk\nstock cat6a 1 of 50 m costs 40\nstock rg6 any of 10 m costs 5\nplace annex\nrun platform <-> annex 12 m\n`;
const odd = changed(
  stocked,
  'sends 1080p59.94 as sdi_3g into box_p.in1',
  'sends 1080p50 as sdi_3g into box_p.in1',
);

/** A change, and at least what it is made of. */
const changes: readonly [string, string, string][] = [
  ['a camera', stocked, withCamera(stocked, 'close', 3)],
  ['a spare', stocked, stocked + spare],
  ['a second trunk in use', stocked, `${stocked}${changed(spare, ' standby for trunk', '')}`],
  ['a name', stocked, changed(stocked, 'box_p', 'stage_box')],
  ['a label', stocked, changed(stocked, '"Box P"', '"Stage box"')],
  ['a socket', stocked, changed(stocked, 'box_d.out1 -> mixer.in1', 'box_d.out4 -> mixer.in1')],
  ['a place', stocked, changed(stocked, '"Speaker\'s screen" at platform', '"Speaker\'s screen" at annex')],
  [
    'a circuit',
    stocked,
    changed(stocked, 'mixer_8 at desk powered by white', 'mixer_8 at desk powered by blue'),
  ],
  ['a delay', stocked, changed(stocked, 'delay 1 frame\n  draws 60', 'delay 2 frames\n  draws 60')],
  ['a length', stocked, changed(stocked, '40 m "left wall"', '48 m "left wall"')],
  [
    'a wish',
    stocked,
    changed(stocked, 'feed program -> speaker', 'feed left -> recorder in talk instead of record_out'),
  ],
  [
    'another source',
    stocked,
    changed(
      changed(stocked, 'feed left -> mixer.in1', 'feed right -> mixer.in1'),
      'feed right -> mixer.in2',
      'feed left -> mixer.in2',
    ),
  ],
  [
    'another way',
    `${stocked}${changed(spare, ' standby for trunk', '')}`,
    changed(
      `${stocked}${changed(spare, ' standby for trunk', '')}`,
      'feed program -> speaker',
      'feed program -> speaker via box_d.net2',
    ),
  ],
  ['an acceptance', odd, `${odd}accept rate-differs on left "seen"\n`],
];

type Kinds = Record<string, string[]>;

/** `kind name` of everything in a review, by its section. */
function kindsOf({ things, loads, pictures, reaches, cover, purchases, steps }: Review): Kinds {
  const named = (all: readonly { change: string; name: string; segment?: { name: string } | null }[]) =>
    all.map(({ change, name, segment }) => `${change} ${segment?.name ?? ''}`.trim().concat(` of ${name}`));
  return {
    loads: loads.map(({ change, name, direction }) => `${change} of ${name} ${direction}`),
    pictures: named(pictures),
    reaches: named(reaches),
    cover: cover.map(
      ({ change, name, losses }) => `${change} of ${name} by ${losses.map((lost) => lost.name)}`,
    ),
    purchases: purchases.map(
      ({ change, name, count, length_m }) => `${change} of ${count} ${name} ${length_m}`,
    ),
    things: things
      .filter(({ change }) => change !== 'renamed')
      .map(({ change, kind, name }) => `${change} of ${kind} ${change === 'moved' ? '' : name}`),
    steps: steps.map(({ kind }) => kind),
  };
}

function mirrored(section: string, text: string): string | undefined {
  const { kinds, of } = mirrors[section]!;
  const kind = kinds.find((one) => text === one || text.startsWith(`${one} `))!;
  const mirror = of[kind];
  return typeof mirror === 'string' ? mirror + text.slice(kind.length) : undefined;
}

describe('every kind of change', () => {
  test.each(Object.entries(mirrors))('of %s has its mirror, or a reason why not', (_, { kinds, of }) => {
    expect(Object.keys(of).sort()).toEqual([...kinds].sort());
    for (const [kind, mirror] of Object.entries(of)) {
      if (typeof mirror === 'string') expect(of[mirror]).toBe(kind);
      else expect(mirror.why).toMatch(/\w+ \w+/);
    }
  });

  test.each(changes)('%s: the change back has the mirror of everything', (_, before, after) => {
    const [there, back] = [kindsOf(reviewed(before, after)), kindsOf(reviewed(after, before))];
    for (const section of ['loads', 'pictures', 'reaches', 'cover', 'purchases', 'things'])
      expect(there[section]!.map((text) => mirrored(section, text)).sort()).toEqual(
        [...back[section]!].sort(),
      );
    // A cable whose end goes there and back, or a box: counted, because the order differs.
    for (const kind of [
      'label',
      'set up',
      'take out',
      'lay',
      'take up',
      'plug',
      'unplug',
      'move',
      'carry',
      'power',
    ])
      expect([kind, count(back, mirrors.steps!.of[kind] as string)]).toEqual([kind, count(there, kind)]);
  });

  test.each(changes)(
    '%s: new findings are mended by the change back, and nothing else is',
    (_, before, after) => {
      const [there, back] = [reviewed(before, after), reviewed(after, before)];
      const messages = (findings: readonly { message: string }[]) =>
        findings.map(({ message }) => message).sort();
      expect(messages(there.newFindings)).toEqual(messages(back.mendedFindings));
      expect(messages(there.mendedFindings)).toEqual(messages(back.newFindings));
      expect(there.acceptedFindings.length).toBe(back.noLongerAccepted.length);
      expect(there.noLongerAccepted.length).toBe(back.acceptedFindings.length);
    },
  );

  test('all of them are met here', () => {
    const met = new Set<string>();
    for (const [, before, after] of changes) {
      for (const review of [reviewed(before, after), reviewed(after, before)]) {
        const { things, loads, pictures, reaches, cover, purchases } = review;
        for (const { change } of [...things, ...loads, ...pictures, ...reaches, ...cover, ...purchases])
          met.add(change);
        for (const { kind } of review.steps) met.add(kind);
      }
    }
    const all = Object.values(mirrors).flatMap(({ kinds }) => kinds);
    expect([...met].sort()).toEqual([...new Set(all)].sort());
  });
});

function count(kinds: Kinds, kind: string): number {
  return kinds.steps!.filter((one) => one === kind).length;
}
