import { escapeXml } from '../escape.ts';
import { badgeShape, contrast, inkOn, pictureColour, type Theme, type ThemeName, themes } from './colours.ts';
import {
  badgeRadius,
  chipHeight,
  fonts,
  laneGap,
  laneHeight,
  type RibbonScale,
  ribbonScale,
  ribbonTitleHeight,
} from './measures.ts';
import type { PlacedLine, Placement, Point, Rectangle } from './place-scene.ts';
import type { Box, Lane, PictureKey, Ribbon, Scene, SceneSituation, Watched, Wire } from './scene.ts';
import { fitText, textWidth } from './text-size.ts';

export interface DrawingOptions {
  readonly theme?: ThemeName;
  /** The segment that is shown; null: what is always on. */
  readonly segment?: string | null;
}

const margin = 24;
const headline = 56;
const face = 'system-ui, "Segoe UI", "Helvetica Neue", Arial, "Noto Sans", "DejaVu Sans", sans-serif';

/**
 * Draws a placed scene as an SVG document that needs nothing else: no script, no font, no link. Each thing is a group
 * with its id in `data-id`, and with all its figures in words as its accessible name.
 */
export function drawSvg(
  scene: Scene,
  placement: Placement,
  { theme = 'light', segment = null }: DrawingOptions = {},
): string {
  return new Drawing(scene, placement, themes[theme], segment).svg();
}

class Drawing {
  readonly #scene: Scene;
  readonly #placement: Placement;
  readonly #theme: Theme;
  readonly #situation: SceneSituation | undefined;
  readonly #scale: RibbonScale;
  readonly #pictures: ReadonlyMap<number, PictureKey>;
  readonly #lost: ReadonlySet<string>;

  constructor(scene: Scene, placement: Placement, theme: Theme, segment: string | null) {
    this.#scene = scene;
    this.#placement = placement;
    this.#theme = theme;
    this.#situation = scene.situations.find((one) => one.segment === segment) ?? scene.situations[0];
    this.#scale = ribbonScale(scene);
    this.#pictures = new Map(scene.pictures.map((picture) => [picture.number, picture]));
    this.#lost = new Set(this.#situation?.lost);
  }

  svg(): string {
    const { title } = this.#scene;
    const legend = this.#legend();
    const width = Math.max(this.#placement.width, 560, textWidth(title, fonts.title, true)) + 2 * margin;
    const height = headline + this.#placement.height + legend.height + 2 * margin;
    const { paper, ink, faint } = this.#theme;
    const subtitle = [this.#situation?.title, this.#situation?.subtitle].filter(Boolean).join(' · ');
    return [
      `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${n(width)} ${n(height)}" width="${n(width)}" height="${n(height)}" role="group" aria-label="${escapeXml(`${title}: ${subtitle}`)}" font-family='${face}'>`,
      `<rect width="100%" height="100%" fill="${paper}"/>`,
      hatch(ink, paper),
      text(margin, margin + 16, title, fonts.title, ink, { bold: true }),
      text(margin, margin + 36, subtitle, fonts.small, faint),
      `<g transform="translate(${margin} ${margin + headline - 12})">`,
      ...this.#scene.rooms.map((room) => this.#room(room.id, room.title)),
      ...this.#scene.ribbons.map((ribbon) => this.#ribbon(ribbon)),
      ...this.#scene.wires.map((wire) => this.#wire(wire)),
      ...this.#scene.boxes.map((box) => this.#box(box)),
      '</g>',
      `<g transform="translate(${margin} ${n(headline + this.#placement.height + margin)})">${legend.svg}</g>`,
      '</svg>',
    ].join('\n');
  }

  #room(id: string, title: string): string {
    const at = this.#placement.rooms[id];
    if (!at) return '';
    const { room, roomEdge, faint } = this.#theme;
    return group(id, 'room', title, [
      `<rect ${box(at)} rx="10" fill="${room}" stroke="${roomEdge}"/>`,
      text(at.x + 16, at.y + 24, fitText(title, fonts.box, at.width - 24, true), fonts.box, faint, {
        bold: true,
      }),
    ]);
  }

  #box(one: Box): string {
    const at = this.#placement.boxes[one.id];
    if (!at) return '';
    return one.kind === 'node' ? this.#node(one, at) : this.#chip(one, { ...at, height: chipHeight });
  }

