/** Shown while a plan has nothing to draw: with these lines it has, and nothing is wrong with it. */
export const firstLines = `place desk "Desk"
kit small_mixer { inputs in[1..4] as sdi_3g outputs out1 as sdi_3g }
node mixer "Vision mixer" : small_mixer at desk
source camera "Camera" at desk sends 1080p59.94 as sdi_3g into mixer.in1 over rg6 10 m
feed camera -> mixer.in1`;
