/** Plans of any shape, for what must hold of every drawing: rooms, boxes, cables and feeds by chance. */
import type { Random } from '../incremental/random.ts';

const labels = [
  'Box',
  'Camera on the balcony, left of the second pillar',
  'Screen',
  '舞台カメラ',
  'مصدر الصورة',
  'מצלמה 2',
  'Ünïcödé',
  '<script>alert(1)</script>',
  '&amp; "quoted"',
  '🎥 wide',
  'W'.repeat(60),
  'a very long title that goes on and on '.repeat(8).trim(),
  '__proto__',
  'i',
];

const kits = `kit box_4 "Box, four in, four out" {
  inputs in[1..4] as sdi_3g
  outputs out[1..4] as sdi_3g
  network net[1..3] as ethernet_10g
  carries uncompressed
  delay 1 frame
}
kit switch_12 "Switch" {
  network net[1..12] as ethernet_10g
  network slow[1..4] as ethernet_1g
  forwards
}
kit mixer_8 "Vision mixer" {
  inputs in[1..8] as sdi_3g
  outputs out[1..4] as sdi_3g
  delay 1 frame
}
kit splitter_4 {
  inputs in1 as sdi_3g
  outputs out[1..4] as sdi_3g follow in1
}
kit patch_6 {
  joins front[1..6] with rear[1..6] as sdi_12g
}`;

const ports: Record<string, { in: string[]; out: string[]; net: string[] }> = {
  box_4: { in: range('in', 4), out: range('out', 4), net: range('net', 3) },
  switch_12: { in: [], out: [], net: [...range('net', 12), ...range('slow', 4)] },
  mixer_8: { in: range('in', 8), out: range('out', 4), net: [] },
  splitter_4: { in: ['in1'], out: range('out', 4), net: [] },
  patch_6: { in: range('front', 6), out: range('rear', 6), net: [] },
};

function range(name: string, count: number): string[] {
  return Array.from({ length: count }, (_, i) => `${name}${i + 1}`);
}

/** @param size About so many boxes and chips. */
export function randomPlan(random: Random, size: number): string {
  const statements: string[] = [];
  const pick = <T>(list: readonly T[]): T => random.pick(list);
  const label = () => (random.below(3) === 0 ? ` "${pick(labels).replaceAll('"', '\\"')}"` : '');
  const rooms = Array.from({ length: 1 + random.below(6) }, (_, i) => `room${i}`);
  for (const room of rooms) statements.push(`place ${room}${label()}`);
  for (const [i, room] of rooms.entries())
    if (i > 0) statements.push(`run ${pick(rooms.slice(0, i))} <-> ${room} ${5 + random.below(120)} m`);
  const free = { in: [] as string[], out: [] as string[], net: [] as string[] };
  const take = (kind: keyof typeof free) => free[kind].splice(random.below(free[kind].length), 1)[0];
  const nodes = 1 + random.below(Math.max(2, size / 2));
  for (let i = 0; i < nodes; i++) {
    const kit = pick(Object.keys(ports));
    statements.push(`node n${i}${label()} : ${kit} at ${pick(rooms)}`);
    for (const kind of ['in', 'out', 'net'] as const)
      free[kind].push(...ports[kit]![kind].map((port) => `n${i}.${port}`));
  }
  const links: string[] = [];
  for (let i = random.below(size); i > 0; i--) {
    const network = random.below(2) === 0;
    const [from, to] = network ? [take('net'), take('net')] : [take('out'), take('in')];
    if (!from || !to) break;
    const name = random.below(2) === 0 ? `l${links.length}` : '';
    if (name) links.push(name);
    const standby = name && links.length > 1 && random.below(5) === 0 ? ` standby for ${links[0]}` : '';
    const cable = network ? pick(['cat6a', 'om4', 'cat5e']) : pick(['rg6', 'rg59']);
    statements.push(
      `link ${name}${name ? label() : ''} ${from} ${network ? '<->' : '->'} ${to} over ${cable}${random.below(2) === 0 ? ` ${1 + random.below(200)} m` : ''}${standby}`,
    );
  }
  const sources: string[] = [];
  for (let i = random.below(size); i > 0; i--) {
    const port = take('in');
    if (!port) break;
    sources.push(`s${i}`);
    statements.push(
      `source s${i}${label()} at ${pick(rooms)} sends 1080p59.94 as sdi_3g into ${port} over rg6 ${1 + random.below(100)} m`,
    );
  }
  const targets: string[] = [];
  for (let i = random.below(size); i > 0; i--) {
    const port = take('out');
    if (!port) break;
    targets.push(`d${i}`);
    statements.push(
      `destination d${i}${label()} at ${pick(rooms)} takes 1080p59.94 as sdi_3g from ${port} over rg6 ${1 + random.below(60)} m within ${1 + random.below(6)} frames`,
    );
  }
  statements.push('segment second "Second half"');
  if (sources.length > 0)
    for (const target of targets)
      statements.push(`feed ${pick(sources)} -> ${target}${random.below(4) === 0 ? ' in second' : ''}`);
  return `plan "By chance" { rate 59.94 headroom 5 % slack 2 m }\n${kits}\n${statements.join('\n')}\n`;
}
