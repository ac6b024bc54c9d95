import { edgeOn, pictureColour } from './colours.ts';
import { describeChip, describeNode } from './descriptions.ts';
import {
  badgeRadius,
  badgeRoom,
  fonts,
  lineHeights,
  measureBox,
  moreFreeText,
  noteLines,
  portInset,
  portTitle,
} from './measures.ts';
import type { Rectangle } from './placement.ts';
import type { Box, BoxPort } from './scene.ts';
import type { Sheet } from './sheet.ts';
import { badge, group, n, rect, text } from './svg.ts';

/** A node with its ports, or the chip of a source or destination. */
export function drawBox(box: Box, sheet: Sheet): string {
  const at = sheet.placement.boxes.get(box.id);
  if (!at) return '';
  return box.kind === 'node' ? drawNode(box, at, sheet) : drawChip(box, at, sheet);
}

function drawNode(node: Box, at: Rectangle, sheet: Sheet): string {
  const { box: fill, boxEdge, ink, faint } = sheet.theme;
  const lost = sheet.lost.has(node.id);
  const { title, subtitle } = measureBox(node);
  const middle = at.x + at.width / 2;
  const head = at.y + 8;
  const below = head + title.length * lineHeights.box;
  const kind = lost ? ['out of service'] : subtitle;
  return group(node.id, 'node', describeNode(node, lost, sheet.watched, sheet.naming), [
    rect(at, `rx="7" fill="${fill}" stroke="${boxEdge}"${lost ? ' stroke-dasharray="5 4"' : ''}`),
    ...title.map((line, i) =>
      text(middle, head + 12 + i * lineHeights.box, line, fonts.box, ink, { anchor: 'middle', bold: true }),
    ),
    ...kind.map((line, i) =>
      text(middle, below + 10 + i * lineHeights.small, line, fonts.small, faint, {
        anchor: 'middle',
        italic: lost,
      }),
    ),
    ...node.ports.map((port) => drawPort(port, sheet)),
    node.moreFree > 0
      ? text(middle, at.y + at.height - 8, moreFreeText(node), fonts.small, faint, { anchor: 'middle' })
      : '',
  ]);
}

/** A filled square with a cable, a hollow one while it is free; a mark where a picture comes too late or not at all. */
function drawPort(port: BoxPort, sheet: Sheet): string {
  const spot = sheet.placement.ports.get(port.id);
  if (!spot) return '';
  const { box: fill, ink, idle, faint } = sheet.theme;
  const { x, y } = spot;
  const inward = port.side === 'west' ? 1 : -1;
  const square = `<rect x="${n(x - 4)}" y="${n(y - 4)}" width="8" height="8" rx="1.5" ${port.free ? `fill="${fill}" stroke="${idle}"` : `fill="${ink}"`}/>`;
  const begins =
    port.begins === undefined
      ? ''
      : badge(port.begins, x + inward * (portInset + badgeRadius), y, sheet.theme.box);
  const wordsX = x + inward * (portInset + (port.begins === undefined ? 0 : badgeRoom));
  const late = sheet.watched.get(port.id)?.trouble
    ? `<path d="M${n(x - 5)} ${n(y + 5)}h10l-5 -9z" fill="${ink}" stroke="${fill}"/>`
    : '';
  return (
    square +
    begins +
    late +
    text(wordsX, y + 4, portTitle(port), fonts.port, port.free ? faint : ink, {
      anchor: port.side === 'west' ? 'start' : 'end',
    })
  );
}

/** The number stands where the picture leaves a source, and where it arrives at a destination: at the cable. */
function drawChip(chip: Box, at: Rectangle, sheet: Sheet): string {
  const { box: fill, boxEdge, ink, faint } = sheet.theme;
  const watched = chip.kind === 'destination' ? sheet.watched.get(chip.id) : undefined;
  const lost = sheet.lost.has(chip.id);
  const picture = chip.picture ?? watched?.picture;
  const { title, firstPort } = measureBox(chip);
  const body = { ...at, height: firstPort * 2 };
  const isWrong = watched?.trouble === true;
  const edge =
    chip.picture === undefined
      ? isWrong
        ? ink
        : boxEdge
      : edgeOn(pictureColour(chip.picture), sheet.theme.room);
  const west = chip.ports[0]?.side === 'west';
  const middle = at.y + firstPort;
  const spot = at.x + (west ? 6 + badgeRadius : at.width - 6 - badgeRadius);
  const wordsX = west ? at.x + 12 + 2 * badgeRadius : at.x + 14;
  const firstLine = middle + 4.5 - ((title.length - 1) * lineHeights.box) / 2;
  const notes = watched ? noteLines(chip, watched) : [];
  return group(chip.id, chip.kind, describeChip(chip, watched, sheet.naming), [
    rect(
      body,
      `rx="${n(Math.min(15, firstPort))}" fill="${fill}" stroke="${edge}" stroke-width="${chip.kind === 'source' || isWrong ? 2.2 : 1.2}"${lost ? ' stroke-dasharray="5 4"' : ''}`,
    ),
    ...title.map((line, i) => text(wordsX, firstLine + i * lineHeights.box, line, fonts.box, ink)),
    picture === undefined ? noPicture(spot, middle, isWrong, sheet) : badge(picture, spot, middle, fill),
    ...notes.map((line, i) =>
      text(
        at.x + at.width / 2,
        at.y + body.height + 13 + i * lineHeights.small,
        line,
        fonts.small,
        isWrong ? ink : faint,
        { anchor: 'middle', bold: isWrong },
      ),
    ),
  ]);
}

/** An empty ring where nothing is to come; hatched where something should and does not. */
function noPicture(x: number, y: number, isMissing: boolean, { theme }: Sheet): string {
  const look = isMissing
    ? `fill="url(#hatch)" stroke="${theme.ink}" stroke-width="1.5"`
    : `fill="none" stroke="${theme.idle}" stroke-dasharray="2 3"`;
  return `<circle cx="${n(x)}" cy="${n(y)}" r="${badgeRadius - 1}" ${look}/>`;
}
