import { contrast, edgeOn, LEAST_CONTRAST, pictureColour } from './colours.ts';
import { describeWire } from './descriptions.ts';
import { badgeRadius, fonts, measureLabel } from './measures.ts';
import type { PlacedLine, Point, Rectangle } from './placement.ts';
import type { Wire } from './scene.ts';
import type { Sheet } from './sheet.ts';
import { badge, group, n, path, rect, text } from './svg.ts';

/** A cable that carries one picture: a line in its colour, with its number and length, and an arrow where it goes. */
export function drawWire(wire: Wire, sheet: Sheet): string {
  const line = sheet.placement.wires.get(wire.id);
  if (!line || line.points.length === 0) return '';
  const { idle, paper } = sheet.theme;
  const pictures = sheet.wires.get(wire.id) ?? [];
  const lost = sheet.lost.has(wire.id);
  const dash = wire.standbyFor !== undefined || lost ? ' stroke-dasharray="5 4"' : '';
  const width = pictures.length > 0 ? 2.6 : 1.5;
  const colours = pictures.length > 0 ? pictures.map(pictureColour) : [idle];
  const strokes = colours.map((colour, i) => {
    const d = path(line.points, (i - (colours.length - 1) / 2) * 4);
    return lineOf(d, colour, paper, width, dash);
  });
  const arrow = wire.bothWays ? '' : arrowHead(line.points, wire.fromLeft, colours.at(-1)!, paper);
  return group(wire.id, 'wire', describeWire(wire, pictures, lost, sheet.naming), [
    // Wider than it is seen, so that it can be met by a pointer.
    `<path class="near" d="${path(line.points)}" fill="none" stroke="${paper}" stroke-opacity="0" stroke-width="12"/>`,
    ...strokes,
    arrow,
    line.label ? label(wire, line.label, pictures, lost, plateOf(line, sheet), sheet) : '',
  ]);
}

function stroke(d: string, colour: string, width: number, dash: string): string {
  return `<path d="${d}" fill="none" stroke="${colour}" stroke-width="${width}"${dash}/>`;
}

/** A colour that the paper nearly has gets an edge in a deeper or paler one of its kind, and is hardly wider for it. */
function lineOf(d: string, colour: string, paper: string, width: number, dash: string): string {
  if (contrast(colour, paper) >= LEAST_CONTRAST) return stroke(d, colour, width, dash);
  return stroke(d, edgeOn(colour, paper), width + 0.8, dash) + stroke(d, colour, width - 0.8, dash);
}

function arrowHead(points: readonly Point[], fromLeft: boolean, colour: string, paper: string): string {
  const [end, before] = fromLeft ? [points.at(-1), points.at(-2)] : [points[0], points[1]];
  if (!end || !before) return '';
  const back = before.x < end.x ? -1 : 1;
  const tip = end.x + back * 4.5;
  return `<path d="M${n(tip)} ${n(end.y)}l${n(back * 7.5)} -4.5v9z" fill="${colour}" stroke="${edgeOn(colour, paper)}" stroke-width="0.8"/>`;
}

/** The colour that a label lies on: that of the room, or the paper between rooms. */
function plateOf({ label }: PlacedLine, { placement, theme, scene }: Sheet): string {
  if (!label) return theme.paper;
  const x = label.x + label.width / 2;
  const inside = scene.rooms.some(({ id }) => {
    const room = placement.rooms.get(id);
    return (
      room && x > room.x && x < room.x + room.width && label.y > room.y && label.y < room.y + room.height
    );
  });
  return inside ? theme.room : theme.paper;
}

function label(
  wire: Wire,
  at: Rectangle,
  pictures: readonly number[],
  lost: boolean,
  plate: string,
  { theme }: Sheet,
): string {
  const { words, wordsLeft } = measureLabel(wire);
  const middle = at.y + at.height / 2;
  const colour = wire.trouble ? theme.ink : theme.faint;
  const first = at.x + (wire.trouble ? 10 : 4) + badgeRadius;
  const numbers = lost ? [] : pictures.slice(0, wire.numbers);
  const marks = numbers.map((number, i) => badge(number, first + i * 2 * badgeRadius, middle, plate));
  if (lost && wire.numbers > 0) marks.push(cross(first, middle, theme.ink));
  if (!words && marks.length === 0) return '';
  const unused = marks.length === 0 ? wordsLeft - 4 : 0;
  return [
    wire.trouble
      ? pointedPlate(at, plate, theme.ink)
      : rect(
          { x: at.x + unused, y: at.y + 1, width: at.width - unused, height: at.height - 2 },
          `rx="3" fill="${plate}"`,
        ),
    ...marks,
    text(at.x + wordsLeft, middle + 4, words, fonts.small, colour, {
      bold: wire.trouble !== undefined,
      struck: lost,
    }),
  ].join('');
}

/** A label that warns is pointed at both ends, so that it is told from others without its colour. */
function pointedPlate({ x, y, width, height }: Rectangle, fill: string, edge: string): string {
  const half = height / 2;
  return `<path d="M${n(x)} ${n(y + half)}l6 ${n(-half)}h${n(width - 12)}l6 ${n(half)}l-6 ${n(half)}h${n(12 - width)}z" fill="${fill}" stroke="${edge}"/>`;
}

/** Out of service. */
function cross(x: number, y: number, ink: string): string {
  return `<path d="M${n(x - 5)} ${n(y - 5)}l10 10m0 -10l-10 10" fill="none" stroke="${ink}" stroke-width="2"/>`;
}
