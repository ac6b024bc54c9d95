import type { Analysis, Source } from '../../analysis/model.ts';
import type { PictureFormat } from '../../physics/raster.ts';
import { formatRaster } from '../../physics/raster.ts';
import { inkOn, pictureColour } from '../drawing/colours.ts';
import { oneLine } from '../printable.ts';
import type { Titles } from '../sheets/titles.ts';
import type { Faces } from '../typeset/faces.ts';
import { fitText, LINE_HEIGHT } from '../typeset/fit-text.ts';
import { type Outline, textOutline } from '../typeset/outlines.ts';
import { directionOf, lineWidth } from '../typeset/visual-runs.ts';

/** One thing in a test picture. Sides of areas are whole pixels. */
export type Shape =
  | {
      readonly kind: 'area';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly colour: string;
    }
  /** Lines of one pixel, dark and light in turn: any scaling turns them grey or into waves. */
  | {
      readonly kind: 'lines';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly upright: boolean;
    }
  | { readonly kind: 'outline'; readonly outline: Outline; readonly colour: string };

export interface TestPicture {
  readonly number: number;
  /** The source's name in the plan. */
  readonly name: string;
  readonly title: string;
  readonly format: PictureFormat;
  readonly width: number;
  readonly height: number;
  /** In the order of painting. */
  readonly shapes: readonly Shape[];
}

/** What a test picture shows, before it is painted. */
export interface PictureSubject {
  readonly number: number;
  readonly name: string;
  readonly title: string;
  readonly format: PictureFormat;
}

/** The sources that send a picture whose format is known. */
export function pictureSubjects({ sourceFigures }: Analysis, titles: Titles): PictureSubject[] {
  return [...sourceFigures.values()].flatMap(({ source, format }) =>
    format?.kind === 'picture' ? [{ ...named(source, titles), format }] : [],
  );
}

function named(source: Source, titles: Titles): Omit<PictureSubject, 'format'> {
  return { number: titles.numberOf(source) ?? 0, name: source.name, title: titles.of(source) };
}

/** A test picture in the source's own raster. @param from The line that says which plan it is of. */
export function makeTestPicture(subject: PictureSubject, from: string, faces: Faces): TestPicture {
  const { width, height } = subject.format;
  const shapes = [
    ...background(width, height),
    ...edges(width, height),
    ...fineLines(width, height),
    ...steps(width, height),
    ...words(subject, from, faces),
    ...centre(width, height),
  ];
  return { ...subject, width, height, shapes };
}

const GREY = '#6E6E6E';
const WHITE = '#FFFFFF';
const BLACK = '#000000';

function area(x: number, y: number, width: number, height: number, colour: string): Shape {
  return { kind: 'area', x, y, width, height, colour };
}

/** Grey, with one-pixel lines at every tenth that show where the picture was cut or moved. */
function background(width: number, height: number): Shape[] {
  const shapes = [area(0, 0, width, height, GREY)];
  for (let i = 1; i < 10; i++) {
    shapes.push(area(Math.round((width * i) / 10), 0, 1, height, '#8C8C8C'));
    shapes.push(area(0, Math.round((height * i) / 10), width, 1, '#8C8C8C'));
  }
  return shapes;
}

/** The outermost pixels white, the next black, and an arrow whose tip touches the edge in the middle of each side. */
function edges(width: number, height: number): Shape[] {
  const size = Math.max(4, Math.round(Math.min(width, height) / 18));
  const [cx, cy] = [width / 2, height / 2];
  const arrow = (points: readonly (readonly [number, number])[]): Shape => ({
    kind: 'outline',
    outline: [points.map(([x, y]) => ({ x, y }))],
    colour: WHITE,
  });
  return [
    ...frame(0, width, height, WHITE),
    ...frame(1, width, height, BLACK),
    arrow([
      [0, cy],
      [size, cy - size / 2],
      [size, cy + size / 2],
    ]),
    arrow([
      [width, cy],
      [width - size, cy + size / 2],
      [width - size, cy - size / 2],
    ]),
    arrow([
      [cx, 0],
      [cx + size / 2, size],
      [cx - size / 2, size],
    ]),
    arrow([
      [cx, height],
      [cx - size / 2, height - size],
      [cx + size / 2, height - size],
    ]),
  ];
}

