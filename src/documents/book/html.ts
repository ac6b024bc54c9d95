import { escapeXml } from '../escape.ts';
import { printable } from '../printable.ts';

/** Names may be anything; nobody reads more of one than this. */
const LONGEST_TEXT = 4000;
/** A word of more letters may be broken behind so many; what stands for one letter is not torn apart. */
const LONG_WORD = /(?:&[#\w]+;|[^\s&\p{M}\u200c\u200d]\p{M}*){18}(?=[^\s\p{M}\u200c\u200d])/gu;

/** Text of a plan in HTML: nothing of it acts, and nothing turns the direction of what stands around it. */
export function text(words: string): string {
  const shown = words.length > LONGEST_TEXT ? `${words.slice(0, LONGEST_TEXT)}…` : words;
  return escapeXml(printable(shown)).replace(LONG_WORD, '$&<wbr>');
}

/** Text in a quoted attribute or a title, where no element may stand. */
export function attribute(words: string): string {
  return escapeXml(printable(words.slice(0, LONGEST_TEXT)));
}

/** Our own sentences, in which words between back-quotes are typed as they are. */
export function prose(words: string): string {
  return words
    .split('`')
    .map((part, i) => (i % 2 === 1 ? `<code>${text(part)}</code>` : text(part)))
    .join('');
}
