import { encode } from 'fast-png';
import { fillOutline } from './fill.ts';
import type { Shape, TestPicture } from './test-picture.ts';

/** A test picture as PNG in its own raster, with a palette: the same shapes, each pixel of one colour. */
export function testPicturePng({ width, height, shapes }: TestPicture): Uint8Array {
  const palette = new Map<string, number>();
  const indexOf = (colour: string) => {
    const known = palette.get(colour);
    if (known !== undefined) return known;
    palette.set(colour, palette.size);
    return palette.size - 1;
  };
  const data = new Uint8Array(width * height);
  const [black, white] = [indexOf('#000000'), indexOf('#FFFFFF')];
  for (const shape of shapes) paint(shape);
  return encode({ width, height, data, depth: 8, channels: 1, palette: [...palette.keys()].map(rgb) });

  function paint(shape: Shape): void {
    if (shape.kind === 'outline') {
      const colour = indexOf(shape.colour);
      fillOutline(shape.outline, width, height, (y, from, to) =>
        data.fill(colour, y * width + from, y * width + to),
      );
      return;
    }
    const [left, right] = [Math.max(0, shape.x), Math.min(width, shape.x + shape.width)];
    const [top, bottom] = [Math.max(0, shape.y), Math.min(height, shape.y + shape.height)];
    for (let y = top; y < bottom; y++) {
      if (shape.kind === 'area') data.fill(indexOf(shape.colour), y * width + left, y * width + right);
      else if (!shape.upright)
        data.fill((y - shape.y) % 2 === 0 ? white : black, y * width + left, y * width + right);
      else for (let x = left; x < right; x++) data[y * width + x] = (x - shape.x) % 2 === 0 ? white : black;
    }
  }
}

function rgb(colour: string): number[] {
  return [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
}
