/**
 * Text of a plan as it may be shown. Control characters would steer the terminal, and marks that turn the direction
 * of writing would make a line read other than it is; both are shown as their code. Joiners inside a word stay.
 */
export function printable(text: string): string {
  return text.replace(/(?![\n\u200C\u200D])[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/gu, (character) => {
    const code = character.codePointAt(0) ?? 0;
    return `\\u{${code.toString(16)}}`;
  });
}

/** Printable, and on one line of at most so many characters. */
export function oneLine(text: string, most = 1000): string {
  const line = printable(text.replace(/\s*[\r\n]+\s*/g, ' '));
  return line.length <= most ? line : `${line.slice(0, most - 1)}…`;
}
