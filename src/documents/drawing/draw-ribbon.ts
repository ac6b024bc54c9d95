import { inkOn, pictureColour } from './colours.ts';
import { describeRibbon } from './descriptions.ts';
import { badgeRadius, fonts, laneGap, lineHeights, measureRibbon, type RibbonMeasures } from './measures.ts';
import type { Rectangle } from './placement.ts';
import type { Lane, Ribbon, RibbonLoad, Strand } from './scene.ts';
import type { Sheet } from './sheet.ts';
import { badge, group, n, path, rect, text } from './svg.ts';
import { fitText } from './text-size.ts';

/** A network link: as high as its capacity each way, with a strand as high as its load for each picture. */
export function drawRibbon(ribbon: Ribbon, sheet: Sheet): string {
  const at = sheet.placement.ribbons.get(ribbon.id);
  if (!at) return '';
  const measures = measureRibbon(ribbon, sheet.scale);
  const { ink, faint, boxEdge } = sheet.theme;
  const load = sheet.ribbons.get(ribbon.id);
  const lost = sheet.lost.has(ribbon.id);
  const standsBy = ribbon.standbyFor !== undefined && !isUsed(load);
  const dash = standsBy || lost ? ' stroke-dasharray="5 4"' : '';
  const stubs = (sheet.placement.stubs.get(ribbon.id) ?? []).map(
    ({ points }) =>
      `<path d="${path(points)}" fill="none" stroke="${dash ? boxEdge : ink}" stroke-width="3"${dash}/>`,
  );
  const middle = at.x + at.width / 2;
  const lanes = dash ? [] : lanesOf(ribbon, at, measures, load);
  const below = [
    ...measures.trouble.map((words) => ({ words, grave: true })),
    ...lanes.flatMap((lane, i) => notesOn(lane, lanes[1 - i])),
  ];
  return group(ribbon.id, 'ribbon', describeRibbon(ribbon, load, lost, sheet.naming), [
    ...stubs,
    ...measures.title.map((line, i) =>
      text(middle, at.y + 11 + i * lineHeights.small, line, fonts.small, ink, {
        anchor: 'middle',
        bold: true,
      }),
    ),
    ...measures.detail.map((line, i) =>
      text(
        middle,
        at.y + 11 + (measures.title.length + i) * lineHeights.small,
        line,
        fonts.small,
        sheet.theme.ink,
        { anchor: 'middle' },
      ),
    ),
    ...(dash
      ? [emptyLanes(at, measures, lost ? ['out of service'] : measures.standby, sheet)]
      : lanes.map((lane) => drawLane(lane, sheet))),
    ...below.map(({ words, grave }, i) =>
      text(
        middle,
        at.y + measures.notesTop + 15 + i * lineHeights.small,
        fitText(words, fonts.small, at.width, grave),
        fonts.small,
        grave ? ink : faint,
        { anchor: 'middle', bold: grave },
      ),
    ),
  ]);
}

function isUsed(load: RibbonLoad | undefined): boolean {
  return load !== undefined && load.forward.strands.length + load.backward.strands.length > 0;
}

/** One way of a ribbon, with all that rides that way. */
interface DrawnLane {
  readonly load: Lane | undefined;
  readonly at: Rectangle;
  readonly toRight: boolean;
  readonly strands: readonly { readonly picture: number; readonly at: Rectangle }[];
  /** How far down the strands reach. */
  readonly usedTo: number;
}

/** The upper lane goes to the right. */
function lanesOf(
  { fromLeft, bothWays, capacity_bits_per_second: capacity = 0 }: Ribbon,
  at: Rectangle,
  { lanesTop, laneHeight }: RibbonMeasures,
  load: RibbonLoad | undefined,
): DrawnLane[] {
  const upper = { ...at, y: at.y + lanesTop, height: laneHeight };
  const lower = { ...upper, y: upper.y + laneHeight + laneGap };
  const [right, left] = fromLeft ? [load?.forward, load?.backward] : [load?.backward, load?.forward];
  const perBit = capacity > 0 ? laneHeight / capacity : 0;
  if (!bothWays) return [laneOf(fromLeft ? right : left, upper, fromLeft, perBit)];
  return [laneOf(right, upper, true, perBit), laneOf(left, lower, false, perBit)];
}

function laneOf(load: Lane | undefined, at: Rectangle, toRight: boolean, perBit: number): DrawnLane {
  const bottom = at.y + at.height;
  let y = at.y;
  const strands = (load?.strands ?? []).map(({ picture, load_bits_per_second }) => {
    const height = Math.max(1, load_bits_per_second * perBit);
    const top = Math.min(y, bottom);
    y += height;
    return { picture, at: { ...at, y: top, height: Math.min(y, bottom + 3) - top } };
  });
  return { load, at, toRight, strands, usedTo: Math.min(y, bottom) };
}

/** What is left is written into it where a line of words has room there. */
function hasRoomForWords({ at, usedTo }: DrawnLane): boolean {
  return at.y + at.height - usedTo >= 12;
}