  #node(node: Box, at: Rectangle): string {
    const { box: fill, boxEdge, ink, faint } = this.#theme;
    const lost = this.#lost.has(node.id);
    const middle = at.x + at.width / 2;
    const free = node.ports.filter((port) => port.free).length + node.moreFree;
    const name = `${node.title}, ${node.subtitle}${lost ? ', out of service' : ''}. ${free} free ports.`;
    return group(node.id, 'node', name, [
      `<rect ${box(at)} rx="7" fill="${fill}" stroke="${boxEdge}"${lost ? ' stroke-dasharray="2 4"' : ''}/>`,
      text(middle, at.y + 19, fitText(node.title, fonts.box, at.width - 16, true), fonts.box, ink, {
        bold: true,
        anchor: 'middle',
      }),
      text(middle, at.y + 34, fitText(node.subtitle, fonts.small, at.width - 16), fonts.small, faint, {
        anchor: 'middle',
      }),
      ...node.ports.map((port) => this.#port(port, at)),
      node.moreFree > 0
        ? text(middle, at.y + at.height - 9, `${node.moreFree} more free`, fonts.small, faint, {
            anchor: 'middle',
          })
        : '',
    ]);
  }

  #port(port: Box['ports'][number], at: Rectangle): string {
    const spot = this.#placement.ports[port.id];
    if (!spot) return '';
    const { box: fill, ink, idle, faint } = this.#theme;
    const x = port.side === 'west' ? at.x : at.x + at.width;
    const inside = port.side === 'west' ? 10 : -10;
    const anchor = port.side === 'west' ? 'start' : 'end';
    const square = `<rect x="${n(x - 4)}" y="${n(spot.y - 4)}" width="8" height="8" rx="1.5" ${port.free ? `fill="${fill}" stroke="${idle}"` : `fill="${ink}"`}/>`;
    const titleColour = port.free ? faint : ink;
    const begins =
      port.begins === undefined
        ? ''
        : this.#badge(port.begins, x + inside + (port.side === 'west' ? badgeRadius : -badgeRadius), spot.y);
    const shift = port.begins === undefined ? 0 : 2 * badgeRadius + 5;
    const textX = x + inside + (port.side === 'west' ? shift : -shift);
    return (
      square +
      text(textX, spot.y + 4, fitText(port.title, fonts.port, at.width / 2 - 8), fonts.port, titleColour, {
        anchor,
      }) +
      begins
    );
  }

  #chip(chip: Box, at: Rectangle): string {
    const { box: fill, boxEdge, ink, faint } = this.#theme;
    const watched =
      chip.kind === 'destination' ? this.#situation?.watched.find((one) => one.box === chip.id) : undefined;
    const picture = chip.picture ?? watched?.picture;
    const edge = chip.kind === 'source' && picture !== undefined ? pictureColour(picture) : boxEdge;
    const badgeX = chip.kind === 'source' ? at.x + at.width - badgeRadius - 6 : at.x + badgeRadius + 6;
    const textX = chip.kind === 'source' ? at.x + 14 : at.x + 2 * badgeRadius + 13;
    const room = at.width - 2 * badgeRadius - 26;
    return group(chip.id, chip.kind, this.#chipName(chip, watched), [
      `<rect ${box(at)} rx="${at.height / 2}" fill="${fill}" stroke="${edge}" stroke-width="${chip.kind === 'source' ? 2 : 1}"/>`,
      picture === undefined ? '' : this.#badge(picture, badgeX, at.y + at.height / 2),
      text(textX, at.y + at.height / 2 + 4.5, fitText(chip.title, fonts.box, room), fonts.box, ink),
      watched ? this.#note(watched, at, faint, ink) : '',
    ]);
  }

  #note(watched: Watched, at: Rectangle, faint: string, ink: string): string {
    const mark = watched.trouble ? '▲ ' : '';
    return text(
      at.x + at.width / 2,
      at.y + at.height + 14,
      mark + watched.text,
      fonts.small,
      watched.trouble ? ink : faint,
      { anchor: 'middle', bold: watched.trouble },
    );
  }

  #chipName(chip: Box, watched: Watched | undefined): string {
    if (chip.kind === 'source') return `${chip.title}, picture ${chip.picture}`;
    const picture =
      watched?.picture === undefined
        ? 'no picture'
        : `picture ${watched.picture}, ${this.#pictures.get(watched.picture)?.title}`;
    return `${chip.title} shows ${picture}. ${watched?.text ?? ''}`;
  }

  #wire(wire: Wire): string {
    const line = this.#placement.wires[wire.id];
    if (!line || line.points.length < 2) return '';
    const { ink, idle, faint, paper } = this.#theme;
    const pictures = this.#situation?.wires.find((one) => one.wire === wire.id)?.pictures ?? [];
    const dashed = wire.standbyFor !== undefined || this.#lost.has(wire.id);
    const colours = pictures.length > 0 ? pictures.map(pictureColour) : [idle];
    const width = pictures.length > 0 ? 2.5 : 1.5;
    const dash = dashed ? ' stroke-dasharray="5 4"' : '';
    const paths = colours.map((colour, i) => {
      const d = path(line.points, (i - (colours.length - 1) / 2) * 3);
      // A colour that the paper nearly has gets a dark edge.
      const edge =
        contrast(colour, paper) < 2.2
          ? `<path d="${d}" fill="none" stroke="${ink}" stroke-width="${width + 1.4}"${dash}/>`
          : '';
      return `${edge}<path d="${d}" fill="none" stroke="${colour}" stroke-width="${width}"${dash}/>`;
    });
    const words = [wire.text, wire.trouble?.text].filter(Boolean).join(' · ');
    const carried =
      pictures.length > 0
        ? `carries ${pictures.map((p) => `picture ${p}, ${this.#pictures.get(p)?.title}`).join(' and ')}`
        : 'carries no picture';
    const standby = wire.standbyFor ? `, stands by for ${wire.standbyFor}` : '';
    return group(wire.id, 'wire', `${wire.id}: ${words}, ${carried}${standby}`, [
      `<path d="${path(line.points, 0)}" fill="none" stroke="transparent" stroke-width="12"/>`,
      ...paths,
      this.#wireLabel(line, wire, words, paper, wire.trouble ? ink : faint),
    ]);
  }

  #wireLabel(line: PlacedLine, wire: Wire, words: string, paper: string, colour: string): string {
    if (!line.label || !words) return '';
    const { x, y, width, height } = line.label;
    const shape = wire.trouble
      ? `<path d="M${n(x)} ${n(y + height / 2)}l4-6h${n(width - 8)}l4 6l-4 6h${n(-(width - 8))}z" fill="${paper}" stroke="${colour}"/>`
      : `<rect ${box(line.label)} rx="3" fill="${paper}" fill-opacity="0.9"/>`;
    return (
      shape +
      text(x + width / 2, y + height / 2 + 4, words, fonts.small, colour, {
        anchor: 'middle',
        bold: wire.trouble !== undefined,
      })
    );
  }

  #ribbon(ribbon: Ribbon): string {
    const at = this.#placement.ribbons[ribbon.id];
    if (!at) return '';
    const { ink, paper, boxEdge, faint } = this.#theme;
    const load = this.#situation?.ribbons.find((one) => one.ribbon === ribbon.id);
    const height = laneHeight(ribbon, this.#scale);
    const top = at.y + ribbonTitleHeight;
    const standby =
      ribbon.standbyFor !== undefined && !load?.forward.strands.length && !load?.backward.strands.length;
    const lost = this.#lost.has(ribbon.id);
    const upper = { x: at.x, y: top, width: at.width, height };
    const lower = { ...upper, y: top + height + laneGap };
    const [right, left] = ribbon.fromLeft ? [load?.forward, load?.backward] : [load?.backward, load?.forward];
    const stubs = (this.#placement.stubs[ribbon.id] ?? []).map(
      (stub) =>
        `<path d="${path(stub.points, 0)}" fill="none" stroke="${standby || lost ? boxEdge : ink}" stroke-width="3"${standby || lost ? ' stroke-dasharray="5 4"' : ''}/>`,
    );
    return group(ribbon.id, 'ribbon', this.#ribbonName(ribbon, load), [
      ...stubs,
      text(
        at.x + at.width / 2,
        at.y + 13,
        fitText(ribbon.title, fonts.small, at.width, true),
        fonts.small,
        ink,
        { anchor: 'middle', bold: true },
      ),
      ...(standby || lost
        ? [
            `<rect ${box(upper)} rx="4" fill="${paper}" stroke="${boxEdge}" stroke-dasharray="5 4"/>`,
            text(
              at.x + at.width / 2,
              top + height / 2 + 4,
              lost ? 'out of service' : `stands by for ${ribbon.standbyFor}`,
              fonts.small,
              faint,
              { anchor: 'middle', italic: true },
            ),
          ]
        : ribbon.bothWays
          ? [this.#lane(right, upper, ribbon, true), this.#lane(left, lower, ribbon, false)]
          : [this.#lane(load?.forward, upper, ribbon, ribbon.fromLeft)]),
      this.#ribbonNote(ribbon, load, at),
    ]);
  }

  /** What is wrong with a link, in words beneath it: too long, or too much in one lane. */
  #ribbonNote(ribbon: Ribbon, load: SceneSituation['ribbons'][number] | undefined, at: Rectangle): string {
    const over = [load?.forward, load?.backward].filter((lane) => lane?.over).map((lane) => lane!.text);
    const words = [ribbon.trouble?.text, ...over].filter(Boolean).join(' · ');
    if (!words) return '';
    const style = { anchor: 'middle', bold: true } as const;
    return text(at.x + at.width / 2, at.y + at.height - 4, `▲ ${words}`, fonts.small, this.#theme.ink, style);
  }

  #ribbonName(ribbon: Ribbon, load: SceneSituation['ribbons'][number] | undefined): string {
    const lane = (one: Lane | undefined) =>
      `${one?.strands.map((s) => `picture ${s.picture}`).join(', ') || 'nothing'}, ${one?.text ?? ''}`;
    const standby = ribbon.standbyFor ? ` Stands by for ${ribbon.standbyFor}.` : '';
    return `${ribbon.title}. From ${ribbon.from.port} to ${ribbon.to.port}: ${lane(load?.forward)}. Back: ${lane(load?.backward)}.${standby} ${ribbon.trouble?.text ?? ''}`;
  }

  #lane(lane: Lane | undefined, at: Rectangle, ribbon: Ribbon, forward: boolean): string {
    const { paper, boxEdge, ink } = this.#theme;
    const capacity = ribbon.capacity_bits_per_second ?? 0;
    const perBit = capacity > 0 ? at.height / capacity : 0;
    let y = at.y;
    const strands = (lane?.strands ?? []).map(({ picture, load_bits_per_second }) => {
      const height = Math.max(1, load_bits_per_second * perBit);
      const strand = { x: at.x, y, width: at.width, height: height - 0.6 };
      y += height;
      return { picture, strand };
    });
    const over = lane?.over === true;
    const bottom = at.y + at.height;
    return [
      `<rect ${box(at)} fill="${paper}" stroke="${boxEdge}"/>`,
      ...strands.map(({ picture, strand }) => `<rect ${box(strand)} fill="${pictureColour(picture)}"/>`),
      ...strands.map(({ picture, strand }, i) =>
        this.#strandMarks(picture, strand, forward, i, strands.length),
      ),
      over
        ? `<rect x="${n(at.x - 4)}" y="${n(bottom - 2)}" width="${n(at.width + 8)}" height="5" fill="url(#hatch)" stroke="${ink}"/>`
        : '',
      lane?.text && !over ? this.#laneText(lane.text, at, y, forward) : '',
    ].join('');
  }

  /** What is left is written into it; where hardly anything is left, on a plate of its own. */
  #laneText(words: string, at: Rectangle, usedTo: number, forward: boolean): string {
    const size = fonts.small - 1;
    const width = textWidth(words, size) + 8;
    const bottom = at.y + at.height;
    const fits = bottom - usedTo >= 12;
    const x = forward ? at.x + 6 : at.x + at.width - 6;
    const baseline = fits ? (usedTo + bottom) / 2 + 4 : bottom - 4;
    const plate = fits
      ? ''
      : `<rect x="${n(forward ? x - 4 : x - width + 4)}" y="${n(baseline - 10)}" width="${n(width)}" height="13" rx="2" fill="${this.#theme.paper}" fill-opacity="0.92"/>`;
    return plate + text(x, baseline, words, size, this.#theme.faint, { anchor: forward ? 'start' : 'end' });
  }

  #strandMarks(picture: number, strand: Rectangle, forward: boolean, index: number, count: number): string {
    const ink = inkOn(pictureColour(picture));
    const middle = strand.y + strand.height / 2;
    const tall = strand.height >= 5;
    const chevrons = tall
      ? [0.42, 0.5, 0.58].map((share) => {
          const x = strand.x + strand.width * share;
          const d = forward
            ? `M${n(x - 2)} ${n(middle - 3)}l4 3l-4 3`
            : `M${n(x + 2)} ${n(middle - 3)}l-4 3l4 3`;
          return `<path d="${d}" fill="none" stroke="${ink}" stroke-width="1.3"/>`;
        })
      : [];
    // Badges of neighbouring strands stand apart, because a strand is thinner than a badge.
    const step = Math.min(24, (strand.width * 0.34) / Math.max(1, count));
    const x = forward ? strand.x + strand.width - 14 - index * step : strand.x + 14 + index * step;
    return chevrons.join('') + this.#badge(picture, x, middle);
  }

  #badge(number: number, x: number, y: number): string {
    const colour = pictureColour(number);
    const r = badgeRadius;
    const edge = this.#theme.paper;
    const shape = {
      round: `<circle cx="${n(x)}" cy="${n(y)}" r="${r}" fill="${colour}" stroke="${edge}"/>`,
      square: `<rect x="${n(x - r + 1)}" y="${n(y - r + 1)}" width="${2 * r - 2}" height="${2 * r - 2}" rx="2" fill="${colour}" stroke="${edge}"/>`,
      diamond: `<path d="M${n(x)} ${n(y - r - 1)}l${r + 1} ${r + 1}l-${r + 1} ${r + 1}l-${r + 1} -${r + 1}z" fill="${colour}" stroke="${edge}"/>`,
    }[badgeShape(number)];
    const size = number > 99 ? fonts.badge - 2 : fonts.badge;
    return (
      shape + text(x, y + size * 0.36, String(number), size, inkOn(colour), { anchor: 'middle', bold: true })
    );
  }

  #legend(): { svg: string; height: number } {
    const { faint, ink } = this.#theme;
    const width = Math.max(this.#placement.width, 560);
    const parts: string[] = [text(0, 14, 'Pictures', fonts.small, faint, { bold: true })];
    let [x, y] = [70, 10];
    for (const { number, title } of this.#scene.pictures) {
      const label = fitText(title, fonts.small, 220);
      const needed = 2 * badgeRadius + 8 + textWidth(label, fonts.small) + 22;
      if (x + needed > width && x > 70) [x, y] = [70, y + 22];
      parts.push(
        this.#badge(number, x + badgeRadius, y),
        text(x + 2 * badgeRadius + 6, y + 4, label, fonts.small, ink),
      );
      x += needed;
    }
    const lines = [
      'A network link is a ribbon: its height is its capacity each way, each picture a strand in it; the upper lane goes to the right,',
      `the lower one to the left; what is white is left over. ${this.#floorNote()}`,
    ];
    for (const [i, line] of lines.entries()) parts.push(text(0, y + 32 + i * 16, line, fonts.small, faint));
    return { svg: parts.join(''), height: y + 60 };
  }

  #floorNote(): string {
    const floor = this.#scale.floor_bits_per_second;
    const thin = this.#scene.ribbons.some((ribbon) => (ribbon.capacity_bits_per_second ?? 0) < floor);
    return thin ? `Links below ${(floor / 1e9).toFixed(1)} Gb/s are drawn higher than they are.` : '';
  }
}

