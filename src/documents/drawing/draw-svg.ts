import { escapeXml } from '../escape.ts';
import { drawBox } from './draw-box.ts';
import { drawLegend, legendWidth } from './draw-legend.ts';
import { drawRibbon } from './draw-ribbon.ts';
import { drawWire } from './draw-wire.ts';
import { fonts } from './measures.ts';
import type { Placement } from './placement.ts';
import type { Room, Scene } from './scene.ts';
import { makeSheet, type Sheet } from './sheet.ts';
import { group, n, rect, text } from './svg.ts';
import { fitText } from './text-size.ts';
import { type Theme, type ThemeName, themes } from './themes.ts';

export interface DrawingOptions {
  readonly theme?: ThemeName;
  /** The segment that is shown; null: what is always on. */
  readonly segment?: string | null;
}

const margin = 24;
const headline = 56;
const face = 'system-ui, "Segoe UI", "Helvetica Neue", Arial, "Noto Sans", "DejaVu Sans", sans-serif';

/**
 * Draws a placed scene as an SVG document that needs nothing else: no script, no font, no link. Each thing is a group
 * with its id in `data-id`, and with all its figures in words as its accessible name.
 */
export function drawSvg(
  scene: Scene,
  placement: Placement,
  { theme = 'light', segment = null }: DrawingOptions = {},
): string {
  const sheet = makeSheet(scene, placement, themes[theme], segment);
  const inner = Math.max(placement.width, legendWidth);
  const legend = drawLegend(sheet, inner);
  const [width, height] = [inner + 2 * margin, headline + placement.height + legend.height + 2 * margin];
  const { paper, ink, faint } = sheet.theme;
  const { title } = scene;
  const { situation } = sheet;
  const subtitle = [scene.edition, situation?.title, situation?.subtitle].filter(Boolean).join(' · ');
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${n(width)} ${n(height)}" width="${n(width)}" height="${n(height)}" role="group" aria-label="${escapeXml(`${title}: ${subtitle}`)}" font-family='${face}'>`,
    `<rect width="100%" height="100%" fill="${paper}"/>`,
    hatch(sheet.theme),
    text(margin, margin + 16, fitText(title, fonts.title, inner, true), fonts.title, ink, { bold: true }),
    text(margin, margin + 36, fitText(subtitle, fonts.small, inner), fonts.small, faint),
    `<g transform="translate(${margin} ${margin + headline - 12})">`,
    ...scene.rooms.map((room) => drawRoom(room, sheet)),
    ...scene.ribbons.map((ribbon) => drawRibbon(ribbon, sheet)),
    ...scene.wires.map((wire) => drawWire(wire, sheet)),
    ...scene.boxes.map((box) => drawBox(box, sheet)),
    '</g>',
    `<g transform="translate(${margin} ${n(headline + placement.height + margin)})">${legend.svg}</g>`,
    '</svg>',
  ].join('\n');
}

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
