import { escapeXml } from '../escape.ts';
import { drawBox } from './draw-box.ts';
import { drawLegend, legendWidth } from './draw-legend.ts';
import { drawRibbon } from './draw-ribbon.ts';
import { drawWire } from './draw-wire.ts';
import { marksIn, markThings, type SceneMarks } from './marks.ts';
import { fonts } from './measures.ts';
import type { Placement, Point, Size } from './placement.ts';
import type { Room, Scene } from './scene.ts';
import { makeSheet, type Sheet } from './sheet.ts';
import { group, n, rect, text } from './svg.ts';
import { fitText } from './text-size.ts';
import { type Theme, type ThemeName, themes } from './themes.ts';

export interface DrawingOptions {
  readonly theme?: ThemeName;
  /** The segment that is shown; null: what is always on. */
  readonly segment?: string | null;
  /** What differs from another drawing of the same show. */
  readonly marks?: SceneMarks;
}

const margin = 24;
const headline = 56;
/**
 * Draws a placed scene as an SVG document that needs nothing else: no script, no font, no link. Each thing is a group
 * with its id in `data-id`, and with all its figures in words as its accessible name.
 */
export function drawSvg(scene: Scene, placement: Placement, options: DrawingOptions = {}): string {
  const { label, width, height, ground, heading, origin, things, legend } = drawParts(
    scene,
    placement,
    options,
  );
  const [w, h] = [n(width), n(height)];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${w} ${h}" width="${w}" height="${h}" role="group" aria-label="${escapeXml(label)}" font-family='${face}'>`,
    ground,
    heading,
    `<g transform="translate(${origin.x} ${origin.y})">`,
    ...things.values(),
    '</g>',
    legend,
    '</svg>',
  ].join('\n');
}

/** A drawing in parts, so that a view can paint anew what has changed alone. */
export interface DrawnParts extends Size {
  /** What it is, for who listens to it. */
  readonly label: string;
  /** Paper and patterns. */
  readonly ground: string;
  readonly heading: string;
  /** Where the coordinates of things begin. */
  readonly origin: Point;
  /** From the lowest to the topmost, by kind and id. */
  readonly things: ReadonlyMap<string, string>;
  readonly legend: string;
}

export function drawParts(
  scene: Scene,
  placement: Placement,
  { theme = 'light', segment = null, marks }: DrawingOptions = {},
): DrawnParts {
  const sheet = makeSheet(scene, placement, themes[theme], segment);
  const inner = Math.max(placement.width, legendWidth);
  const legend = drawLegend(sheet, inner, marks !== undefined);
  const { title, edition } = scene;
  const { paper, ink, faint } = sheet.theme;
  const subtitle = [edition, sheet.situation?.title, sheet.situation?.subtitle].filter(Boolean).join(' · ');
  const legendTop = headline + placement.height + margin;
  const things = new Map([
    ...scene.rooms.map((room) => [`room ${room.id}`, drawRoom(room, sheet)] as const),
    ...scene.ribbons.map((ribbon) => [`ribbon ${ribbon.id}`, drawRibbon(ribbon, sheet)] as const),
    ...scene.wires.map((wire) => [`wire ${wire.id}`, drawWire(wire, sheet)] as const),
    ...scene.boxes.map((box) => [`box ${box.id}`, drawBox(box, sheet)] as const),
  ]);
  return {
    width: inner + 2 * margin,
    height: headline + placement.height + legend.height + 2 * margin,
    label: `${title}: ${subtitle}`,
    ground: `<rect width="100%" height="100%" fill="${paper}"/>${hatch(sheet.theme)}`,
    heading: `<g class="heading">${text(margin, margin + 16, fitText(title, fonts.title, inner, true), fonts.title, ink, { bold: true })}${text(margin, margin + 36, fitText(subtitle, fonts.small, inner), fonts.small, faint)}${scene.boxes.length === 0 ? text(margin, margin + headline + 8, NOTHING, fonts.box, faint) : ''}</g>`,
    origin: { x: margin, y: margin + headline - 12 },
    things: marks ? markThings(things, marksIn(marks, segment), placement, sheet.theme) : things,
    legend: `<g class="legend" transform="translate(${margin} ${n(legendTop)})">${legend.svg}</g>`,
  };
}

export const face = 'system-ui, "Segoe UI", "Helvetica Neue", Arial, "Noto Sans", "DejaVu Sans", sans-serif';

const NOTHING = 'Nothing stands anywhere yet.';

function drawRoom({ id, title }: Room, { placement, theme }: Sheet): string {
  const at = placement.rooms.get(id);
  if (!at) return '';
  const words = fitText(title, fonts.box, at.width - 24, true);
  return group(id, 'room', title, [
    rect(at, `rx="10" fill="${theme.room}" stroke="${theme.roomEdge}"`),
    text(at.x + 16, at.y + 24, words, fonts.box, theme.faint, { bold: true }),
  ]);
}

/** What is too much, told from everything else in black and white. */
function hatch({ ink, paper }: Theme): string {
  return `<defs><pattern id="hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="6" height="6" fill="${paper}"/><rect width="3" height="6" fill="${ink}"/></pattern></defs>`;
}
