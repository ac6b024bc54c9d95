/** A plan with names that would harm: formulas, markup, paths, devices, a very long one, and scripts of many kinds. */
const longName = `${'very long name '.repeat(19)}with an end`;

/** The labels that people see; each must come through everything unharmed. */
export const hostileLabels = {
  formula: '=HYPERLINK(x)',
  plus: '+spare',
  minus: '-2+3',
  at: '@SUM(1)',
  markup: '<script>alert(2)</script>',
  path: '../../x',
  long: longName,
  unbroken: 'x'.repeat(300),
  arabic: 'صندوق المسرح',
  hebrew: 'שולחן הבקרה',
  japanese: '日本語のカメラ、一番',
  korean: '한국어 화면',
} as const;

export const hostileShow = `/** <img src=x onerror=alert(1)> */
plan "</title><script>alert(1)</script> ../../x" {
  revision "=1+1"
  date 2027-05-14
  slack 2 m
}
kit box "<b>box</b>" {
  inputs in[1..4] as sdi_3g
  outputs out[1..4] as sdi_3g
  network net[1..2] as ethernet_10g
  carries uncompressed
  delay 1 frame
  draws 18 W
  weighs 1.2 kg
  costs 560
}
kit mix "Mixer" {
  inputs in[1..8] as sdi_3g
  outputs out[1..4] as sdi_3g
  delay 1 frame
}
place desk "${hostileLabels.hebrew}"
place stage "舞台・左袖"
run desk <-> stage 40 m "along | the \`wall\` *here*"
circuit c1 "${hostileLabels.at}" at desk 16 A 230 V
node a "${hostileLabels.arabic}" : box at stage powered by c1 { label in1 "كاميرا 1" }
node b "制御室ボックス" : box at desk powered by c1
node mixer "${hostileLabels.formula}" : mix at desk powered by c1
link t "${hostileLabels.minus}" a.net1 <-> b.net1 over cat6a
link t2 "${hostileLabels.plus}" a.net2 <-> b.net2 over cat6a standby for t
source 日本 "${hostileLabels.japanese}" at stage sends 1080p59.94 as sdi_3g into a.in1 over rg6 5 m
source con "${hostileLabels.markup}" at stage sends 1080p50 as sdi_3g into a.in2 over rg6 5 m
source lng "${hostileLabels.long}" at stage sends 1080p59.94 as sdi_3g into a.in3 over rg6 5 m
source constructor "${hostileLabels.unbroken}" at stage sends 1080p59.94 as sdi_3g into a.in4 over rg6 5 m
link b.out1 -> mixer.in1 over rg6 2 m
link b.out2 -> mixer.in2 over rg6 2 m
link b.out3 -> mixer.in3 over rg6 2 m
link b.out4 -> mixer.in4 over rg6 2 m
source prog "مرحبا بالعالم" from mixer.out1 sends 1080p59.94
link mixer.out1 -> b.in1 over rg6 2 m
destination mon "${hostileLabels.path}" at stage takes 1080p59.94 as sdi_3g from a.out1 over rg6 4 m
destination __proto__ "${hostileLabels.korean}" at stage takes 1080p59.94 as sdi_3g from a.out2 over rg6 4 m
feed 日本 -> mixer.in1
feed con -> mixer.in2
feed lng -> mixer.in3
feed constructor -> mixer.in4
feed prog -> mon, __proto__
segment toString "${hostileLabels.markup}"
black mon in toString
case k "=cmd|' /C calc'!A0" holds a, b, t, "=tab" weighs 3 kg up to 23 kg
`;
