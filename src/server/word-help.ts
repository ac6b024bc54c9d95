/** What each word of the language is for, for hovers and completion; the words that open a statement with a pattern. */

export interface StatementHelp {
  readonly says: string;
  /** A whole statement to fill in: what stands in `<>` is to be replaced. */
  readonly pattern: string;
  readonly example: string;
}

/** Statements, in the order in which a plan is usually written. */
export const statementHelp: ReadonlyMap<string, StatementHelp> = new Map(
  Object.entries({
    plan: {
      says: 'The event: one to a plan, in its own file. Its settings hold for everything in the plan.',
      pattern: 'plan "<Title>" {\n  revision "<A>"\n  rate <59.94>\n  headroom <10 %>\n  slack <3 m>\n}',
      example: 'plan "Evening lecture" {\n  rate 59.94\n  slack 3 m\n}',
    },
    import: {
      says: "Brings in another file's names: kit, stock, a hall. The path is relative to this file.",
      pattern: 'import "<kit.feedplot>"',
      example: 'import "kit/house.feedplot"',
    },
    place: {
      says: 'A spot where kit stands.',
      pattern: 'place <name> "<Where it is>"',
      example: 'place desk "Control desk, balcony"',
    },
    run: {
      says: 'The real way of cables between two places and how long it is. A link without a length takes the shortest chain of runs and slack at each end.',
      pattern: 'run <from> <-> <to> <40 m> "<route>"',
      example: 'run desk <-> platform 58 m "balcony rail, then down the left wall"',
    },
    circuit: {
      says: 'A mains circuit at a place. Mains distribution is work for a qualified electrician.',
      pattern: 'circuit <name> "<Where the socket is>" at <place> <16 A> <230 V>',
      example: 'circuit left_16 "Left wing, blue socket" at platform 16 A 230 V',
    },
    kit: {
      says: 'A kind of thing that is used again and again: a box, a camera, a screen, with its ports, delay, power and price.',
      pattern:
        'kit <name> "<Label>" {\n  inputs in[1..<4>] as <sdi_3g>\n  outputs out[1..<2>] as <sdi_3g>\n  <>\n}',
      example:
        'kit edge_box "Edge box" {\n  inputs in[1..4] as sdi_3g\n  network net as ethernet_10g\n  carries uncompressed\n  delay 1 frame\n}',
    },
    cable: {
      says: 'A kind of cable that the library does not know.',
      pattern: 'cable <name> "<Label>" {\n  like <rg6>\n  <>\n}',
      example: 'cable thin_coax {\n  medium coax\n  loss 30 dB per 100 m at 1485 MHz\n}',
    },
    interface: {
      says: 'A kind of socket that the library does not know.',
      pattern: 'interface <name> "<Label>" {\n  signal <sdi>\n  rate <2.97 Gb/s>\n  <>\n}',
      example: 'interface ethernet_10g_sr {\n  signal ethernet\n  rate 10 Gb/s\n  reach om3 300 m\n}',
    },
    node: {
      says: 'One box of a kit, at a place.',
      pattern: 'node <name> "<Label>" : <kit> at <place>',
      example: 'node box_d "Box D" : edge_box at desk powered by desk_16',
    },
    source: {
      says: 'Where a picture begins: a camera or laptop that is plugged into a port, or the output of a mixer or player.',
      pattern:
        'source <name> "<Label>" at <place> sends <1080p59.94> as <sdi_3g> into <node.port> over <rg6> <10 m>',
      example:
        'source bench "Bench camera" at platform sends 1080p59.94 as sdi_3g into box_p.in1 over rg6 12 m',
    },
    destination: {
      says: 'Where a picture is watched, heard, recorded or streamed.',
      pattern:
        'destination <name> "<Label>" at <place> takes <1080p59.94> as <sdi_3g> from <node.port> over <rg6> <10 m>',
      example:
        'destination judges "Judges\' monitor" at platform takes 1080p59.94 as sdi_3g from box_p.out1 over rg6 8 m within 6 frames',
    },
    link: {
      says: 'A cable between two ports: `->` one way, `<->` both ways. Without a length it takes the shortest chain of runs.',
      pattern: 'link <name> <node.port> <-> <other.port> over <cat6a>',
      example: 'link trunk "T1" box_d.net1 <-> box_p.net1 over cat6a',
    },
    feed: {
      says: 'The wish: this picture, there. Its way through the cables is found and every load and delay on it worked out.',
      pattern: 'feed <source> -> <destination>',
      example: 'feed program -> judges, host redundant within 6 frames',
    },
    segment: {
      says: 'A part of the running order in which something differs.',
      pattern: 'segment <name> "<What happens>"',
      example: 'segment results "Scores on the monitor"',
    },
    black: {
      says: 'Destinations without a picture in some segments.',
      pattern: 'black <destination> in <segment>',
      example: 'black overflow in results',
    },
    uplink: {
      says: "The venue's internet, upload. Half of what was measured is planned with.",
      pattern: 'uplink <name> "<Label>" at <place> <40 Mb/s>',
      example: 'uplink hall_net "House line" at desk 40 Mb/s',
    },
    stock: {
      says: 'Pieces of cable that are at hand, or can be had in any number.',
      pattern: 'stock <cat6a> <1> of <75 m> costs <61>',
      example: 'stock rg6 any of 25 m costs 22',
    },
    case: {
      says: 'What travels in which case. What one person lifts stays under about 23 kg.',
      pattern: 'case <name> "<Label>" holds <things> weighs <6 kg> up to <23 kg>',
      example: 'case blue "Case 1" holds box_d, trunk, "ramps" weighs 6 kg up to 23 kg',
    },
    accept: {
      says: 'A finding that the crew lives with, and why. It is printed in the book under accepted risks.',
      pattern: 'accept <check> on <subject> "<why>"',
      example: 'accept rate-differs on scores "the mixer converts it, seen at the rehearsal"',
    },
    measured: {
      says: 'A fact found on site. It takes the place of the planned value everywhere.',
      pattern: 'measured <link> <61 m>',
      example: 'measured program -> judges 5.5 frames',
    },
    proved: {
      says: 'Seen on site: this picture arrives there.',
      pattern: 'proved <source> -> <destination> on <2027-05-14>',
      example: 'proved program -> judges on 2027-05-14',
    },
  }),
);

