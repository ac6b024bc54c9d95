import { escapeXml } from '../escape.ts';
import { printable } from '../printable.ts';
import type { Outline } from '../typeset/outlines.ts';
import type { Shape, TestPicture } from './test-picture.ts';

/** A test picture as SVG in its own raster: one unit is one pixel. Its letters are shapes, so no font is needed. */
export function testPictureSvg({ number, title, width, height, shapes }: TestPicture): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" shape-rendering="crispEdges" role="img"><title>${escapeXml(printable(`${number} ${title}`))}</title>
${shapes.map(shapeSvg).join('\n')}
</svg>
`;
}

function shapeSvg(shape: Shape): string {
  if (shape.kind === 'outline')
    return `<path d="${pathOf(shape.outline)}" fill="${shape.colour}" shape-rendering="geometricPrecision"/>`;
  const { x, y, width, height } = shape;
  const whole = `x="${x}" y="${y}" width="${width}" height="${height}"`;
  if (shape.kind === 'area') return `<rect ${whole} fill="${shape.colour}"/>`;
  const light = Array.from({ length: Math.ceil((shape.upright ? width : height) / 2) }, (_, i) =>
    shape.upright ? `M${x + 2 * i} ${y}h1v${height}h-1z` : `M${x} ${y + 2 * i}h${width}v1h-${width}z`,
  );
  return `<rect ${whole} fill="#000000"/><path d="${light.join('')}" fill="#FFFFFF"/>`;
}

function pathOf(outline: Outline): string {
  return outline
    .map((contour) => `M${contour.map(({ x, y }) => `${round(x)} ${round(y)}`).join('L')}Z`)
    .join('');
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
