import { inkOn, pictureColour } from './colours.ts';
import { describeRibbon } from './descriptions.ts';
import { badgeRadius, fonts, laneGap, lineHeights, measureRibbon, type RibbonMeasures } from './measures.ts';
import type { Rectangle } from './placement.ts';
import type { Lane, Ribbon, RibbonLoad, Strand } from './scene.ts';
import type { Sheet } from './sheet.ts';
import { badge, group, n, path, rect, text } from './svg.ts';
import { textWidth } from './text-size.ts';

/** A network link: as high as its capacity each way, with a strand as high as its load for each picture. */
export function drawRibbon(ribbon: Ribbon, sheet: Sheet): string {
  const at = sheet.placement.ribbons.get(ribbon.id);
  if (!at) return '';
  const measures = measureRibbon(ribbon, sheet.scale);
  const { ink, boxEdge } = sheet.theme;
  const load = sheet.ribbons.get(ribbon.id);
  const lost = sheet.lost.has(ribbon.id);
  const standsBy = ribbon.standbyFor !== undefined && !isUsed(load);
  const dash = standsBy || lost ? ' stroke-dasharray="5 4"' : '';
  const stubs = (sheet.placement.stubs.get(ribbon.id) ?? []).map(
    ({ points }) =>
      `<path d="${path(points)}" fill="none" stroke="${dash ? boxEdge : ink}" stroke-width="3"${dash}/>`,
  );
  const middle = at.x + at.width / 2;
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
      : drawLanes(ribbon, at, measures, load, sheet)),
    ...notesOf(ribbon, measures, load).map((line, i) =>
      text(middle, at.y + measures.notesTop + 15 + i * lineHeights.small, line, fonts.small, ink, {
        anchor: 'middle',
        bold: true,
      }),
    ),
  ]);
}

function isUsed(load: RibbonLoad | undefined): boolean {
  return load !== undefined && load.forward.strands.length + load.backward.strands.length > 0;
}

/** What is wrong with a link, beneath it: too long, or too much in a lane. */
function notesOf(
  { fromLeft }: Ribbon,
  { trouble }: RibbonMeasures,
  load: RibbonLoad | undefined,
): readonly string[] {
  const [right, left] = sided(fromLeft, load);
  const over = [
    ...(right?.over ? [{ lane: right, arrow: '→' }] : []),
    ...(left?.over ? [{ lane: left, arrow: '←' }] : []),
  ];
  const only = over.length === 1 && over[0];
  if (only) {
    const { text, excess } = only.lane;
    return [...trouble, `▲ ${text.slice(0, -excess.length).trim()}`, excess];
  }
  return [...trouble, ...over.map(({ lane, arrow }) => `▲ ${arrow} ${lane.excess}`)];
}

/** The lanes that go to the right and to the left. */
function sided(fromLeft: boolean, load: RibbonLoad | undefined): [Lane | undefined, Lane | undefined] {
  return fromLeft ? [load?.forward, load?.backward] : [load?.backward, load?.forward];
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

function drawLanes(
  ribbon: Ribbon,
  at: Rectangle,
  { lanesTop, laneHeight }: RibbonMeasures,
  load: RibbonLoad | undefined,
  sheet: Sheet,
): string[] {
  const upper = { ...at, y: at.y + lanesTop, height: laneHeight };
  const lower = { ...upper, y: upper.y + laneHeight + laneGap };
  const [right, left] = sided(ribbon.fromLeft, load);
  if (!ribbon.bothWays)
    return [drawLane(ribbon.fromLeft ? right : left, upper, ribbon, ribbon.fromLeft, sheet)];
  return [drawLane(right, upper, ribbon, true, sheet), drawLane(left, lower, ribbon, false, sheet)];
}

/** So far apart stand the numbers of the strands of a lane; so many at most. */
const badgeStep = 18;
const mostBadges = 5;

function drawLane(
  lane: Lane | undefined,
  at: Rectangle,
  { capacity_bits_per_second: capacity = 0 }: Ribbon,
  toRight: boolean,
  { theme }: Sheet,
): string {
  const perBit = capacity > 0 ? at.height / capacity : 0;
  const bottom = at.y + at.height;
  let y = at.y;
  const strands = (lane?.strands ?? []).map(({ picture, load_bits_per_second }) => {
    const height = Math.max(1, load_bits_per_second * perBit);
    const top = Math.min(y, bottom);
    y += height;
    return { picture, at: { ...at, y: top, height: Math.min(y, bottom + 3) - top } };
  });
  const over = lane?.over === true;
  return [
    rect(at, `fill="${theme.paper}" stroke="${theme.boxEdge}"`),
    ...strands.map((one) =>
      rect({ ...one.at, height: one.at.height - 0.6 }, `fill="${pictureColour(one.picture)}"`),
    ),
    over
      ? rect(
          { x: at.x - 4, y: bottom - 2.5, width: at.width + 8, height: 5 },
          `fill="url(#hatch)" stroke="${theme.ink}"`,
        )
      : '',
    ...strands.map((one) => chevrons(one.picture, one.at, toRight)),
    lane?.text && !over ? laneText(lane.text, at, Math.min(y, bottom), toRight, theme) : '',
    badges(lane?.strands ?? [], strands, at, toRight, theme.paper),
  ].join('');
}

function chevrons(picture: number, { x, y, width, height }: Rectangle, toRight: boolean): string {
  if (height < 6) return '';
  const middle = y + height / 2;
  const ahead = toRight ? 1 : -1;
  const d = [0.47, 0.52, 0.57]
    .map((share) => `M${n(x + width * share - ahead * 2)} ${n(middle - 3)}l${ahead * 4} 3l${-ahead * 4} 3`)
    .join('');
  return `<path d="${d}" fill="none" stroke="${inkOn(pictureColour(picture))}" stroke-width="1.3"/>`;
}

/** What is left is written into it; where hardly anything is left, on a plate of its own. */
function laneText(
  words: string,
  at: Rectangle,
  usedTo: number,
  toRight: boolean,
  theme: Sheet['theme'],
): string {
  const width = textWidth(words, fonts.lane) + 8;
  const bottom = at.y + at.height;
  const fits = bottom - usedTo >= 12;
  const x = toRight ? at.x + 6 : at.x + at.width - 6;
  const baseline = (fits ? (usedTo + bottom) / 2 : Math.max(bottom - 7.5, at.y + at.height / 2)) + 3.5;
  const plate = fits
    ? ''
    : rect(
        { x: toRight ? x - 4 : x - width + 4, y: baseline - 9.5, width, height: 12 },
        `rx="2" fill="${theme.paper}"`,
      );
  return plate + text(x, baseline, words, fonts.lane, theme.faint, { anchor: toRight ? 'start' : 'end' });
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
    ...shown.map(({ picture, at }, i) => badge(picture, xOf(i), at.y + at.height / 2, paper, true)),
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