/** What is written beneath the lanes of one of them: what is too much, or what is left where that has no room for words. */
function notesOn(lane: DrawnLane, other: DrawnLane | undefined): { words: string; grave: boolean }[] {
  const { load, toRight } = lane;
  if (!load) return [];
  if (!load.over) {
    if (!load.text || hasRoomForWords(lane)) return [];
    return [{ words: `${toRight ? '››' : '‹‹'} ${load.text}`, grave: false }];
  }
  const { text, excess } = load;
  const otherIsTold = other?.load && (other.load.over || !hasRoomForWords(other));
  if (otherIsTold) return [{ words: `▲ ${toRight ? '››' : '‹‹'} ${excess}`, grave: true }];
  return [`▲ ${text.slice(0, -excess.length).trim()}`, excess].map((words) => ({ words, grave: true }));
}

/** A standby, or what is out of service: nothing but its outline, and why. */
function emptyLanes(at: Rectangle, measures: RibbonMeasures, words: readonly string[], sheet: Sheet): string {
  const { paper, boxEdge, faint } = sheet.theme;
  const { lanesTop, notesTop } = measures;
  const outline = { ...at, y: at.y + lanesTop, height: notesTop - lanesTop };
  const first = outline.y + outline.height / 2 + 4 - ((words.length - 1) * lineHeights.small) / 2;
  return [
    rect(outline, `rx="4" fill="${paper}" stroke="${boxEdge}" stroke-dasharray="5 4"`),
    ...words.map((line, i) =>
      text(at.x + at.width / 2, first + i * lineHeights.small, line, fonts.small, faint, {
        anchor: 'middle',
        italic: true,
      }),
    ),
  ].join('');
}

/** So far apart stand the numbers of the strands of a lane; so many at most. */
const badgeStep = 18;
const mostBadges = 5;

function drawLane(lane: DrawnLane, { theme }: Sheet): string {
  const { load, at, toRight, strands, usedTo } = lane;
  const over = load?.over === true;
  const bottom = at.y + at.height;
  const words = {
    x: toRight ? at.x + 6 : at.x + at.width - 6,
    y: (usedTo + bottom) / 2 + 3.5,
  };
  return [
    rect(at, `fill="${theme.paper}" stroke="${theme.boxEdge}"`),
    ...strands.map((one) =>
      ofPicture(
        one.picture,
        rect({ ...one.at, height: one.at.height - 0.6 }, `fill="${pictureColour(one.picture)}"`),
      ),
    ),
    over
      ? rect(
          { x: at.x - 4, y: bottom - 2.5, width: at.width + 8, height: 5 },
          `fill="url(#hatch)" stroke="${theme.ink}"`,
        )
      : '',
    ...strands.map((one) => chevrons(one.picture, one.at, toRight)),
    load?.text && !over && hasRoomForWords(lane)
      ? text(words.x, words.y, load.text, fonts.lane, theme.faint, { anchor: toRight ? 'start' : 'end' })
      : '',
    badges(load?.strands ?? [], strands, at, toRight, theme.paper),
  ].join('');
}

function chevrons(picture: number, { x, y, width, height }: Rectangle, toRight: boolean): string {
  if (height < 6) return '';
  const middle = y + height / 2;
  const ahead = toRight ? 1 : -1;
  const d = [0.47, 0.52, 0.57]
    .map((share) => `M${n(x + width * share - ahead * 2)} ${n(middle - 3)}l${ahead * 4} 3l${-ahead * 4} 3`)
    .join('');
  const stroke = inkOn(pictureColour(picture));
  return ofPicture(picture, `<path d="${d}" fill="none" stroke="${stroke}" stroke-width="1.3"/>`);
}

/** What belongs to one picture of a ribbon: a view can let the others step back while it follows one. */
function ofPicture(picture: number, svg: string): string {
  return `<g class="strand" data-picture="${picture}">${svg}</g>`;
}

/**
 * Numbers of neighbouring strands stand side by side, because a strand is thinner than its number. Where there are too
 * many, the heaviest are numbered and the others counted.
 */
function badges(
  loads: readonly Strand[],
  strands: readonly { readonly picture: number; readonly at: Rectangle }[],
  lane: Rectangle,
  toRight: boolean,
  paper: string,
): string {
  const shown = strands
    .map((strand, i) => ({ ...strand, load: loads[i]?.load_bits_per_second ?? 0, i }))
    .sort((a, b) => b.load - a.load || a.i - b.i)
    .slice(0, strands.length > mostBadges ? mostBadges - 1 : mostBadges)
    .sort((a, b) => a.i - b.i);
  const xOf = (i: number) => {
    const inward = badgeRadius + 4 + i * badgeStep;
    return toRight ? lane.x + lane.width - inward : lane.x + inward;
  };
  const more = strands.length - shown.length;
  return [
    ...shown.map(({ picture, at }, i) =>
      ofPicture(picture, badge(picture, xOf(i), at.y + at.height / 2, paper, true)),
    ),
    more > 0 ? moreBadge(more, xOf(shown.length), lane.y + lane.height / 2, paper) : '',
  ].join('');
}

function moreBadge(count: number, x: number, y: number, paper: string): string {
  const ink = inkOn(paper);
  const half = badgeRadius + 2;
  return (
    rect({ x: x - half, y: y - 7, width: 2 * half, height: 14 }, `rx="3" fill="${paper}" stroke="${ink}"`) +
    text(x, y + 3.5, `+${count}`, fonts.badge, ink, { anchor: 'middle' })
  );
}
