import qrcode from 'qrcode-generator';

/** A 2D code as rows of dark squares, with the free edge of four that readers need (ISO/IEC 18004, second-hand). */
export function codeRows(text: string): boolean[][] {
  const code = qrcode(0, 'M');
  code.addData(bytesAsText(text));
  code.make();
  const count = code.getModuleCount();
  const edge = 4;
  return Array.from({ length: count + 2 * edge }, (_, y) =>
    Array.from({ length: count + 2 * edge }, (_, x) => {
      const [row, column] = [y - edge, x - edge];
      return row >= 0 && column >= 0 && row < count && column < count && code.isDark(row, column);
    }),
  );
}

/** The library takes one byte a character: UTF-8 as such characters, which readers know by themselves. */
function bytesAsText(text: string): string {
  return Array.from(new TextEncoder().encode(text), (byte) => String.fromCharCode(byte)).join('');
}
