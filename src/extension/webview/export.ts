/** Twice the size at 100 %, so that small words stay sharp on paper. */
const pixelsPerUnit = 2;
/** No canvas is longer on a side, or larger, in a common browser. */
const longestSide = 16_000;
const mostPixels = 120_000_000;

export function toBase64(text: string): string {
  const bytes = new TextEncoder().encode(text);
  let characters = '';
  // In parts: a call takes only so many arguments.
  for (let at = 0; at < bytes.length; at += 8192)
    characters += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return btoa(characters);
}

/** An SVG document as a PNG picture. @returns its bytes in base64. */
export async function exportPng(svg: string): Promise<string> {
  const image = new Image();
  image.src = `data:image/svg+xml;base64,${toBase64(svg)}`;
  await image.decode();
  const { width, height } = image;
  const scale = Math.min(
    pixelsPerUnit,
    longestSide / Math.max(width, height),
    Math.sqrt(mostPixels / (width * height)),
  );
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL('image/png').split(',')[1] ?? '';
}
