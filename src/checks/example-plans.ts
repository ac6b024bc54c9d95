/** The small plan that most examples of checks grow from: two boxes, one trunk, one camera, one screen. */

const head = `plan "Two boxes" {
  rate 50
  slack 2 m
}
`;

const plant = `
place stage
place desk
run stage <-> desk 40 m

kit edge_box {
  inputs in[1..4] as sdi_3g
  outputs out[1..4] as sdi_3g
  network net[1..2] as ethernet_10g_t
  carries uncompressed
  delay 1 frame
}
node box_s : edge_box at stage
node box_d : edge_box at desk
link trunk box_s.net1 <-> box_d.net1 over cat6a
`;

const picture = `
source camera at stage sends 1080p50 as sdi_3g into box_s.in1 over rg6 5 m
destination screen at desk takes 1080p50 as sdi_3g from box_d.out1 over rg6 5 m
feed camera -> screen
`;

/** A whole plan without a finding, and the statements of an example behind it. */
export function smallPlan(...statements: readonly string[]): string {
  return `${head}${plant}${picture}${statements.length > 0 ? `\n${statements.join('\n')}\n` : ''}`;
}

/** The same with one piece of its text replaced. */
export function changedPlan(from: string, to: string, ...statements: readonly string[]): string {
  return smallPlan(...statements).replace(from, to);
}
