/** Sizes of what a drawing is made of, in its own unit (a pixel at 100 %). */
import type { Size } from './placement.ts';
import type { Box, BoxPort, Ribbon, Scene, Watched, Wire } from './scene.ts';
import { fitText, textWidth, wrapText } from './text-size.ts';

export const fonts = { title: 18, box: 13, small: 11, port: 11, badge: 10, lane: 10 } as const;

/** From one line of text to the next. */
export const lineHeights = { box: 16, small: 14 } as const;
/** From one port to the next. */
export const portPitch = 22;
export const badgeRadius = 8;
/** Between the two lanes of a ribbon. */
export const laneGap = 3;
/** Inside a box: between its edge and its words. */
const boxPadding = 12;
/** Between a box's edge and the words at a port. */
export const portInset = 10;
/** Beside the words at a port: the number of the picture that begins there. */
export const badgeRoom = 2 * badgeRadius + 5;
/** Between the words of two opposite ports. */
const portGap = 18;

/** Longer words are broken into lines, and past the last one shortened; the whole is in the thing's own description. */
const widest = { nodeTitle: 200, chip: 170, portTitle: 260, ribbon: 230 } as const;

/** 10 Gb/s each way are so high, where the plan's fastest link allows. */
const heightOfTenGigabit = 34;
const highestLane = 64;
const lowestLane = 14;
const narrowestRibbon = 170;

/** One scale for all ribbons of a drawing. */
export interface RibbonScale {
  readonly height_per_bit_per_second: number;
  /** Capacities below this are drawn higher than they are, so that they can be seen. */
  readonly floor_bits_per_second: number;
}

export function ribbonScale(scene: Scene): RibbonScale {
  let fastest = scene.fastest_bits_per_second ?? 0;
  for (const { capacity_bits_per_second } of scene.ribbons)
    fastest = Math.max(fastest, capacity_bits_per_second ?? 0);
  const usual = heightOfTenGigabit / 10e9;
  const height_per_bit_per_second = fastest * usual > highestLane ? highestLane / fastest : usual;
  return { height_per_bit_per_second, floor_bits_per_second: lowestLane / height_per_bit_per_second };
}

/** The height of one lane of a ribbon. */
export function laneHeight(ribbon: Ribbon, scale: RibbonScale): number {
  return Math.max(lowestLane, (ribbon.capacity_bits_per_second ?? 0) * scale.height_per_bit_per_second);
}

/** A ribbon and the words around it, from the top. */
export interface RibbonMeasures extends Size {
  readonly title: readonly string[];
  readonly detail: readonly string[];
  /** Where the lanes begin. */
  readonly lanesTop: number;
  readonly laneHeight: number;
  readonly lanes: 1 | 2;
  /** Where the words below the lanes begin. */
  readonly notesTop: number;
  /** What is wrong with the cable, in lines. */
  readonly trouble: readonly string[];
  readonly standby: readonly string[];
}

export function measureRibbon(ribbon: Ribbon, scale: RibbonScale): RibbonMeasures {
  const standbyWords = ribbon.standbyFor === undefined ? '' : `stands by for ${ribbon.standbyFor}`;
  const trouble = wrapText(troubleText(ribbon), fonts.small, widest.ribbon, 2, true).filter(Boolean);
  const standby = wrapText(standbyWords, fonts.small, widest.ribbon, 2).filter(Boolean);
  const title = wrapText(ribbon.title, fonts.small, widest.ribbon, 2, true).filter(Boolean);
  const detail = wrapText(ribbon.detail, fonts.small, widest.ribbon, 1).filter(Boolean);
  const wanted = [
    ...[...title, ...trouble].map((line) => textWidth(line, fonts.small, true)),
    ...detail.map((line) => textWidth(line, fonts.small)),
    ...standby.map((line) => textWidth(line, fonts.small) + 8),
  ];
  const width = Math.ceil(Math.max(narrowestRibbon, ...wanted));
  const lane = Math.max(
    laneHeight(ribbon, scale),
    standby.length > 0 ? standby.length * lineHeights.small + 4 : 0,
  );
  const lanes = ribbon.bothWays ? 2 : 1;
  const lanesTop = (title.length + detail.length) * lineHeights.small + 5;
  const notesTop = lanesTop + lanes * lane + (lanes - 1) * laneGap;
  // Two lines for what is too much in the lanes are always there, so that a load moves nothing.
  const height = notesTop + (trouble.length + 2) * lineHeights.small + 6;
  return { width, height, title, detail, lanesTop, laneHeight: lane, lanes, notesTop, trouble, standby };
}

