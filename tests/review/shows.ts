/** A small show in two files, and changes of it: desk and platform, two boxes, one trunk with room for one more picture. */

export const kit = `
kit edge_box "Edge box" {
  inputs in[1..4] as sdi_3g
  outputs out[1..4] as sdi_3g
  network net[1..2] as ethernet_10g
  carries uncompressed
  delay 1 frame
  draws 18 W
  costs 560
}
kit mixer_8 "Mixer" {
  inputs in[1..8] as sdi_3g
  outputs out[1..2] as sdi_3g
  delay 1 frame
  draws 60 W
}
kit camera "Camera" { draws 24 W }
`;

export const plan = `
plan "Spring lecture" { rate 59.94 headroom 10 % slack 3 m }
import "kit.feedplot"
place desk "Desk"
place platform "Platform"
run desk <-> platform 40 m "left wall"
circuit white "White socket" at desk 16 A 230 V
circuit blue "Blue socket" at platform 16 A 230 V
node box_d "Box D" : edge_box at desk powered by white
node box_p "Box P" : edge_box at platform powered by blue
node mixer "Mixer" : mixer_8 at desk powered by white
link trunk "T1" box_d.net1 <-> box_p.net1 over cat6a
source left "Left camera" : camera at platform sends 1080p59.94 as sdi_3g into box_p.in1 over rg6 8 m powered by blue
source right "Right camera" : camera at platform sends 1080p59.94 as sdi_3g into box_p.in2 over rg6 8 m powered by blue
source program "Program" from mixer.out1 of left, right sends 1080p59.94
destination speaker "Speaker's screen" at platform takes 1080p59.94 as sdi_3g from box_p.out1 over rg6 6 m
destination recorder "Recorder" at desk takes 1080p59.94 as sdi_3g from mixer.out2 over rg6 1 m
source record_out "Record out" from mixer.out2 of left, right sends 1080p59.94
link box_d.out1 -> mixer.in1 over rg6 1 m
link box_d.out2 -> mixer.in2 over rg6 1 m
link mixer.out1 -> box_d.in1 over rg6 1 m
feed left -> mixer.in1
feed right -> mixer.in2
feed program -> speaker
feed record_out -> recorder
`;

/** One more camera from the platform to the mixer: the trunk carries so much more. */
export function withCamera(text: string, name: string, input: number): string {
  return `${text}
source ${name} "${name} camera" : camera at platform sends 1080p59.94 as sdi_3g into box_p.in${input} over rg6 8 m powered by blue
link box_d.out${input} -> mixer.in${input} over rg6 1 m
feed ${name} -> mixer.in${input}
`;
}

/** A text with one thing in it written otherwise. */
export function changed(text: string, from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`The text has no ${from}`);
  return text.replaceAll(from, to);
}
