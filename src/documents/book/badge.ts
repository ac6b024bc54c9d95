import { badgeShape, inkOn, pictureColour } from '../drawing/colours.ts';

const shapes = {
  round: (colour: string) => `<circle cx="10" cy="10" r="9" fill="${colour}" stroke="#000"/>`,
  square: (colour: string) =>
    `<rect x="1.5" y="1.5" width="17" height="17" rx="2" fill="${colour}" stroke="#000"/>`,
  diamond: (colour: string) => `<path d="M10 0l10 10-10 10L0 10z" fill="${colour}" stroke="#000"/>`,
};

/** A picture's number in its shape and colour, as in the drawing. */
export function badge(number: number): string {
  const colour = pictureColour(number);
  const size = number > 99 ? 8 : 11;
  return `<svg class="badge" viewBox="-1 -1 22 22" width="20" height="20" role="img" aria-label="picture ${number}">${shapes[badgeShape(number)](colour)}<text x="10" y="${10 + size * 0.36}" font-size="${size}" font-weight="700" text-anchor="middle" fill="${inkOn(colour)}">${number}</text></svg>`;
}
