/** Random shows: matrices in three places, cables between any of their sockets, cameras, screens, wishes. */
import fc from 'fast-check';

const places = ['desk', 'platform', 'annex'];
const boxes = ['alpha', 'beta', 'gamma', 'delta'];
const sockets = 3;

interface RandomShow {
  readonly boxes: readonly {
    readonly name: string;
    readonly place: string;
    readonly kit: string;
    readonly power: string;
  }[];
  readonly links: readonly {
    readonly from: number;
    readonly to: number;
    readonly cable: string;
    readonly name: boolean;
  }[];
  readonly cameras: readonly { readonly place: string; readonly into: number }[];
  readonly screens: readonly { readonly place: string; readonly from: number }[];
}

const place = fc.constantFrom(...places);

const show: fc.Arbitrary<RandomShow> = fc.record({
  boxes: fc.tuple(
    ...boxes.map((name) =>
      fc.record({
        name: fc.constantFrom(name, `${name}_2`),
        place,
        kit: fc.constantFrom('matrix', 'matrix', 'matrix_2'),
        power: fc.constantFrom('one', 'two'),
      }),
    ),
  ),
  links: fc.array(
    fc.record({
      from: fc.nat(boxes.length * sockets - 1),
      to: fc.nat(boxes.length * sockets - 1),
      cable: fc.constantFrom('rg6', 'rg59'),
      name: fc.boolean(),
    }),
    { maxLength: 8 },
  ),
  cameras: fc.array(fc.record({ place, into: fc.nat(boxes.length * sockets - 1) }), { maxLength: 3 }),
  screens: fc.array(fc.record({ place, from: fc.nat(boxes.length * sockets - 1) }), { maxLength: 3 }),
});

/** Two shows, the second a change of the first or another one altogether. */
export const twoShows: fc.Arbitrary<readonly [string, string]> = fc.oneof(
  fc.tuple(show, show).map(([a, b]) => [textOf(a), textOf(b)] as const),
  fc
    .tuple(show, show, fc.constantFrom<keyof RandomShow>('boxes', 'links', 'cameras', 'screens'))
    .map(([a, b, key]) => [textOf(a), textOf({ ...a, [key]: b[key] })] as const),
);

/** A socket takes one cable: what comes second is left out. */
function textOf({ boxes: all, links, cameras, screens }: RandomShow): string {
  const taken = new Set<string>();
  const socket = (index: number, kind: 'in' | 'out') => {
    const { name } = all[Math.floor(index / sockets)]!;
    return `${name}.${kind}${(index % sockets) + 1}`;
  };
  const free = (...names: string[]) => {
    if (names.some((name) => taken.has(name))) return false;
    for (const name of names) taken.add(name);
    return true;
  };
  const lines = [
    'plan "Random" { rate 59.94 slack 1 m }',
    ...places.map((name) => `place ${name}`),
    'run desk <-> platform 20 m',
    'run platform <-> annex 10 m',
    'circuit one at desk 16 A 230 V',
    'circuit two at desk 16 A 230 V',
    ...['matrix', 'matrix_2'].map(
      (name, i) =>
        `kit ${name} { inputs in[1..3] as sdi_3g outputs out[1..3] as sdi_3g routes inputs to outputs draws ${i + 1} W costs ${(i + 1) * 100} weighs ${i + 2} kg delay ${i} ms }`,
    ),
    ...all.map(({ name, place: at, kit, power }) => `node ${name} : ${kit} at ${at} powered by ${power}`),
  ];
  links.forEach(({ from, to, cable, name }, i) => {
    const [a, b] = [socket(from, 'out'), socket(to, 'in')];
    if (free(a, b)) lines.push(`link ${name ? `cable_${i} ` : ''}${a} -> ${b} over ${cable}`);
  });
  cameras.forEach(({ place: at, into }, i) => {
    const input = socket(into, 'in');
    if (free(input))
      lines.push(`source camera_${i} at ${at} sends 1080p59.94 as sdi_3g into ${input} over rg6`);
    else lines.push(`source camera_${i} at ${at} sends 1080p59.94 as sdi_3g`);
  });
  screens.forEach(({ place: at, from }, i) => {
    const output = socket(from, 'out');
    const plugged = free(output) ? ` from ${output} over rg59` : '';
    lines.push(`destination screen_${i} at ${at} takes 1080p59.94 as sdi_3g${plugged}`);
    if (cameras.length > 0) lines.push(`feed camera_${i % cameras.length} -> screen_${i}`);
  });
  return `${lines.join('\n')}\n`;
}
