/** Everything of a drawing that is not a picture's colour. */
export interface Theme {
  readonly paper: string;
  readonly room: string;
  readonly roomEdge: string;
  readonly box: string;
  readonly boxEdge: string;
  readonly ink: string;
  readonly faint: string;
  /** Free ports and cables without a picture. */
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
    faint: '#655E50',
    idle: '#857F6F',
  },
  dark: {
    paper: '#1C1D1F',
    room: '#27282B',
    roomEdge: '#44464B',
    box: '#323438',
    boxEdge: '#A3A7AE',
    ink: '#F2F2F0',
    faint: '#B9BBBF',
    idle: '#92959B',
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
  'contrast-light': {
    paper: '#FFFFFF',
    room: '#FFFFFF',
    roomEdge: '#000000',
    box: '#FFFFFF',
    boxEdge: '#000000',
    ink: '#000000',
    faint: '#000000',
    idle: '#000000',
  },
} as const satisfies Record<string, Theme>;

export type ThemeName = keyof typeof themes;
