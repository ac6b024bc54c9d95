/** Twice the size at 100 %, so that small words stay sharp on paper. */
const pixelsPerUnit = 2;
/** No canvas is larger in a common browser. */
const mostPixels = 16_000;

export function toBase64(text: string): string {
  let bytes = '';
  for (const byte of new TextEncoder().encode(text)) bytes += String.fromCharCode(byte);
  return btoa(bytes);
}

/** An SVG document as a PNG picture. @returns its bytes in base64. */
export async function exportPng(svg: string): Promise<string> {
  const image = new Image();
  image.src = `data:image/svg+xml;base64,${toBase64(svg)}`;
  await image.decode();
  const scale = Math.min(pixelsPerUnit, mostPixels / Math.max(image.width, image.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(image.width * scale);
  canvas.height = Math.round(image.height * scale);
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL('image/png').split(',')[1] ?? '';
}
