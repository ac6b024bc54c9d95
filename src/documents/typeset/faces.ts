import { create, type Font } from 'fontkit';
import { characters } from '../text-width.ts';
import { fontFiles } from './font-files.ts';

/** The bytes of a font file by its name: the caller knows where the files lie. */
export type FontBytes = (file: string) => Uint8Array;

/** A face of type, read when it is first needed. */
export class Face {
  readonly file: string;
  readonly #read: FontBytes;
  #bytes: Uint8Array | undefined;
  #font: Font | undefined;
  readonly #widths = new Map<string, number>();

  constructor(file: string, read: FontBytes) {
    this.file = file;
    this.#read = read;
  }

  get bytes(): Uint8Array {
    this.#bytes ??= this.#read(this.file);
    return this.#bytes;
  }

  get font(): Font {
    this.#font ??= create(this.bytes as Buffer) as Font;
    return this.#font;
  }

  /** The width of a run of text, in ems. The same words come again and again: each is shaped once. */
  widthOf(text: string): number {
    let width = this.#widths.get(text);
    if (width === undefined) {
      width = this.font.layout(text).advanceWidth / this.font.unitsPerEm;
      this.#widths.set(text, width);
    }
    return width;
  }

  has(character: string): boolean {
    return [...character].every(
      (one) => IGNORABLE.test(one) || this.font.hasGlyphForCodePoint(one.codePointAt(0)!),
    );
  }
}

/** Joiners and variation marks: a face need not have a shape for them. */
const IGNORABLE = /\u200c|\u200d|[\ufe00-\ufe0f]/;

/** Faces for every script there is a font for. */
export class Faces {
  readonly #faces: readonly Face[];
  readonly #known = new Map<string, Face>();

  constructor(read: FontBytes) {
    this.#faces = fontFiles.map((file) => new Face(file, read));
  }

  /** The face of a character as people see it, marks and joined signs together. */
  of(character: string): Face {
    let face = this.#known.get(character);
    if (!face) {
      face = this.#faces.find((one) => one.has(character)) ?? this.#faces[0]!;
      this.#known.set(character, face);
    }
    return face;
  }

  /** A text cut where the face changes. What has no letter of its own stays with what stands before. */
  split(text: string): { face: Face; text: string }[] {
    const pieces: { face: Face; text: string }[] = [];
    for (const character of characters(text)) {
      const last = pieces.at(-1);
      const stays =
        last && (last.face === this.of(character) || (NEUTRAL.test(character) && last.face.has(character)));
      if (stays) last.text += character;
      else pieces.push({ face: this.of(character), text: character });
    }
    return pieces;
  }
}

const NEUTRAL = /^[\s\p{P}\p{N}]+$/u;
