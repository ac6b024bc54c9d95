/** The elements that a drawing is written with. Nothing in them is a style or a script, so they pass any policy. */
import { escapeXml } from '../escape.ts';
import { badgeShape, contrast, edgeOn, inkOn, LEAST_CONTRAST, pictureColour } from './colours.ts';
import { badgeRadius, fonts } from './measures.ts';
import type { Point, Rectangle } from './placement.ts';

/** A number as SVG needs it: at most two decimals. */
export function n(value: number): string {
  return String(Math.round(value * 100) / 100);
}

export interface TextStyle {
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly struck?: boolean;
}

export function text(
  x: number,
  y: number,
  words: string,
  size: number,
  colour: string,
  { anchor = 'start', bold = false, italic = false, struck = false }: TextStyle = {},
): string {
  if (!words) return '';
  const style = `${anchor === 'start' ? '' : ` text-anchor="${anchor}"`}${bold ? ' font-weight="700"' : ''}${italic ? ' font-style="italic"' : ''}${struck ? ' text-decoration="line-through"' : ''}`;
  return `<text x="${n(x)}" y="${n(y)}" font-size="${size}" fill="${colour}"${style}>${escapeXml(words)}</text>`;
}

export function rect(at: Rectangle, attributes: string): string {
  const { x, y, width, height } = at;
  return `<rect x="${n(x)}" y="${n(y)}" width="${n(Math.max(0, width))}" height="${n(Math.max(0, height))}" ${attributes}/>`;
}

/** A thing that can be pointed at: its id and kind, and all that is to be said of it in words. */
export function group(id: string, kind: string, words: string, parts: readonly string[]): string {
  const said = escapeXml(words.trim());
  return `<g class="${kind}" data-id="${escapeXml(id)}" data-kind="${kind}" role="img" aria-label="${said}"><title>${said}</title>${parts.join('')}</g>`;
}

/** A picture's number in its shape and colour; on a strand of its own colour it has an edge like the paper. */
export function badge(number: number, x: number, y: number, paper: string, onStrand = false): string {
  const colour = pictureColour(number);
  const edge = onStrand && contrast(colour, paper) >= LEAST_CONTRAST ? paper : edgeOn(colour, paper);
  const r = badgeRadius;
  const shape = {
    round: `<circle cx="${n(x)}" cy="${n(y)}" r="${r - 0.5}" fill="${colour}" stroke="${edge}"/>`,
    square: `<rect x="${n(x - r + 1)}" y="${n(y - r + 1)}" width="${2 * r - 2}" height="${2 * r - 2}" rx="2" fill="${colour}" stroke="${edge}"/>`,
    diamond: `<path d="M${n(x)} ${n(y - r)}l${r} ${r}l-${r} ${r}l-${r} -${r}z" fill="${colour}" stroke="${edge}"/>`,
  }[badgeShape(number)];
  const size = fonts.badge - (number > 99 ? 3 : badgeShape(number) === 'diamond' ? 1.5 : 0);
  return (
    shape + text(x, y + size * 0.36, String(number), size, inkOn(colour), { anchor: 'middle', bold: true })
  );
}

/** A line of right angles with rounded corners, moved aside by an offset. */
export function path(points: readonly Point[], offset = 0): string {
  const moved = points.map(({ x, y }) => ({ x: x + offset, y: y + offset }));
  const [first, ...rest] = moved;
  if (!first) return '';
  let d = `M${n(first.x)} ${n(first.y)}`;
  for (const [i, point] of rest.entries()) {
    const next = rest[i + 1];
    if (!next) {
      d += `L${n(point.x)} ${n(point.y)}`;
      continue;
    }
    const before = moved[i]!;
    const radius = Math.min(6, distance(before, point) / 2, distance(point, next) / 2);
    const enter = towards(point, before, radius);
    const leave = towards(point, next, radius);
    d += `L${n(enter.x)} ${n(enter.y)}Q${n(point.x)} ${n(point.y)} ${n(leave.x)} ${n(leave.y)}`;
  }
  return d;
}

function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

function towards(from: Point, to: Point, length: number): Point {
  const whole = distance(from, to) || 1;
  return { x: from.x + ((to.x - from.x) * length) / whole, y: from.y + ((to.y - from.y) * length) / whole };
}
