import { basename, join, normalize } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fileNameOf } from '../../src/documents/file-names.ts';

/** Reserved device names of Microsoft's "Naming Files, Paths, and Namespaces" (published). */
const devices = ['CON', 'PRN', 'AUX', 'NUL', ...[0, 1, 5, 9].flatMap((n) => [`COM${n}`, `LPT${n}`])];

test.each(devices)('%s in any case is no device any more', (device) => {
  for (const name of [device, device.toLowerCase(), ` ${device}. `]) {
    expect(fileNameOf(name).toUpperCase()).not.toBe(device);
    expect(fileNameOf(name)).not.toContain('.');
  }
});

test.each([
  ['../../x', 'x'],
  ['..', 'plan'],
  ['', 'plan'],
  ['C:\\Windows', 'C-Windows'],
  ['Score laptop', 'Score-laptop'],
  ['日本語のカメラ', '日本語のカメラ'],
  ['صندوق', 'صندوق'],
  ['<script>', 'script'],
])('%s becomes %s', (name, file) => {
  expect(fileNameOf(name)).toBe(file);
});

describe('any name', () => {
  test('is one part of a path, inside the folder, not hidden, at most 60 bytes', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (name) => {
        const file = fileNameOf(name);
        expect(file).toMatch(/^[\p{L}\p{M}\p{N}_-]+$/u);
        expect(normalize(join('/out', file))).toBe(`/out/${file}`);
        expect(basename(file)).toBe(file);
        expect(Buffer.byteLength(file)).toBeLessThanOrEqual(61);
      }),
    );
  });
});
