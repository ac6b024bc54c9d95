/** Small plans for tests of the analysis, and short words for what they ask. */
import { analyse } from '../../src/analysis/analyse.ts';
import type { Analysis, Delivery, Link, Port } from '../../src/analysis/model.ts';
import { loadIn } from '../../src/analysis/traffic.ts';
import { planOf } from '../support/plans.ts';

export function analysisOf(...statements: readonly string[]): Analysis {
  return analyse(planOf(statements.join('\n')));
}

/** Kits that most plans here use: a box onto the network, a switch, a mixer, a splitter, a matrix, a patch field. */
export const kits = `
kit edge_box {
  inputs in[1..4] as sdi_3g
  outputs out[1..4] as sdi_3g
  outputs loop[1..2] as sdi_3g follow in[1..2]
  network net[1..2] as ethernet_10g
  carries uncompressed
  delay 1 frame
}
kit switch_8 {
  network net[1..8] as ethernet_10g
  forwards
}
kit mixer_4 {
  inputs in[1..4] as sdi_3g
  outputs out[1..4] as sdi_3g
  delay 1 frame
}
kit splitter {
  inputs in1 as sdi_3g
  outputs out[1..4] as sdi_3g follow in1
}
kit matrix_4 {
  inputs in[1..4] as sdi_3g
  outputs out[1..4] as sdi_3g
  routes inputs to outputs
}
kit patch_4 {
  joins front[1..4] with rear[1..4] as sdi_12g
}
`;

/** Harbour Hall: desk, platform and annex, two boxes and one trunk, as the description of the language has it. */
export const finals = `
plan "Harbour Hall science final" { rate 59.94 headroom 10 % slack 3 m }
place desk
place platform
place annex
run desk <-> platform 58 m
run platform <-> annex 24 m
run desk <-> annex 56 m
circuit left_16 at platform 16 A 230 V
kit edge_box {
  inputs in[1..4] as sdi_3g
  outputs out[1..4] as sdi_3g
  outputs loop[1..2] as sdi_3g follow in[1..2]
  network net[1..2] as ethernet_10g
  carries uncompressed
  delay 1 frame
  draws 18 W
  costs 560
}
kit mixer_8 {
  inputs in1 as hdmi_1_4
  inputs in[2..8] as sdi_3g
  outputs out[1..2] as sdi_3g
  delay 1 frame
}
kit camera { draws 12 W }
node box_d : edge_box at desk
node box_p : edge_box at platform powered by left_16
node mixer : mixer_8 at desk
link trunk box_d.net1 <-> box_p.net1 over cat6a
link trunk_b box_d.net2 <-> box_p.net2 over cat6a by annex standby for trunk
source scores at desk sends 1080p60 as hdmi_1_4 into mixer.in1 over hdmi_copper 2 m
source bench : camera at platform sends 1080p59.94 as sdi_3g into box_p.in1 over rg6 12 m powered by left_16
source program from mixer.out1 of bench, scores sends 1080p59.94
source clean from mixer.out2 of bench sends 1080p59.94
destination judges at platform takes 1080p59.94 as sdi_3g from box_p.out1 over rg6 8 m within 6 frames
destination overflow at annex takes 1080p59.94 as sdi_3g from box_p.out2 over rg6 delay 2 frames
destination capture at desk takes 1080p59.94 as sdi_3g from box_d.loop1 over rg59 1 m records 50 Mb/s
link box_d.out1 -> mixer.in2 over rg59 1 m
link mixer.out1 -> box_d.in1 over rg59 1 m
link mixer.out2 -> box_d.in2 over rg59 1 m
feed scores -> mixer.in1
feed bench -> mixer.in2 within 3 frames
feed program -> judges redundant
feed program -> capture
feed clean -> overflow via box_d.in2, box_p.out2
segment results
feed clean -> judges instead of program in results
black overflow in results
measured trunk 61 m
measured program -> judges 5.5 frames
`;

export function linkOf(analysis: Analysis, name: string): Link {
  const link = analysis.links.find((one) => one.name === name);
  if (!link) throw new Error(`No link ${name}: ${analysis.links.map((one) => one.name).join(', ')}`);
  return link;
}

/** The delivery of a feed, without segments or in one. */
export function deliveryOf(analysis: Analysis, feed: string, segment?: string): Delivery {
  const found = analysis.deliveries.find((one) => one.feed.name === feed && one.segment?.name === segment);
  if (!found) throw new Error(`No delivery ${feed} in ${segment}`);
  return found;
}

/** The way of a feed in words: `camera box.in1 box.out1 screen`. */
export function wayOf(analysis: Analysis, feed: string, segment?: string): string | undefined {
  const [route] = deliveryOf(analysis, feed, segment).routes;
  return route && words(route.ports);
}

export function words(ports: readonly Port[]): string {
  return ports.map(({ text }) => text).join(' ');
}

/** The flows on a link in a segment, `forward | backward`. */
export function flowsOn(analysis: Analysis, link: string, segment?: string): string {
  const traffic = analysis.traffic[linkOf(analysis, link).index]!;
  const load = loadIn(traffic, segment === undefined ? undefined : analysis.segments.get(segment));
  const side = ({ flows, pictures }: typeof load.forward) =>
    [...flows.map(({ source }) => source.name), ...pictures.map(({ name }) => name)].join(' ');
  return `${side(load.forward)} | ${side(load.backward)}`;
}

export function loadOn(
  analysis: Analysis,
  link: string,
  segment?: string,
): { forward: number; backward: number } {
  const traffic = analysis.traffic[linkOf(analysis, link).index]!;
  const load = loadIn(traffic, segment === undefined ? undefined : analysis.segments.get(segment));
  return {
    forward: Math.round(load.forward.load_bits_per_second),
    backward: Math.round(load.backward.load_bits_per_second),
  };
}
