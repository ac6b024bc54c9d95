/** Colours for a terminal. Nothing may be told by colour alone: the words say it too. */
export interface Paint {
  error(text: string): string;
  warning(text: string): string;
  info(text: string): string;
  heading(text: string): string;
  quiet(text: string): string;
}

export const plainPaint: Paint = {
  error: same,
  warning: same,
  info: same,
  heading: same,
  quiet: same,
};

export const ansiPaint: Paint = {
  error: coded(31),
  warning: coded(33),
  info: coded(36),
  heading: coded(1),
  quiet: coded(2),
};

function same(text: string): string {
  return text;
}

function coded(code: number): (text: string) => string {
  return (text) => `\u001b[${code}m${text}\u001b[0m`;
}
