/** The words that open a statement, in the order in which a plan is usually written. */
export const statementWords = [
  'plan',
  'import',
  'place',
  'run',
  'circuit',
  'kit',
  'cable',
  'interface',
  'node',
  'source',
  'destination',
  'link',
  'feed',
  'segment',
  'black',
  'uplink',
  'stock',
  'case',
  'accept',
  'measured',
  'proved',
] as const;

/**
 * The little words between names. With the statement words they are reserved: where one of them stands, a name has
 * been left out, and the parser can go on. Every other keyword can also be a name.
 */
const littleWords = [
  'as',
  'at',
  'by',
  'for',
  'from',
  'holds',
  'instead',
  'into',
  'of',
  'on',
  'over',
  'per',
  'powered',
  'sends',
  'standby',
  'takes',
  'to',
  'via',
  'with',
  'within',
  'without',
] as const;

const reserved: ReadonlySet<string> = new Set([...statementWords, ...littleWords]);

/** Whether a word can never be a name. */
export function isReserved(word: string): boolean {
  return reserved.has(word);
}

const opening: ReadonlySet<string> = new Set(statementWords);

export function isStatementWord(word: string): boolean {
  return opening.has(word);
}
