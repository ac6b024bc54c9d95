/**
 * A small show for tests of the editor: two boxes, one trunk, two pictures to the desk, one back, another in a segment.
 *
 * By hand, with 2.684 Gb/s for a 1080p59.94 picture with its sound on the wire (see the tests of the physics): two to
 * the desk are 5.368 Gb/s, 53.7 % of 10 Gb/s; one back is 26.8 %.
 */
export const kit = `/** Two pictures each way. */
kit box "Edge box" {
  inputs in[1..4] as sdi_3g
  outputs out[1..4] as sdi_3g
  network net[1..2] as ethernet_10g_t
  carries uncompressed
  delay 1 frame
}
kit mixer_4 "Vision mixer" {
  inputs in[1..4] as sdi_3g
  outputs out[1..2] as sdi_3g
  delay 1 frame
}
`;

export const show = `plan "Small show" {
  rate 59.94
  headroom 10 %
  slack 3 m
}

import "kit.feedplot"

place desk "Desk"
place stage "Stage, left"
run stage <-> desk 40 m "along the wall"

node box_s "Box S" : box at stage
node box_d "Box D" : box at desk
node mixer "Mixer" : mixer_4 at desk

link trunk "T1" box_s.net1 <-> box_d.net1 over cat6a

source wide "Wide camera" at stage sends 1080p59.94 into box_s.in1 over rg6 12 m
source close at stage sends 1080p59.94 into box_s.in2 over rg6 12 m
source program "Program" from mixer.out1 sends 1080p59.94
source clean "Without titles" from mixer.out2 of close sends 1080p59.94

link box_d.out1 -> mixer.in1 over rg6 1 m
link box_d.out2 -> mixer.in2 over rg6 1 m
link mixer.out1 -> box_d.in1 over rg6 1 m
link mixer.out2 -> box_d.in2 over rg6 1 m

destination screen "Stage screen" at stage takes 1080p59.94 from box_s.out1 over rg6 12 m within 6 frames

feed wide -> mixer.in1
feed close -> mixer.in2
feed program -> screen

segment finale "The screen without titles"
feed clean -> screen instead of program in finale
`;

export const files = { 'show.feedplot': show, 'kit.feedplot': kit };
