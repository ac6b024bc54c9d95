import type { Placement } from '../drawing/place-scene.ts';
import type { BookParts } from './book.ts';
import { drawingsHtml } from './drawing-html.ts';
import { attribute } from './html.ts';

/** The body of the book. @param placements Of the drawings, in their order; undefined where one failed. */
export function bookBody(parts: BookParts, placements: readonly (Placement | undefined)[]): string {
  const drawings =
    parts.drawingsHead === ''
      ? ''
      : `<section id="drawing" class="drawings" aria-labelledby="drawing-title">${drawingsHtml(parts.drawings, placements, parts.drawingsHead)}</section>`;
  return `<main>${[parts.cover, drawings, ...parts.sections].filter(Boolean).join('\n')}</main>`;
}

/**
 * The book as one file: no script, no font, no link to anywhere. Its policy lets nothing load; the style is allowed by
 * its hash (Content Security Policy Level 3).
 */
export async function bookPage(
  parts: BookParts,
  placements: readonly (Placement | undefined)[],
): Promise<string> {
  const hash = await hashOf(parts.style);
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src '${hash}'; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="generator" content="Feedplot">
<title>${attribute(parts.title)}</title>
<style>${parts.style}</style>
</head>
<body>
${bookBody(parts, placements)}
</body>
</html>
`;
}

/** The hash by which a policy allows one style or script (Content Security Policy Level 3). */
export async function hashOf(style: string): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(style));
  return `sha256-${btoa(String.fromCharCode(...new Uint8Array(digest)))}`;
}
