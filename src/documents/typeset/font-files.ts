/**
 * The font files in the order in which a character is looked for: a sans-serif for the scripts it has, and last a pixel
 * face with nearly all of Unicode's first plane, so that hardly any name has no shape.
 */
export const fontFiles: readonly string[] = [
  'noto-sans-latin-700-normal.woff',
  'noto-sans-latin-ext-700-normal.woff',
  'noto-sans-greek-700-normal.woff',
  'noto-sans-cyrillic-700-normal.woff',
  'noto-sans-cyrillic-ext-700-normal.woff',
  'noto-sans-devanagari-700-normal.woff',
  'noto-sans-hebrew-hebrew-700-normal.woff',
  'noto-sans-arabic-arabic-700-normal.woff',
  'noto-sans-jp-japanese-700-normal.woff',
  'unifontex-latin-400-normal.woff',
];
