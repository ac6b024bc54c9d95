import { inflateSync } from 'node:zlib';

/**
 * The font inside a WOFF file: its tables, each packed by zlib, put together as they were (W3C Recommendation "WOFF
 * File Format 1.0", published). The font library can read packed files too, but unpacks a table anew for every letter.
 */
export function unpackWoff(woff: Uint8Array): Uint8Array {
  const view = new DataView(woff.buffer, woff.byteOffset, woff.byteLength);
  if (view.getUint32(0) !== 0x774f4646) throw new Error('This is no WOFF file.');
  const count = view.getUint16(12);
  const font = new Uint8Array(view.getUint32(16));
  const out = new DataView(font.buffer);
  out.setUint32(0, view.getUint32(4));
  out.setUint16(4, count);
  let at = 12 + 16 * count;
  for (let i = 0; i < count; i++) {
    const entry = 44 + 20 * i;
    const [tag, offset, packed, length, checksum] = [0, 4, 8, 12, 16].map((step) =>
      view.getUint32(entry + step),
    ) as [number, number, number, number, number];
    const raw = woff.subarray(offset, offset + packed);
    font.set(packed < length ? inflateSync(raw) : raw, at);
    [tag, checksum, at, length].forEach((value, k) => {
      out.setUint32(12 + 16 * i + 4 * k, value);
    });
    at += (length + 3) & ~3;
  }
  return font;
}
