/** Which box stands left of which: where cables run straight on, and none goes around a box. */
import { describe, expect, test } from 'vitest';
import { leftToRight } from '../../src/documents/drawing/sides.ts';

/** Boxes by room, as `desk: mixer, box_d`, and joints as `box_d > mixer`. */
function order(rooms: readonly string[], joints: readonly string[]): (id: string) => number {
  const boxes = rooms.flatMap((line, room) =>
    line
      .split(/[ ,]+/)
      .filter(Boolean)
      .map((id) => ({ id, room })),
  );
  const positions = leftToRight(
    boxes,
    joints.map((joint) => {
      const [from, to] = joint.split(' > ') as [string, string];
      return { from, to };
    }),
  );
  return (id) => {
    const position = positions.get(id);
    if (position === undefined) throw new Error(`${id} has no position`);
    return position;
  };
}

test('rooms stand as they are written, whichever way the pictures go', () => {
  const at = order(['a', 'b', 'c'], ['c > a', 'b > a']);
  expect(at('a')).toBeLessThan(at('b'));
  expect(at('b')).toBeLessThan(at('c'));
});

describe('in a room whose cables leave to the right', () => {
  const at = order(
    ['screen camera mixer splitter box', 'far'],
    ['camera > mixer', 'mixer > box', 'box > mixer', 'box > splitter', 'splitter > screen', 'box > far'],
  );

  test('what has the cable stands rightmost', () => {
    for (const id of ['screen', 'camera', 'mixer', 'splitter']) expect(at(id)).toBeLessThan(at('box'));
  });

  test('everything else stands behind it, step by step, also what it sends to', () => {
    expect(at('splitter')).toBeGreaterThan(at('screen'));
    expect(at('mixer')).toBeGreaterThan(at('camera'));
  });
});

test('in a room whose cables leave to the left everything is the other way round', () => {
  const at = order(['far', 'box mixer camera'], ['far > box', 'box > mixer', 'camera > mixer']);
  expect(at('box')).toBeLessThan(at('mixer'));
  expect(at('mixer')).toBeLessThan(at('camera'));
});

test('what lies on the way from one room to another stands along it, and the rest to the right', () => {
  const at = order(
    ['left', 'exit hanging entry middle', 'right'],
    ['left > entry', 'entry > middle', 'middle > exit', 'exit > right', 'hanging > middle'],
  );
  expect(at('entry')).toBeLessThan(at('middle'));
  expect(at('middle')).toBeLessThan(at('exit'));
  expect(at('middle')).toBeLessThan(at('hanging'));
});

test('where no cable leaves the room, things stand as the pictures go', () => {
  const at = order(['screen switch laptop'], ['laptop > switch', 'switch > screen']);
  expect(at('laptop')).toBeLessThan(at('switch'));
  expect(at('switch')).toBeLessThan(at('screen'));
});

test('a circle of pictures has an order too, and every box one place of its own', () => {
  const at = order(['a b c d'], ['a > b', 'b > c', 'c > a', 'c > d']);
  expect(new Set(['a', 'b', 'c', 'd'].map(at)).size).toBe(4);
});

test('names that objects have of themselves are names like others', () => {
  const at = order(['__proto__ constructor'], ['__proto__ > constructor']);
  expect(at('__proto__')).toBeLessThan(at('constructor'));
});

test('it takes a chain of a hundred thousand boxes', () => {
  const boxes = Array.from({ length: 100_000 }, (_, i) => ({ id: `b${i}`, room: 0 }));
  const joints = boxes.slice(1).map(({ id }, i) => ({ from: `b${i}`, to: id }));
  const positions = leftToRight(boxes, joints);
  expect(positions.get('b0')).toBe(0);
  expect(positions.get('b99999')).toBe(99_999);
});
