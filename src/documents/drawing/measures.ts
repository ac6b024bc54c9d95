/** Sizes of what a drawing is made of, in its own units (pixels at 100 %). */
import type { Box, Ribbon, Scene } from './scene.ts';
import { textWidth } from './text-size.ts';

export const fonts = { title: 18, box: 13, small: 11, port: 11, badge: 10 } as const;

/** Height of a port's line in a box, and of the box's head. */
export const portPitch = 22;
export const headHeight = 42;
export const chipHeight = 30;
/** The line beneath a destination, with its delay. */
export const noteHeight = 18;
export const badgeRadius = 8;
export const ribbonTitleHeight = 20;
/** Between the two lanes of a ribbon. */
export const laneGap = 3;
/** The line beneath a ribbon that says what is wrong with it; always kept free, so that a load moves nothing. */
export const ribbonNoteHeight = 18;

/** 10 Gb/s each way are so high, where the plan's fastest link allows. */
const heightOfTenGigabit = 34;
const highestLane = 64;
const lowestLane = 12;

/** One scale for all ribbons of a drawing. */
export interface RibbonScale {
  readonly height_per_bit_per_second: number;
  /** Capacities below this are drawn higher than they are, so that they can be seen. */
  readonly floor_bits_per_second: number;
}

export function ribbonScale(scene: Scene): RibbonScale {
  const fastest = Math.max(0, ...scene.ribbons.map((ribbon) => ribbon.capacity_bits_per_second ?? 0));
  const usual = heightOfTenGigabit / 10e9;
  const height_per_bit_per_second = fastest * usual > highestLane ? highestLane / fastest : usual;
  return { height_per_bit_per_second, floor_bits_per_second: lowestLane / height_per_bit_per_second };
}

/** The height of one lane of a ribbon. */
export function laneHeight(ribbon: Ribbon, scale: RibbonScale): number {
  return Math.max(lowestLane, (ribbon.capacity_bits_per_second ?? 0) * scale.height_per_bit_per_second);
}

export function ribbonSize(ribbon: Ribbon, scale: RibbonScale): { width: number; height: number } {
  const lanes = ribbon.bothWays && ribbon.standbyFor === undefined ? 2 : 1;
  const words = [
    ribbon.title,
    ribbon.trouble?.text ?? '',
    ribbon.standbyFor ? `stands by for ${ribbon.standbyFor}` : '',
  ];
  const width = Math.min(320, Math.max(150, ...words.map((text) => textWidth(text, fonts.small, true) + 24)));
  return {
    width,
    height: ribbonTitleHeight + lanes * laneHeight(ribbon, scale) + (lanes - 1) * laneGap + ribbonNoteHeight,
  };
}

/** A box is as high as its longer side of ports, as wide as its words. */
export function boxSize(box: Box): { width: number; height: number } {
  if (box.kind !== 'node') {
    return {
      width: Math.min(260, textWidth(box.title, fonts.box) + 2 * badgeRadius + 34),
      height: chipHeight + (box.kind === 'destination' ? noteHeight : 0),
    };
  }
  const sides = {
    west: box.ports.filter((port) => port.side === 'west'),
    east: box.ports.filter((port) => port.side === 'east'),
  };
  const widest = (ports: Box['ports']) =>
    Math.max(
      0,
      ...ports.map((port) => textWidth(port.title, fonts.port) + (port.begins ? 2 * badgeRadius + 6 : 0)),
    );
  const words = Math.max(textWidth(box.title, fonts.box, true), textWidth(box.subtitle, fonts.small));
  const width = Math.min(340, Math.max(words + 28, widest(sides.west) + widest(sides.east) + 48, 110));
  const rows = Math.max(sides.west.length, sides.east.length) + (box.moreFree > 0 ? 1 : 0);
  return { width, height: headHeight + rows * portPitch + 6 };
}