function hatch(ink: string, paper: string): string {
  return `<defs><pattern id="hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="6" height="6" fill="${paper}"/><rect width="3" height="6" fill="${ink}"/></pattern></defs>`;
}

function group(id: string, kind: string, name: string, parts: readonly string[]): string {
  return `<g class="${kind}" data-id="${escapeXml(id)}" data-kind="${kind}" role="img" aria-label="${escapeXml(name.trim())}"><title>${escapeXml(name.trim())}</title>${parts.join('')}</g>`;
}

interface TextStyle {
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  readonly italic?: boolean;
}

function text(
  x: number,
  y: number,
  words: string,
  size: number,
  colour: string,
  { anchor = 'start', bold = false, italic = false }: TextStyle = {},
): string {
  const style = `${anchor === 'start' ? '' : ` text-anchor="${anchor}"`}${bold ? ' font-weight="600"' : ''}${italic ? ' font-style="italic"' : ''}`;
  return `<text x="${n(x)}" y="${n(y)}" font-size="${size}" fill="${colour}"${style}>${escapeXml(words)}</text>`;
}

function box({ x, y, width, height }: Rectangle): string {
  return `x="${n(x)}" y="${n(y)}" width="${n(Math.max(0, width))}" height="${n(Math.max(0, height))}"`;
}

/** A line of right angles with rounded corners, moved aside by an offset. */
function path(points: readonly Point[], offset: number): string {
  const moved = points.map(({ x, y }) => ({ x: x + offset, y: y + offset }));
  const [first, ...rest] = moved;
  if (!first) return '';
  let d = `M${n(first.x)} ${n(first.y)}`;
  for (const [i, point] of rest.entries()) {
    const next = rest[i + 1];
    if (!next) {
      d += `L${n(point.x)} ${n(point.y)}`;
      continue;
    }
    const before = moved[i]!;
    const radius = Math.min(6, distance(before, point) / 2, distance(point, next) / 2);
    const enter = towards(point, before, radius);
    const leave = towards(point, next, radius);
    d += `L${n(enter.x)} ${n(enter.y)}Q${n(point.x)} ${n(point.y)} ${n(leave.x)} ${n(leave.y)}`;
  }
  return d;
}

function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

function towards(from: Point, to: Point, length: number): Point {
  const whole = distance(from, to) || 1;
  return { x: from.x + ((to.x - from.x) * length) / whole, y: from.y + ((to.y - from.y) * length) / whole };
}

/** A number as SVG needs it: at most two decimals. */
function n(value: number): string {
  return String(Math.round(value * 100) / 100);
}
