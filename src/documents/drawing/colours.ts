/**
 * Colours of pictures: the palette of Okabe and Ito, "Color Universal Design" (2008, jfly.uni-koeln.de/color,
 * published), which readers with any common kind of colour vision can tell apart, with grey in place of its black, which
 * is the colour of words here; then the same again with another shape of badge. A picture is always also told by its
 * number.
 */
const palette = [
  '#0072B2',
  '#D55E00',
  '#009E73',
  '#CC79A7',
  '#E69F00',
  '#56B4E9',
  '#F0E442',
  '#5B5B5B',
] as const;

export type BadgeShape = 'round' | 'square' | 'diamond';
const shapes: readonly BadgeShape[] = ['round', 'square', 'diamond'];

export function pictureColour(number: number): string {
  return palette[(number - 1) % palette.length] ?? palette[7];
}

export function badgeShape(number: number): BadgeShape {
  return shapes[Math.floor((number - 1) / palette.length) % shapes.length] ?? 'round';
}

/** Black or white, whichever is read better on a colour: contrast as WCAG 2.2 defines it (published). */
export function inkOn(colour: string): '#000000' | '#FFFFFF' {
  return contrast(colour, '#000000') >= contrast(colour, '#FFFFFF') ? '#000000' : '#FFFFFF';
}

/** Lines and shapes that tell something contrast so much with what they lie on: WCAG 2.2, criterion 1.4.11 (published). */
export const LEAST_CONTRAST = 3;

/** The colour itself where it can be seen on the paper, else a deeper or paler one of its kind that can. */
export function edgeOn(colour: string, paper: string): string {
  const target = contrast(paper, '#000000') > contrast(paper, '#FFFFFF') ? 0 : 255;
  for (let share = 0; share < 1; share += 0.05) {
    const mixed = mix(colour, target, share);
    if (contrast(mixed, paper) >= LEAST_CONTRAST) return mixed;
  }
  return target === 0 ? '#000000' : '#FFFFFF';
}

function mix(colour: string, target: number, share: number): string {
  const channel = (at: number) => {
    const value = Number.parseInt(colour.slice(at, at + 2), 16);
    return Math.round(value + (target - value) * share)
      .toString(16)
      .padStart(2, '0');
  };
  return `#${channel(1)}${channel(3)}${channel(5)}`.toUpperCase();
}

/** The contrast ratio of two colours, 1 to 21: WCAG 2.2, definition of contrast ratio (published). */
export function contrast(a: string, b: string): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

/** Relative luminance: WCAG 2.2, definition of relative luminance (published). */
function luminance(colour: string): number {
  const channel = (at: number) => {
    const value = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
}
