/** Where things of a drawing lie, in its own unit: a pixel at 100 %. */

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface Rectangle extends Point, Size {}

export interface PlacedLine {
  readonly points: readonly Point[];
  readonly label: Rectangle | undefined;
}

/** Where everything of a scene lies. Nothing in it depends on loads or segments: those never move anything. */
export interface Placement extends Size {
  /** By their ids, as everything below. */
  readonly rooms: ReadonlyMap<string, Rectangle>;
  readonly boxes: ReadonlyMap<string, Rectangle>;
  /** The middle of each port, on the edge of its box. */
  readonly ports: ReadonlyMap<string, Point>;
  /** From left to right, whichever way the picture goes. */
  readonly wires: ReadonlyMap<string, PlacedLine>;
  readonly ribbons: ReadonlyMap<string, Rectangle>;
  /** The short cables from a ribbon's ends to its ports, the left one first. */
  readonly stubs: ReadonlyMap<string, readonly PlacedLine[]>;
}
