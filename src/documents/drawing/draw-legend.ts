import { badgeRadius, fonts } from './measures.ts';
import type { Sheet } from './sheet.ts';
import { badge, text } from './svg.ts';
import { fitText, textWidth, wrapText } from './text-size.ts';

export const legendWidth = 560;

/** What the numbers and shapes mean. */
export function drawLegend(sheet: Sheet, width: number, compared = false): { svg: string; height: number } {
  const { faint, ink, paper } = sheet.theme;
  const parts: string[] = [];
  let y = 10;
  if (sheet.scene.pictures.length > 0) {
    parts.push(text(0, y + 4, 'Pictures', fonts.small, faint, { bold: true }));
    let x = 70;
    for (const { number, title } of sheet.scene.pictures) {
      const words = fitText(title, fonts.small, 240);
      const needed = 2 * badgeRadius + 8 + textWidth(words, fonts.small) + 18;
      if (x + needed > width && x > 70) [x, y] = [70, y + 22];
      parts.push(
        badge(number, x + badgeRadius, y, paper),
        text(x + 2 * badgeRadius + 6, y + 4, words, fonts.small, ink),
      );
      x += needed;
    }
    y += 24;
  }
  for (const line of wrapText(explanation(sheet, compared), fonts.small, Math.min(width, 900), 6)) {
    parts.push(text(0, y + 4, line, fonts.small, faint));
    y += 16;
  }
  return { svg: parts.join(''), height: y + 6 };
}

/** Only what is to be seen is explained. */
function explanation({ scene, scale, lost, ...sheet }: Sheet, compared: boolean): string {
  const { ribbons, wires, boxes } = scene;
  const floor = scale.floor_bits_per_second;
  const words = [
    compared &&
      'A plus in a ring: added. Dotted, with a minus: gone. An arrow between two figures: before and after. Pale: as before.',
    ribbons.length > 0 &&
      'A network link is a ribbon: its height is its capacity each way, each picture a strand in it; the upper lane goes to the right, the lower one to the left; what is empty is left over.',
    ribbons.some(({ capacity_bits_per_second: capacity = 0 }) => capacity < floor) &&
      `Links below ${(floor / 1e9).toFixed(1)} Gb/s are drawn higher than they are.`,
    boxes.some(({ ports }) => ports.some(({ free }) => free)) && 'A hollow port is free.',
    ([...wires, ...ribbons].some(({ standbyFor }) => standbyFor !== undefined) || lost.size > 0) &&
      'What is dashed stands by or is out of service.',
    [...sheet.ribbons.values()].some(({ forward, backward }) => forward.over || backward.over) &&
      'A hatched bar: more than the link can carry.',
    [...sheet.watched.values()].some(({ picture, trouble }) => trouble && picture === undefined) &&
      'A hatched dot: no picture arrives.',
  ];
  return words.filter(Boolean).join(' ');
}
