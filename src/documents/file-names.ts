/** Names of devices, which Windows takes for the device whatever ending stands behind (its naming conventions, published). */
const DEVICES = /^(con|prn|aux|nul|com\d|lpt\d)$/i;
const LONGEST = 60;

/**
 * A name of a plan as part of a file's name: letters, digits, `-` and `_` of any script, everything else a dash. Never
 * empty, never a path, never a device, and short enough for every file system.
 */
export function fileNameOf(name: string, fallback = 'plan'): string {
  const kept = name.normalize('NFC').replace(/[^\p{L}\p{M}\p{N}_]+/gu, '-');
  const short = cutToBytes(kept, LONGEST).replace(/^-+|-+$/g, '');
  if (!/[\p{L}\p{N}]/u.test(short)) return fallback;
  return DEVICES.test(short) ? `${short}_` : short;
}

/** File systems count bytes: at most four for each character of the longest name. */
function cutToBytes(text: string, most: number): string {
  let bytes = 0;
  let cut = '';
  for (const character of text) {
    bytes += new TextEncoder().encode(character).length;
    if (bytes > most) break;
    cut += character;
  }
  return cut;
}
