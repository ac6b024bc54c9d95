import PDFDocument from 'pdfkit';
import { oneLine } from '../printable.ts';
import type { Faces } from '../typeset/faces.ts';
import { type FittedText, fitText, LINE_HEIGHT } from '../typeset/fit-text.ts';
import { directionOf, lineWidth, runWidth, visualRuns } from '../typeset/visual-runs.ts';
import { codeRows } from './code.ts';
import type { LabelPaper, Spot } from './label-paper.ts';
import { spotsOn } from './label-paper.ts';
import type { Label } from './labels.ts';

export interface LabelPdfOptions {
  readonly title: string;
  readonly paper: LabelPaper;
  readonly faces: Faces;
  /** A 2D code at the right of each label. */
  readonly codes: boolean;
  /** Spots of the first sheet that are used up already. */
  readonly skip: number;
  /** A hair line round each label, to cut along. */
  readonly frames: boolean;
}

const POINTS_PER_MM = 72 / 25.4;
const PADDING_MM = 1.2;
/** Shares of a label's height: main, second and last line. */
const SHARES = { main: 0.5, second: 0.31, foot: 0.19 } as const;
/** Larger letters look wrong on any label. */
const LARGEST_PT = 30;

/** Labels as a PDF, as many on a page as the paper has. @throws RangeError when the margins leave no room for one. */
export function labelPdf(labels: readonly Label[], options: LabelPdfOptions): Promise<Uint8Array> {
  const { paper, title, skip } = options;
  const spots = spotsOn(paper);
  if (spots.length === 0) throw new RangeError('The margins leave no room for a label.');
  const size: [number, number] = [paper.width_mm * POINTS_PER_MM, paper.height_mm * POINTS_PER_MM];
  const document = new PDFDocument({
    size,
    margin: 0,
    autoFirstPage: false,
    // None from the start: each face of ours is opened by its name when it is first drawn with, and only once.
    font: null as never,
    // The same plan gives the same file: no clock.
    info: { Title: oneLine(title, 200), Creator: 'Feedplot', CreationDate: new Date(0) },
  });
  const chunks: Uint8Array[] = [];
  const done = new Promise<Uint8Array>((resolve, reject) => {
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('end', () => resolve(Buffer.concat(chunks)));
    document.on('error', reject);
  });
  const first = skip % spots.length;
  if (labels.length === 0) document.addPage({ size, margin: 0 });
  labels.forEach((label, i) => {
    const at = (first + i) % spots.length;
    if (i === 0 || at === 0) document.addPage({ size, margin: 0 });
    drawLabel(document, label, spots[at]!, options);
  });
  document.end();
  return done;
}

type Document = InstanceType<typeof PDFDocument>;

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function drawLabel(
  document: Document,
  label: Label,
  spot: Spot,
  { faces, codes, frames }: LabelPdfOptions,
): void {
  const whole = toPoints(spot, 0);
  if (frames) document.lineWidth(0.3).rect(whole.x, whole.y, whole.width, whole.height).stroke('#888888');
  const room = toPoints(spot, PADDING_MM);
  const side = codes ? Math.min(room.height, room.width * 0.45) : 0;
  if (codes)
    drawCode(document, label.code, room.x + room.width - side, room.y + (room.height - side) / 2, side);
  const width = room.width - side;
  let { y } = room;
  for (const part of ['main', 'second', 'foot'] as const) {
    const height =
      room.height * (label.foot === '' && part === 'main' ? SHARES.main + SHARES.foot : SHARES[part]);
    if (part === 'foot' && label.foot === '') break;
    const most = Math.min(LARGEST_PT, height / LINE_HEIGHT);
    const fitted = fitText(oneLine(label[part], 2000), { width, height, most }, faces);
    drawText(document, fitted, { x: room.x, y, width, height }, faces);
    y += height;
  }
}

function toPoints({ x_mm, y_mm, width_mm, height_mm }: Spot, inside_mm: number): Box {
  return {
    x: (x_mm + inside_mm) * POINTS_PER_MM,
    y: (y_mm + inside_mm) * POINTS_PER_MM,
    width: (width_mm - 2 * inside_mm) * POINTS_PER_MM,
    height: (height_mm - 2 * inside_mm) * POINTS_PER_MM,
  };
}

/** Lines from the left, or from the right where they are read from there; in the middle of their height. */
function drawText(document: Document, { lines, size }: FittedText, box: Box, faces: Faces): void {
  const direction = directionOf(lines.join(' '));
  const step = size * LINE_HEIGHT;
  let y = box.y + (box.height - lines.length * step) / 2 + size * ASCENT;
  for (const line of lines) {
    let x = direction === 'rtl' ? box.x + box.width - lineWidth(line, size, faces) : box.x;
    for (const { face, text } of visualRuns(line, faces, direction)) {
      // Bytes, not the font that measures: each document needs one of its own, because drawing a letter that is put
      // together from others makes the font forget what characters those stand for.
      document.registerFont(face.file, face.bytes as never);
      document.font(face.file).fontSize(size).fillColor('#000000');
      // With a list of features the library shapes the run as a whole, as scripts that join their letters need;
      // without one it shapes each word once and for all.
      const whole = JOINED.test(text) ? { features: [] } : {};
      document.text(text, x, y, { lineBreak: false, baseline: 'alphabetic', ...whole });
      x += runWidth(face, text, size);
    }
    y += step;
  }
}

/** Anything but letters that stand by themselves, with their digits and marks. */
const JOINED = /[^\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Script=Common}]/u;

/** From the top of a line to its baseline, in ems. */
const ASCENT = 0.98;

function drawCode(document: Document, text: string, x: number, y: number, side: number): void {
  const rows = codeRows(text);
  const cell = side / rows.length;
  rows.forEach((row, j) => {
    for (let i = 0; i < row.length; i++) {
      let end = i;
      while (row[end]) end++;
      if (end > i) document.rect(x + i * cell, y + j * cell, (end - i) * cell, cell);
      i = Math.max(i, end - 1);
    }
  });
  document.fill('#000000');
}
