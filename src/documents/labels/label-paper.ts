/** The paper that labels are printed on, in millimetres. */
export interface LabelPaper {
  readonly width_mm: number;
  readonly height_mm: number;
  readonly columns: number;
  readonly rows: number;
  readonly top_mm: number;
  readonly right_mm: number;
  readonly bottom_mm: number;
  readonly left_mm: number;
  /** Between two labels side by side, and one below the other. */
  readonly across_mm: number;
  readonly down_mm: number;
}

/** The sizes of ISO 216 and ANSI/ASME Y14.1 (published). */
export const paperSizes: ReadonlyMap<string, readonly [width_mm: number, height_mm: number]> = new Map([
  ['a4', [210, 297]],
  ['letter', [215.9, 279.4]],
]);

/** One label a page, as roll printers take them. */
export function rollPaper(width_mm: number, height_mm: number): LabelPaper {
  const none = { top_mm: 0, right_mm: 0, bottom_mm: 0, left_mm: 0, across_mm: 0, down_mm: 0 };
  return { width_mm, height_mm, columns: 1, rows: 1, ...none };
}

export interface Spot {
  readonly x_mm: number;
  readonly y_mm: number;
  readonly width_mm: number;
  readonly height_mm: number;
}

/** Where the labels of a page lie, row by row. Empty when the margins leave no room. */
export function spotsOn(paper: LabelPaper): Spot[] {
  const { columns, rows } = paper;
  const width = (paper.width_mm - paper.left_mm - paper.right_mm - (columns - 1) * paper.across_mm) / columns;
  const height = (paper.height_mm - paper.top_mm - paper.bottom_mm - (rows - 1) * paper.down_mm) / rows;
  if (!(width >= SMALLEST_MM && height >= SMALLEST_MM)) return [];
  return Array.from({ length: rows * columns }, (_, i) => ({
    x_mm: paper.left_mm + (i % columns) * (width + paper.across_mm),
    y_mm: paper.top_mm + Math.floor(i / columns) * (height + paper.down_mm),
    width_mm: width,
    height_mm: height,
  }));
}

/** Nobody reads a smaller label. */
export const SMALLEST_MM = 5;
