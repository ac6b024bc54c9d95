/**
 * Plans of a chosen size for measurements: an invented conference centre. Every hall has a box at the platform,
 * cameras and screens; every eight halls share a control room with a switch and a vision mixer; the control rooms hang on one core.
 * Pictures go to the hall beside, go to the control room and come back mixed, or cross the core to a hall of the next
 * control room. A few lines carry comments, a few kits have blocks, two segments change what some screens show.
 */

const head = `/** An invented centre, for measurements. */
plan "Conference centre" {
  revision "B"
  date 2027-09-14
  rate 59.94
  headroom 5 %
  slack 3 m
  currency EUR
}`;

const kits = [
  `kit edge_box "Edge box, four in, four out" {
  inputs in[1..4] as sdi_3g
  outputs out[1..4] as sdi_3g
  network net[1..2] as ethernet_25g
  carries uncompressed
  delay 1 frame
  draws 30 W
  weighs 1.2 kg
  costs 560
}`,
  `kit room_switch "Switch of a control room" {
  network net[1..24] as ethernet_25g
  network up[1..2] as ethernet_100g
  forwards
  draws 180 W
  weighs 6 kg
}`,
  `kit core_switch "Core switch" {
  network up[1..512] as ethernet_100g
  forwards
  draws 600 W
  weighs 14 kg
}`,
  `kit mixer_8 "Vision mixer" {
  inputs in[1..8] as sdi_3g
  outputs out[1..4] as sdi_3g
  delay 1 frame
  draws 60 W
}`,
  `kit camera "Camera" { draws 24 W weighs 2.5 kg costs 1400 }`,
  `kit screen "Screen" { draws 40 W weighs 5 kg costs 320 }`,
];

const HALLS_PER_ROOM = 8;

/** Statements of the plan's own head, its kits and what stands once. */
function common(): string[] {
  return [
    ...kits,
    'place core_room "Core, cellar"',
    'circuit core_32 "Core" at core_room 32 A 230 V',
    'node core "Core switch" : core_switch at core_room powered by core_32',
    'segment opening "Opening, all halls"',
    'segment results "Results"',
    'stock rg6 any of 25 m costs 22',
    'stock om4 any of 150 m costs 210',
  ];
}

function controlRoom(r: number): string[] {
  const box = (k: number) => `cbox${r}_${k}`;
  return [
    `// ---- Control room ${r}\nplace control${r} "Control room ${r}"`,
    `run core_room <-> control${r} ${40 + ((r * 7) % 50)} m "riser ${r}"`,
    `circuit control${r}_32 "Control room ${r}" at control${r} 32 A 230 V`,
    `/** Joins the halls of control room ${r}. */\nnode switch${r} "Switch ${r}" : room_switch at control${r} powered by control${r}_32`,
    `link up${r} "Up ${r}" switch${r}.up1 <-> core.up${r + 1} over om4`,
    `node mixer${r} "Mixer ${r}" : mixer_8 at control${r} powered by control${r}_32`,
    ...[1, 2].flatMap((k) => [
      `node ${box(k)} "Box C${r}${k}" : edge_box at control${r} powered by control${r}_32`,
      `link ${box(k)}.net1 <-> switch${r}.net${20 + k} over om4 3 m`,
    ]),
    ...[1, 2, 3, 4, 5, 6, 7, 8].map(
      (k) => `link ${box(k > 4 ? 2 : 1)}.out${((k - 1) % 4) + 1} -> mixer${r}.in${k} over rg6 2 m`,
    ),
    `source program${r} "Program ${r}" from mixer${r}.out1 sends 1080p59.94`,
    `link mixer${r}.out1 -> ${box(1)}.in1 over rg6 2 m`,
  ];
}