/** Words inside statements: clauses and settings. */
export const wordHelp: ReadonlyMap<string, string> = new Map(
  Object.entries({
    revision: 'Which state of the plan this is, as printed on every sheet.',
    date: 'The day of the event: year-month-day.',
    lasts: 'How long the show runs; recordings are sized by it.',
    rate: 'In a plan: the house rate, frames (or fields) a second. In an interface: its line rate, each way.',
    headroom: 'Share of every network link that is kept free. Using it is a warning.',
    slack: 'Spare cable at each end of every link whose length comes from runs.',
    spares: 'Extra pieces of each kind of cable and kit, rounded up.',
    units: '`metric` or `feet`: how lengths are shown.',
    currency: 'Three letters of ISO 4217, such as USD.',
    subnet: 'IPv4 prefix from which nodes get their addresses.',
    multicast: 'IPv4 prefix from which pictures on the network get their groups.',
    ptp: 'Domain of the timing protocol, 0 to 127.',
    packing: '`equal` or `block`: how a picture is cut into packets (SMPTE ST 2110-20).',
    tagged: 'Every packet carries one VLAN tag, which adds to the load.',
    lipsync: '`bt1359`, `r37` or `is191`: the rule by which lip sync is judged.',
    blanking: 'Version of the reduced-blanking formula that laptops use here: 1 or 2.',
    inputs: 'Ports that pictures come in by: `in[1..4]` is a row of four.',
    outputs: 'Ports that pictures go out by.',
    network: 'Ports that many pictures go through, both ways at once.',
    follow: 'These outputs copy those inputs, one by one, without delay: a loop-through, a splitter.',
    gives: 'This output turns every picture into that format: a scaler or a rate converter.',
    joins:
      'Two rows of ports that pass either way without regenerating: patch field, tie lines, barrels. Cables on both sides count as one.',
    with: 'The other row of ports that is joined.',
    carries:
      'How pictures ride on the network: uncompressed, or compressed to a rate, a ratio or bits for each pixel.',
    uncompressed: 'As SMPTE ST 2110-20 has it; 4:2:2 10 bit unless said otherwise.',
    compressed: '`compressed at 180 Mb/s`, `compressed 8:1` or `compressed to 2 bit per pixel`.',
    forwards:
      'Joins its network ports as a switch does; nothing goes back out of the port that it came in by.',
    routes: '`routes inputs to outputs`: joins any input to any output, as a matrix does.',
    delay:
      'In frames of what comes in, or a time: for each passage through a kit, or of the source or screen itself.',
    draws: 'Power that it takes from the mains.',
    poe: 'Power over the network: `poe class 4` takes it, `supplies poe 60 W per port` gives it.',
    class: 'Class of power over the network, 0 to 8 (IEEE 802.3).',
    supplies: 'Power that a switch gives over its network ports: for each port, and in all.',
    weighs: 'Weight; of a case: empty. Of a cable: for each metre.',
    costs: 'Price of one, in the currency of the plan.',
    firmware: 'On a kit the version that the crew wants, on a node the one found in it.',
    medium: 'What kind of cable: coax, pair, fibre, …',
    like: 'This cable has the reach and the losses of that one wherever it states none.',
    screened: 'The cable has a screen.',
    stranded: 'How much more it loses than solid cable: 20 % for ordinary patch cord.',
    loss: 'What is lost on the way: `loss 17.7 dB per 100 m at 742.5 MHz`.',
    resistance: 'Resistance of the loop, which costs power over the network.',
    memory: '`from memory`: nobody looked the value up. Verify before relying on it.',
    signal: 'What rides on the interface: sdi, ethernet, hdmi, sound.',
    clock: 'Highest character rate of a display link.',
    lanes: 'Several lanes at once: `lanes 4 of 3.125 Gb/s`.',
    wavelength: 'Wavelength of the light in a fibre.',
    budget: 'Loss that the receiver makes good.',
    accepts: 'Interfaces that a socket of this one takes too.',
    reach: 'How long that cable may be: `reach cat6 55 m good 37 m` is good to 37 m and doubtful to 55 m.',
    good: 'Up to here without doubt.',
    label: 'What the label on a port says.',
    address: 'A fixed IPv4 address.',
    at: 'Where it stands; in a run how warm it is; in a kit the rate.',
    as: 'The interface, where several are possible.',
    by: 'Places that the cable is laid through.',
    over: 'The cable, and its length if it is known.',
    into: 'The input that it is plugged into.',
    from: 'The output that it comes out of; of a circuit: the one that feeds it.',
    of: 'What a picture is made of: its delay is counted from there.',
    sends: 'The format that the source sends.',
    takes: 'The formats that the destination can show.',
    powered: 'The circuits that it draws from, shared equally.',
    encrypted: 'Copy-protected: it may not leave display links.',
    installed: "The house's own cable: not packed, bought, pulled or struck.",
    shares: 'Another core in the same sheath: one length, one piece, lost together.',
    connections: 'Connectors on the way of a fibre.',
    splices: 'Splices on the way of a fibre.',
    within: 'The greatest delay that is allowed, in frames of the source or as a time.',
    records: 'Data rate of the recording.',
    sound: 'When the sound is heard there: `sound after 12 ms from 20 m`.',
    after: 'Delay of the sound.',
    streams: 'Data rates that go to the internet, their sound included.',
    standby: '`standby for` a link: carries nothing until that one fails.',
    for: 'The link that it stands by for.',
    via: 'Ports that the picture must go through, in this order.',
    redundant: 'Must survive the loss of any one network link and of all links in any one run.',
    seamless: 'Two copies at once on ways that share no network link (SMPTE ST 2022-7).',
    in: 'Only in these segments.',
    instead: '`instead of` a source: takes the place of that feed there.',
    without: 'Worked out with these out of service.',
    any: 'Can be had in any number.',
    holds: 'What travels in it; words in quotes for loose things.',
    up: '`up to 23 kg`: how heavy it may be.',
    on: 'What is meant; in `proved`: the day.',
    audio: 'Channels of sound; alone: sound without a picture.',
    bit: 'Bits for each sample: 8, 10, 12 or 16.',
    RGB: 'Sampling of computers: no colour is left out.',
    per: 'For each: `per 100 m`, `per port`.',
    'powered by': 'The circuits that it draws from, shared equally.',
    'standby for': 'Carries nothing until that link fails.',
    'instead of': 'Takes the place of that feed there.',
    'up to': 'How heavy it may be.',
    'poe class': 'Class of power over the network, 0 to 8 (IEEE 802.3).',
    'compressed to': 'Bits for each pixel that are left.',
    'in all': 'What the switch gives over all its ports together.',
  }),
);
