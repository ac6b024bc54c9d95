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
export const littleWords = [
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

/** What can stand in the block of a statement: the words that open its settings, by the grammar's rule. */
export const blockWords: Readonly<
  Record<string, { readonly statement: string; readonly words: readonly string[] }>
> = {
  PlanHead: {
    statement: 'plan',
    words: [
      'revision',
      'date',
      'lasts',
      'rate',
      'headroom',
      'slack',
      'spares',
      'units',
      'currency',
      'subnet',
      'multicast',
      'ptp',
      'packing',
      'tagged',
      'lipsync',
      'blanking',
    ],
  },
  Kit: {
    statement: 'kit',
    words: [
      'inputs',
      'outputs',
      'network',
      'joins',
      'carries',
      'forwards',
      'routes',
      'delay',
      'draws',
      'poe',
      'supplies',
      'weighs',
      'costs',
      'firmware',
    ],
  },
  Cable: {
    statement: 'cable',
    words: ['medium', 'like', 'screened', 'stranded', 'loss', 'delay', 'weighs', 'resistance'],
  },
  Interface: {
    statement: 'interface',
    words: ['signal', 'rate', 'clock', 'lanes', 'wavelength', 'budget', 'accepts', 'reach'],
  },
  Node: { statement: 'node', words: ['label', 'gives', 'firmware', 'address'] },
};
