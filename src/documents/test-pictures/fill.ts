import type { Outline } from '../typeset/outlines.ts';

/**
 * The pixels whose middle is inside an outline by the non-zero rule, row by row: the usual scan-line method.
 *
 * @param span Is told a row and its pixels from the first to behind the last.
 */
export function fillOutline(
  outline: Outline,
  width: number,
  height: number,
  span: (y: number, from: number, to: number) => void,
): void {
  const rows = new Map<number, { x: number; turn: number }[]>();
  for (const contour of outline) {
    contour.forEach((a, i) => {
      const b = contour[(i + 1) % contour.length]!;
      const [upper, lower, turn] = a.y <= b.y ? [a, b, 1] : [b, a, -1];
      const first = Math.max(0, Math.ceil(upper.y - 0.5));
      for (let y = first; y + 0.5 < lower.y && y < height; y++) {
        const x = upper.x + ((y + 0.5 - upper.y) * (lower.x - upper.x)) / (lower.y - upper.y);
        const crossings = rows.get(y);
        if (crossings) crossings.push({ x, turn });
        else rows.set(y, [{ x, turn }]);
      }
    });
  }
  for (const [y, crossings] of rows) {
    crossings.sort((a, b) => a.x - b.x);
    let winding = 0;
    crossings.forEach(({ x, turn }, i) => {
      winding += turn;
      const next = crossings[i + 1];
      if (winding === 0 || !next) return;
      const from = Math.max(0, Math.ceil(x - 0.5));
      const to = Math.min(width, Math.ceil(next.x - 0.5));
      if (to > from) span(y, from, to);
    });
  }
}
