/** The keystrokes that are measured: each goes in and out again, in the middle of the plan. */
export interface Keystroke {
  readonly kind: string;
  /** Where in a text it is typed, and what. */
  readonly find: (text: string) => { readonly at: number; readonly text: string };
}

function behind(text: string, words: string, offset = 0): number {
  const half = text.indexOf(words, text.length / 2);
  const at = half < 0 ? text.indexOf(words) : half;
  if (at < 0) throw new Error(`The plan has no ${words}`);
  return at + words.length + offset;
}

export const keystrokes: readonly Keystroke[] = [
  /** No figure changes. */
  { kind: 'label', find: (text) => ({ at: behind(text, ' "Hall '), text: 'x' }) },
  /** The figures of one cable. */
  { kind: 'length', find: (text) => ({ at: behind(text, 'over rg6 '), text: '1' }) },
  /** A name that leads nowhere any more, with a finding. */
  { kind: 'name', find: (text) => ({ at: behind(text, ' over rg6', -3), text: 'x' }) },
  /** Where a picture goes. */
  { kind: 'feed', find: (text) => ({ at: behind(text, '_3 -> screen'), text: '1' }) },
];
