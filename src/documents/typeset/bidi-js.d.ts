/** What is used of bidi-js, which brings no types of its own. */
declare module 'bidi-js' {
  interface Bidi {
    getEmbeddingLevels(
      text: string,
      baseDirection?: 'ltr' | 'rtl' | 'auto',
    ): { readonly levels: Uint8Array; readonly paragraphs: readonly { readonly level: number }[] };
    getMirroredCharacter(character: string): string | null;
  }
  export default function bidiFactory(): Bidi;
}
