/** What does not move: edges, fine lines and the middle, to the pixel of the screen. */
export function paintStill(paint: CanvasRenderingContext2D, width: number, height: number): void {
  paint.fillStyle = '#6E6E6E';
  paint.fillRect(0, 0, width, height);
  paint.fillStyle = '#8C8C8C';
  for (let i = 1; i < 10; i++) {
    paint.fillRect(Math.round((width * i) / 10), 0, 1, height);
    paint.fillRect(0, Math.round((height * i) / 10), width, 1);
  }
  outline(paint, 1, '#000000', width, height);
  outline(paint, 0, '#FFFFFF', width, height);
  arrows(paint, width, height);
  const side = Math.round(Math.min(width, height) / 9);
  const gap = Math.round(side / 3);
  for (const x of [gap, width - gap - 2 * side]) {
    for (const y of [gap, height - gap - side]) {
      fineLines(paint, x, y, side, true);
      fineLines(paint, x + side, y, side, false);
    }
  }
}

function outline(
  paint: CanvasRenderingContext2D,
  inset: number,
  colour: string,
  width: number,
  height: number,
): void {
  paint.fillStyle = colour;
  const [w, h] = [width - 2 * inset, height - 2 * inset];
  paint.fillRect(inset, inset, w, 1);
  paint.fillRect(inset, height - inset - 1, w, 1);
  paint.fillRect(inset, inset, 1, h);
  paint.fillRect(width - inset - 1, inset, 1, h);
}

function arrows(paint: CanvasRenderingContext2D, width: number, height: number): void {
  const size = Math.round(Math.min(width, height) / 18);
  paint.fillStyle = '#FFFFFF';
  for (const [x, y, dx, dy] of [
    [0, height / 2, 1, 0],
    [width, height / 2, -1, 0],
    [width / 2, 0, 0, 1],
    [width / 2, height, 0, -1],
  ] as const) {
    paint.beginPath();
    paint.moveTo(x, y);
    paint.lineTo(x + dx * size - (dy * size) / 2, y + dy * size - (dx * size) / 2);
    paint.lineTo(x + dx * size + (dy * size) / 2, y + dy * size + (dx * size) / 2);
    paint.fill();
  }
}

function fineLines(
  paint: CanvasRenderingContext2D,
  x: number,
  y: number,
  side: number,
  upright: boolean,
): void {
  paint.fillStyle = '#000000';
  paint.fillRect(x, y, side, side);
  paint.fillStyle = '#FFFFFF';
  for (let i = 0; i < side; i += 2) {
    if (upright) paint.fillRect(x + i, y, 1, side);
    else paint.fillRect(x, y + i, side, 1);
  }
}
