import type { Faces } from './faces.ts';
import { type Direction, visualRuns } from './visual-runs.ts';

export interface OutlinePoint {
  readonly x: number;
  readonly y: number;
}

/** Closed lines of points: what is inside by the non-zero rule is filled. */
export type Outline = readonly (readonly OutlinePoint[])[];

/** Curves become so many straight pieces: letters of a test picture need no more. */
const PIECES = 6;

/** The shapes of a line of text, from its left end on the baseline. */
export function textOutline(
  line: string,
  at: OutlinePoint,
  size: number,
  faces: Faces,
  base?: Direction,
): Outline {
  const contours: OutlinePoint[][] = [];
  let x = at.x;
  for (const { face, text } of visualRuns(line, faces, base)) {
    const scale = size / face.font.unitsPerEm;
    const { glyphs, positions } = face.font.layout(text);
    glyphs.forEach((glyph, i) => {
      const { xAdvance, xOffset, yOffset } = positions[i]!;
      const place = (px: number, py: number) => ({
        x: x + (px + xOffset) * scale,
        y: at.y - (py + yOffset) * scale,
      });
      contours.push(...contoursOf(glyph.path.commands, place));
      x += xAdvance * scale;
    });
  }
  return contours;
}

interface PathCommand {
  readonly command: string;
  readonly args: readonly number[];
}

function contoursOf(
  commands: readonly PathCommand[],
  place: (x: number, y: number) => OutlinePoint,
): OutlinePoint[][] {
  const contours: OutlinePoint[][] = [];
  let contour: OutlinePoint[] = [];
  let [x, y] = [0, 0];
  for (const { command, args } of commands) {
    if (command === 'moveTo') {
      contour = [];
      contours.push(contour);
    }
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = args;
    if (command === 'moveTo' || command === 'lineTo') contour.push(place(a, b));
    else if (command === 'quadraticCurveTo')
      for (let i = 1; i <= PIECES; i++) contour.push(onCurve([x, a, c], [y, b, d], i / PIECES, place));
    else if (command === 'bezierCurveTo')
      for (let i = 1; i <= PIECES; i++) contour.push(onCurve([x, a, c, e], [y, b, d, f], i / PIECES, place));
    if (args.length >= 2) [x, y] = [args.at(-2)!, args.at(-1)!];
  }
  return contours.filter((one) => one.length > 2);
}

/** A point of a Bézier curve, by de Casteljau's construction. */
function onCurve(
  xs: readonly number[],
  ys: readonly number[],
  t: number,
  place: (x: number, y: number) => OutlinePoint,
): OutlinePoint {
  const at = (values: readonly number[]): number =>
    values.length === 1
      ? values[0]!
      : at(values.slice(1).map((value, i) => values[i]! * (1 - t) + value * t));
  return place(at(xs), at(ys));
}
