import { isStatementWord } from '../../language/words.ts';
import { statementHelp, wordHelp } from '../word-help.ts';
import { type Asked, CompletionItemKind, type Offer } from './asked.ts';

/** Settings that may stand in one block more than once, and little words that belong to several clauses. */
const repeatable: ReadonlySet<string> = new Set([
  'inputs',
  'outputs',
  'network',
  'joins',
  'loss',
  'budget',
  'reach',
  'label',
  'gives',
  'as',
  'per',
  'at',
  'from',
  'in',
]);

/** Words that another clause uses too, so that they may stand once more. */
const sharedWith: Record<string, string> = { over: 'streams', by: 'powered' };

const arrows = { '->': 'one way', '<->': 'both ways' } as const;

/** Statements to begin and clauses to add. A clause that is written already is not offered again. */
export function wordOffers(asked: Asked, words: readonly string[]): Offer[] {
  const { where } = asked;
  const written = where.before.map(({ image }) => image);
  return words.flatMap((word): Offer[] => {
    if (word === '->' || word === '<->')
      return [{ label: word, kind: CompletionItemKind.Operator, detail: arrows[word], group: 1 }];
    if (!/^[A-Za-z]/.test(word)) return [];
    const statement = statementHelp.get(word);
    if (statement && isStatementWord(word)) {
      if (!where.opensLine) return [];
      const documentation = `${statement.says}\n\n\`\`\`feedplot\n${statement.example}\n\`\`\``;
      return [
        {
          label: word,
          kind: CompletionItemKind.Keyword,
          documentation,
          pattern: statement.pattern,
          group: 6,
        },
      ];
    }
    if (where.opensLine || isSpent(word, written)) return [];
    return [
      {
        label: word,
        kind: CompletionItemKind.Keyword,
        documentation: wordHelp.get(word),
        group: 7,
      },
    ];
  });
}

function isSpent(word: string, written: readonly string[]): boolean {
  if (repeatable.has(word)) return false;
  const most = written.includes(sharedWith[word] ?? '') ? 2 : 1;
  return written.filter((one) => one === word).length >= most;
}