function hall(h: number, rooms: number): string[] {
  const r = Math.floor(h / HALLS_PER_ROOM);
  const slot = (h % HALLS_PER_ROOM) + 1;
  const beside = r * HALLS_PER_ROOM + ((h + 1) % HALLS_PER_ROOM);
  const shift = rooms === 1 ? 3 : 0;
  const next = ((r + 1) % rooms) * HALLS_PER_ROOM + ((h + shift) % HALLS_PER_ROOM);
  return [
    `place hall${h} "Hall ${h}"`,
    `run control${r} <-> hall${h} ${30 + ((h * 13) % 55)} m "tray ${h}"`,
    `circuit hall${h}_16 "Hall ${h}, blue socket" at hall${h} 16 A 230 V`,
    `node box${h} "Box H${h}" : edge_box at hall${h} powered by hall${h}_16`,
    `link trunk${h} "Trunk ${h}" box${h}.net1 <-> switch${r}.net${slot} over om4`,
    ...[1, 2, 3].map(
      (k) =>
        `source camera${h}_${k} "Hall ${h}, camera ${k}" : camera at hall${h} sends 1080p59.94 as sdi_3g into box${h}.in${k} over rg6 ${8 + ((h + k * 5) % 30)} m powered by hall${h}_16`,
    ),
    ...[1, 2, 3].map(
      (k) =>
        `destination screen${h}_${k} "Hall ${h}, screen ${k}" : screen at hall${h} takes 1080p59.94 as sdi_3g from box${h}.out${k} over rg6 ${6 + ((h * 3 + k) % 25)} m within 8 frames powered by hall${h}_16`,
    ),
    `feed camera${h}_1 -> mixer${r}.in${slot}`,
    `feed program${r} -> screen${h}_1`,
    `feed camera${h}_2 -> screen${beside}_2 // to the hall beside it`,
    `feed camera${h}_3 -> screen${next}_3`,
    ...(h % 5 === 0 ? [`feed program${r} -> screen${beside}_2 instead of camera${h}_2 in opening`] : []),
    ...(h % 7 === 0 ? [`black screen${h}_1 in results`] : []),
    ...(h % 6 === 0 ? [`measured trunk${h} ${44 + (h % 40)} m`] : []),
    ...(h % 9 === 0 ? [`proved camera${h}_2 -> screen${beside}_2 on 2027-09-${10 + (h % 15)}`] : []),
    ...(h % 8 === 0
      ? [`case case${h} "Case ${h}" holds box${h}, trunk${h}, "cable ramps" weighs 6 kg up to 40 kg`]
      : []),
  ];
}

/** The statements of a plan, one a string. */
function statementsOf(count: number): string[] {
  for (let halls = Math.max(1, Math.floor(count / 22)); ; halls--) {
    const rooms = Math.ceil(halls / HALLS_PER_ROOM);
    const whole = rooms * HALLS_PER_ROOM;
    const out = common();
    for (let r = 0; r < rooms; r++) out.push(...controlRoom(r));
    // Only halls of full control rooms, so that every feed finds its screen.
    for (let h = 0; h < whole; h++) out.push(...hall(h, rooms));
    if (out.length + 1 > count && halls > 1) continue;
    for (let spare = 0; out.length + 1 < count; spare++)
      out.push(`place spare${spare} "Spare room ${spare}"`);
    return out;
  }
}

/** A plan of `count` statements in one file. */
export function benchText(count: number): string {
  return `${[head, ...statementsOf(count)].join('\n')}\n`;
}

/** The same plan spread over files that the first one imports: path below one folder to text. */
export function benchFiles(count: number, files: number): Map<string, string> {
  const statements = statementsOf(count - (files - 1));
  const size = Math.ceil(statements.length / files);
  const texts = new Map<string, string>();
  const imports: string[] = [];
  for (let f = 1; f < files; f++) imports.push(`import "part${f}.feedplot"`);
  for (let f = 0; f < files; f++) {
    const part = statements.slice(f * size, (f + 1) * size).join('\n');
    texts.set(
      f === 0 ? 'show.feedplot' : `part${f}.feedplot`,
      f === 0 ? `${[head, ...imports, part].join('\n')}\n` : `${part}\n`,
    );
  }
  return texts;
}

/** The plan with about so many findings that stand: cameras whose cable is much too long. */
export function withFindings(text: string, count: number): string {
  let left = count;
  return text.replace(/(into box\d+\.in\d over rg6) \d+ m/g, (whole, words: string) =>
    left-- > 0 ? `${words} 900 m` : whole,
  );
}