function frame(inset: number, width: number, height: number, colour: string): Shape[] {
  const [w, h] = [width - 2 * inset, height - 2 * inset];
  return [
    area(inset, inset, w, 1, colour),
    area(inset, height - inset - 1, w, 1, colour),
    area(inset, inset, 1, h, colour),
    area(width - inset - 1, inset, 1, h, colour),
  ];
}

/** Patches of one-pixel lines, upright and lying, in each corner. */
function fineLines(width: number, height: number): Shape[] {
  const side = Math.max(8, Math.round(Math.min(width, height) / 9));
  const gap = Math.max(4, Math.round(side / 3));
  return [
    [gap, gap],
    [width - gap - 2 * side, gap],
    [gap, height - gap - side],
    [width - gap - 2 * side, height - gap - side],
  ].flatMap(([x = 0, y = 0]): Shape[] => [
    { kind: 'lines', x, y, width: side, height: side, upright: true },
    { kind: 'lines', x: x + side, y, width: side, height: side, upright: false },
  ]);
}

/** Grey from black to white in eleven steps, and the six colours that are fully on in one or two of red, green, blue. */
function steps(width: number, height: number): Shape[] {
  const [left, whole] = [Math.round(width * 0.2), Math.round(width * 0.6)];
  const high = Math.max(2, Math.round(height / 22));
  const top = height - Math.round(height / 15) - 2 * high;
  const row = (colours: readonly string[], y: number) =>
    colours.map((colour, i) => {
      const from = left + Math.round((whole * i) / colours.length);
      const to = left + Math.round((whole * (i + 1)) / colours.length);
      return area(from, y, to - from, high, colour);
    });
  const greys = Array.from({ length: 11 }, (_, i) => {
    const level = Math.round(25.5 * i)
      .toString(16)
      .padStart(2, '0')
      .toUpperCase();
    return `#${level}${level}${level}`;
  });
  const colours = ['#FFFF00', '#00FFFF', '#00FF00', '#FF00FF', '#FF0000', '#0000FF'];
  return [...row(greys, top), ...row(colours, top + high)];
}

/** The number as large as it can be, the name below it, the raster and the plan. */
function words({ number, title, format }: PictureSubject, from: string, faces: Faces): Shape[] {
  const { width, height } = format;
  const colour = pictureColour(number);
  const [left, wide] = [Math.round(width * 0.2), Math.round(width * 0.6)];
  const part = (text: string, top: number, high: number, ink: string): Shape[] =>
    centred(
      oneLine(text, 1000),
      { left: left + wide * 0.02, width: wide * 0.96, top: height * top, height: height * high },
      ink,
      faces,
    );
  return [
    area(left, Math.round(height * 0.16), wide, Math.round(height * 0.34), colour),
    ...part(String(number), 0.16, 0.34, inkOn(colour)),
    area(left, Math.round(height * 0.545), wide, Math.round(height * 0.245), BLACK),
    ...part(title, 0.55, 0.13, WHITE),
    ...part(formatRaster(format), 0.685, 0.05, WHITE),
    ...part(from, 0.74, 0.042, WHITE),
  ];
}

interface Box {
  readonly left: number;
  readonly width: number;
  readonly top: number;
  readonly height: number;
}

function centred(text: string, { left, width, top, height }: Box, colour: string, faces: Faces): Shape[] {
  const { lines, size } = fitText(text, { width, height, most: height / LINE_HEIGHT }, faces);
  const direction = directionOf(text);
  const step = size * LINE_HEIGHT;
  const first = top + (height - lines.length * step) / 2 + size * 0.96;
  return lines.map((line, i) => ({
    kind: 'outline',
    colour,
    outline: textOutline(
      line,
      { x: left + (width - lineWidth(line, size, faces)) / 2, y: first + i * step },
      size,
      faces,
      direction,
    ),
  }));
}

/** A cross of one-pixel lines through the very middle (two pixels where the side is even). */
function centre(width: number, height: number): Shape[] {
  const arm = Math.round(Math.min(width, height) / 40);
  const thick = (side: number) => (side % 2 === 0 ? 2 : 1);
  const [x, y] = [Math.floor((width - 1) / 2), Math.floor((height - 1) / 2)];
  const [w, h] = [thick(width), thick(height)];
  return [
    area(x - arm - 1, y - 1, 2 * arm + w + 2, h + 2, BLACK),
    area(x - 1, y - arm - 1, w + 2, 2 * arm + h + 2, BLACK),
    area(x - arm, y, 2 * arm + w, h, WHITE),
    area(x, y - arm, w, 2 * arm + h, WHITE),
  ];
}
