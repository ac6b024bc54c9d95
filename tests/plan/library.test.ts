/** The facts that are built in against the texts that ship: what is known without reading is what reading would say. */
import { describe, expect, test } from 'vitest';
import { libraryTexts } from '../../src/language/library/texts.ts';
import { readLibrary } from '../../src/plan/library/read.ts';
import { readText } from '../../src/plan/read-text.ts';

const folder = 'file:///library';
const files = readLibrary(folder);

test('every file of the library is there, in order', () => {
  expect(files.map(({ uri }) => uri)).toEqual(libraryTexts.map(([name]) => `${folder}/${name}`));
  expect(readLibrary(folder)).toBe(files);
});

describe.each(libraryTexts.map(([name, text], i) => ({ name, text, file: files[i]! })))(
  '$name',
  ({ name, text, file }) => {
    const read = readText(`${folder}/${name}`, text);

    test('says what its text says', () => {
      const said = ({ statements }: typeof file) =>
        statements.map(({ fact, label, description, faults }) => ({ fact, label, description, faults }));
      expect(file.statements.length).toBeGreaterThan(5);
      expect(said(file)).toEqual(said(read));
      const { imports, hasPlan, unreadables } = read;
      expect({ imports: file.imports, hasPlan: file.hasPlan, unreadables: file.unreadables }).toEqual({
        imports,
        hasPlan,
        unreadables,
      });
    });

    test('knows where every statement is written', () => {
      const places = ({ statements }: typeof file) =>
        statements.map(({ source }) => ({
          file: source.file,
          line: source.range(),
          name: source.range('name'),
          whole: source.whole(),
        }));
      expect(places(file)).toEqual(places(read));
    });
  },
);
