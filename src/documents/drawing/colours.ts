/**
 * Colours of pictures: the palette of Okabe and Ito, "Color Universal Design" (2008, jfly.uni-koeln.de/color,
 * published), which readers with any common kind of colour vision can tell apart; then the same again with another
 * shape of badge. A picture is always also told by its number.
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

/** Everything of a drawing that is not a picture. */
export interface Theme {
  readonly paper: string;
  readonly room: string;
  readonly roomEdge: string;
  readonly box: string;
  readonly boxEdge: string;
  readonly ink: string;
  readonly faint: string;
  readonly idle: string;
}

export const themes = {
  light: {
    paper: '#FFFFFF',
    room: '#F4F1EA',
    roomEdge: '#D9D3C5',
    box: '#FFFFFF',
    boxEdge: '#7D7767',
    ink: '#1B1A17',
    faint: '#6B6455',
    idle: '#8C8676',
  },
  dark: {
    paper: '#1C1D1F',
    room: '#27282B',
    roomEdge: '#44464B',
    box: '#323438',
    boxEdge: '#A3A7AE',
    ink: '#F2F2F0',
    faint: '#B9BBBF',
    idle: '#8A8D93',
  },
  contrast: {
    paper: '#000000',
    room: '#000000',
    roomEdge: '#FFFFFF',
    box: '#000000',
    boxEdge: '#FFFFFF',
    ink: '#FFFFFF',
    faint: '#FFFFFF',
    idle: '#FFFFFF',
  },
} as const satisfies Record<string, Theme>;

export type ThemeName = keyof typeof themes;
