/**
 * What a drawing shows, before anything has a position: rooms, boxes, wires, ribbons, and which pictures ride where in
 * each part of the show. Plain values, so that it can be sent to a view that lays it out and draws it.
 */

/** A picture keeps its number and colour along every cable it rides. */
export interface PictureKey {
  readonly number: number;
  /** The source's name. */
  readonly name: string;
  readonly title: string;
}

export interface Room {
  readonly id: string;
  readonly title: string;
}

export interface BoxPort {
  /** `box_d.net1`. */
  readonly id: string;
  readonly title: string;
  /** Where its cable leaves the box. */
  readonly side: 'west' | 'east';
  readonly free: boolean;
  /** Number of the picture that begins here. */
  readonly begins: number | undefined;
}

/** A node, or the chip of a source or destination. */
export interface Box {
  readonly id: string;
  readonly kind: 'node' | 'source' | 'destination';
  readonly title: string;
  readonly subtitle: string;
  /** The room's id; undefined: it stands nowhere yet. */
  readonly room: string | undefined;
  readonly ports: readonly BoxPort[];
  /** Free ports that are not drawn. */
  readonly moreFree: number;
  /** What a destination shows takes so many lines beneath it, in whichever part of the show. */
  readonly noteLines: number;
  /** A source's own picture. */
  readonly picture: number | undefined;
}

export interface SceneEnd {
  readonly box: string;
  readonly port: string;
}

/** Words for what is wrong with a cable: told by a shape and in words, never by colour alone. */
export interface Trouble {
  readonly grave: boolean;
  readonly text: string;
}

/** A cable that carries one picture. */
export interface Wire {
  readonly id: string;
  readonly from: SceneEnd;
  readonly to: SceneEnd;
  /** Its own label or name; empty without one. */
  readonly name: string;
  /** Its length, and its label if it has one. */
  readonly text: string;
  readonly bothWays: boolean;
  /** Its first end lies left. */
  readonly fromLeft: boolean;
  /** So many numbers of pictures have room on it: as many as ride on it at once in any part of the show; none beside a chip that has the number. */
  readonly numbers: number;
  readonly trouble: Trouble | undefined;
  readonly standbyFor: string | undefined;
}

/** A network link: as high as its capacity each way. */
export interface Ribbon {
  readonly id: string;
  readonly from: SceneEnd;
  readonly to: SceneEnd;
  /** Its own label or name; empty without one. */
  readonly name: string;
  /** Its name and cable. */
  readonly title: string;
  /** Its length and how far it may reach. */
  readonly detail: string;
  readonly capacity_bits_per_second: number | undefined;
  readonly bothWays: boolean;
  /** Its first end lies left; so the way as written goes right. */
  readonly fromLeft: boolean;
  readonly standbyFor: string | undefined;
  readonly trouble: Trouble | undefined;
}

export interface Strand {
  readonly picture: number;
  readonly load_bits_per_second: number;
}

export interface Lane {
  readonly strands: readonly Strand[];
  /** Sound alone and other flows too thin to see are strands as well; this is all of them together. */
  readonly load_bits_per_second: number;
  /** `46 % free`; or what is too much, when it is. */
  readonly text: string;
  readonly over: boolean;
  /** `0.7 Gb/s too much`, when it is. */
  readonly excess: string;
}

export interface RibbonLoad {
  readonly ribbon: string;
  readonly forward: Lane;
  readonly backward: Lane;
}

export interface WireLoad {
  readonly wire: string;
  readonly pictures: readonly number[];
}

/** What a destination shows, or what comes to the input of a node that a feed ends at. */
export interface Watched {
  /** The destination; the input's `mixer.in2` in `SceneSituation.arrivals`. */
  readonly box: string;
  readonly picture: number | undefined;
  readonly text: string;
  readonly trouble: boolean;
}

/** One part of the show: only strands and badges change from one to the next. */
export interface SceneSituation {
  readonly segment: string | null;
  readonly title: string;
  readonly subtitle: string;
  readonly wires: readonly WireLoad[];
  readonly ribbons: readonly RibbonLoad[];
  readonly watched: readonly Watched[];
  /** What comes to the inputs of nodes. */
  readonly arrivals: readonly Watched[];
  /** Ids of links and boxes that are out of service. */
  readonly lost: readonly string[];
  /** For each feed the ids of what it passes, for tracing it. */
  readonly traces: readonly Trace[];
}

export interface Trace {
  /** `program -> judges`. */
  readonly feed: string;
  readonly picture: number;
  /** Ids of the boxes and links that are drawn, in the order in which the picture passes them. */
  readonly passes: readonly string[];
  /** Its delay and limit. */
  readonly text: string;
}

export interface Scene {
  readonly title: string;
  /** `revision C · 2027-05-14`. */
  readonly edition?: string;
  readonly pictures: readonly PictureKey[];
  readonly rooms: readonly Room[];
  readonly boxes: readonly Box[];
  readonly wires: readonly Wire[];
  readonly ribbons: readonly Ribbon[];
  readonly situations: readonly SceneSituation[];
  /** The fastest link of all that is drawn in the same scale, where another scene stands beside this one. */
  readonly fastest_bits_per_second?: number;
}