function troubleText({ trouble }: Ribbon): string {
  return trouble ? `▲ ${trouble.text}` : '';
}

/** What stands on a wire: numbers of its pictures, then its words. */
export interface LabelMeasures extends Size {
  readonly words: string;
  /** Where the words begin, from the label's left. */
  readonly wordsLeft: number;
}

export function measureLabel({ text, trouble, standbyFor, numbers }: Wire): LabelMeasures {
  const standby = standbyFor === undefined ? undefined : `stands by for ${standbyFor}`;
  const words = [text, standby, trouble?.text].filter(Boolean).join(' · ');
  const inset = trouble ? 10 : 4;
  const wordsLeft = inset + numbers * (2 * badgeRadius) + (words && numbers > 0 ? 4 : 0);
  return {
    words,
    wordsLeft,
    width: Math.ceil(wordsLeft + textWidth(words, fonts.small, trouble !== undefined) + inset),
    height: 2 * badgeRadius + 2,
  };
}

/** A node, source or destination, from the top. */
export interface BoxMeasures extends Size {
  readonly title: readonly string[];
  readonly subtitle: readonly string[];
  /** The middle of the first port's line. */
  readonly firstPort: number;
}

export function measureBox(box: Box): BoxMeasures {
  return box.kind === 'node' ? measureNode(box) : measureChip(box);
}

/** A box is as high as its longer side of ports, as wide as its words. */
function measureNode(box: Box): BoxMeasures {
  const sides = { west: 0, east: 0 };
  const rows = { west: 0, east: 0 };
  for (const port of box.ports) {
    sides[port.side] = Math.max(sides[port.side], portInset + portWordsWidth(port));
    rows[port.side]++;
  }
  const between = sides.west > 0 && sides.east > 0 ? portGap : boxPadding;
  const ofPorts = sides.west + sides.east + between;
  const most = Math.max(widest.nodeTitle, ofPorts - 2 * boxPadding);
  const title = wrapText(box.title, fonts.box, most, 2, true);
  const subtitle = wrapText(box.subtitle, fonts.small, most, 2).filter(Boolean);
  const words = Math.max(
    ...title.map((line) => textWidth(line, fonts.box, true)),
    ...subtitle.map((line) => textWidth(line, fonts.small)),
    box.moreFree > 0 ? textWidth(moreFreeText(box), fonts.small) : 0,
  );
  const head = 8 + title.length * lineHeights.box + subtitle.length * lineHeights.small + 4;
  const foot = box.moreFree > 0 ? lineHeights.small + 6 : 4;
  return {
    title,
    subtitle,
    width: Math.ceil(Math.max(words + 2 * boxPadding, ofPorts, 80)),
    height: head + Math.max(rows.west, rows.east) * portPitch + foot,
    firstPort: head + portPitch / 2,
  };
}

/** A chip has its number beside its words, and beneath a destination there is room for its delay. */
function measureChip(box: Box): BoxMeasures {
  const title = wrapText(box.title, fonts.box, widest.chip, 2);
  const words = Math.max(...title.map((line) => textWidth(line, fonts.box)));
  const height = title.length * lineHeights.box + 14;
  return {
    title,
    subtitle: [],
    width: Math.max(Math.ceil(words + 2 * badgeRadius + 34), box.kind === 'destination' ? noteWidth : 0),
    height: height + box.noteLines * lineHeights.small + (box.noteLines > 0 ? 4 : 0),
    firstPort: height / 2,
  };
}

/** The narrowest destination, so that most delays take one line beneath it. */
const noteWidth = 124;

/** What is written beneath a destination. */
export function noteLines(box: Box, { text, trouble }: Watched): string[] {
  const width = measureChip(box).width;
  return wrapText(trouble ? `▲ ${text}` : text, fonts.small, width, 3, trouble).filter(Boolean);
}

/** What is written at a port. */
export function portTitle(port: BoxPort): string {
  return fitText(port.title, fonts.port, widest.portTitle);
}

function portWordsWidth(port: BoxPort): number {
  return textWidth(portTitle(port), fonts.port) + (port.begins === undefined ? 0 : badgeRoom);
}

export function moreFreeText({ moreFree }: Box): string {
  return `${moreFree} more free`;
}
