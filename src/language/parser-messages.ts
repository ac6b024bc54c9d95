import type { IToken, TokenType } from 'chevrotain';
import { AbstractParserErrorMessageProvider, DefaultLexerErrorMessageProvider } from 'langium';
import { nearest } from './spelling.ts';
import { blockWords, isReserved, isStatementWord, littleWords, statementWords } from './words.ts';

/** What each kind of token is for the person who writes it. */
const nouns: Record<string, string> = {
  NAME: 'a name',
  ID: 'a word',
  STRING: 'text in "quotes"',
  NUMBER: 'a number',
  DATE: 'a date such as 2027-05-14',
  ADDRESS: 'an address such as 10.20.0.0/24',
  FORMAT: 'a format such as 1080p59.94',
  SAMPLING: 'a sampling such as 4:2:2',
  RATIO: 'a ratio such as 8:1',
  UNIT: 'a unit',
};

/** Messages that say what is expected in words, never as a list of token classes. */
export class FeedplotParserMessages extends AbstractParserErrorMessageProvider {
  override buildMismatchTokenMessage(found: {
    expected: TokenType;
    actual: IToken;
    previous: IToken;
    ruleName: string;
  }): string {
    const { expected, actual, ruleName } = found;
    const previous = trulyBefore(actual, found.previous);
    if (expected.name === 'EOF') return statementExpected(actual);
    if (expected.name === 'NAME') return nameExpected(actual, previous);
    if (expected.name === '}' && actual.image && !isStatementWord(actual.image))
      return settingExpected(actual, ruleName) ?? `\`}\` is expected ${after(previous)}${instead(actual)}.`;
    return `${capital(nounOf(expected.name))} is expected ${after(previous)}${instead(actual)}.`;
  }

  override buildNotAllInputParsedMessage({
    firstRedundant,
  }: {
    firstRedundant: IToken;
    ruleName: string;
  }): string {
    return statementExpected(firstRedundant);
  }

  override buildNoViableAltMessage(found: {
    expectedPathsPerAlt: TokenType[][][];
    actual: IToken[];
    previous: IToken;
    customUserDescription: string;
    ruleName: string;
  }): string {
    const actual = found.actual[0];
    const first = new Set(
      found.expectedPathsPerAlt.flat().flatMap((path) => (path[0] ? [path[0].name] : [])),
    );
    if (first.has('plan') && first.has('feed')) return statementExpected(actual);
    if (first.has('NAME')) return nameExpected(actual, found.previous);
    const nounList = [...first].slice(0, 4).map(nounOf);
    return `${capital(either(nounList))} is expected ${after(found.previous)}${instead(actual)}.`;
  }

  override buildEarlyExitMessage(found: {
    expectedIterationPaths: TokenType[][];
    actual: IToken[];
    previous: IToken;
    customUserDescription: string;
    ruleName: string;
  }): string {
    const first = [
      ...new Set(found.expectedIterationPaths.flatMap((path) => (path[0] ? [path[0].name] : []))),
    ];
    return `${capital(either(first.slice(0, 4).map(nounOf)))} is expected ${after(found.previous)}${instead(found.actual[0])}.`;
  }
}

/** Messages without offsets: those go stale when the text above changes. */
export class FeedplotLexerMessages extends DefaultLexerErrorMessageProvider {
  override buildUnexpectedCharactersMessage(text: string, start: number, length: number): string {
    const found = text.slice(start, start + Math.min(length, 20));
    if (found.startsWith('/*')) return 'This comment is not closed: write */ where it ends.';
    return `${printable(found)} means nothing here.`;
  }
}

function statementExpected(actual: IToken | undefined): string {
  if (!actual?.image) return 'A statement is expected here.';
  const guess = nearest(actual.image, [...statementWords, ...littleWords]);
  const hint = guess
    ? `Did you mean \`${guess}\`?`
    : `A statement begins with a word such as ${['place', 'node', 'link', 'feed'].map((w) => `\`${w}\``).join(', ')}.`;
  return `No statement begins with ${printable(actual.image)}. ${hint}`;
}

/** After a word that a block does not have, the parser skips to one that it has before it tells of the first. */
function trulyBefore(actual: IToken, previous: IToken): IToken | undefined {
  return actual.image && previous.startOffset > actual.startOffset ? undefined : previous;
}

function settingExpected(actual: IToken, ruleName: string): string | undefined {
  // Langium puts an unseen character behind the names of rules, so that none is a name of its own parser's.
  const block = blockWords[ruleName.replace('\u200B', '')];
  if (!block) return undefined;
  const { statement, words } = block;
  if (words.includes(actual.image)) return undefined;
  const guess = nearest(actual.image, words);
  const hint = guess
    ? `Did you mean \`${guess}\`?`
    : `What can be set there: ${words.map((word) => `\`${word}\``).join(', ')}.`;
  return `Nothing in the block of a \`${statement}\` begins with ${printable(actual.image)}. ${hint}`;
}

function nameExpected(actual: IToken | undefined, previous: IToken | undefined): string {
  const image = actual?.image ?? '';
  if (/^\d/.test(image))
    return `A name is expected ${after(previous)}, and a name begins with a letter: ${printable(image)} does not.`;
  if (image && isReserved(image) && !isStatementWord(image))
    return `A name is expected ${after(previous)}: \`${image}\` is a word of the language and cannot name anything.`;
  return `A name is expected ${after(previous)}${instead(actual)}.`;
}

function nounOf(token: string): string {
  return nouns[token] ?? `\`${token}\``;
}

function after(previous: IToken | undefined): string {
  return previous?.image ? `after ${printable(previous.image)}` : 'here';
}

/** Names the token found, unless it merely belongs to the next statement. */
function instead(actual: IToken | undefined): string {
  if (!actual?.image || isStatementWord(actual.image)) return '';
  return `, not ${printable(actual.image)}`;
}

function either(words: string[]): string {
  return words.length < 2 ? (words[0] ?? 'something') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function printable(text: string): string {
  const short = text.length > 24 ? `${text.slice(0, 24)}…` : text;
  const visible = short.replace(/[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/gu, (c) => `U+${codeOf(c)}`);
  return `\`${visible.replaceAll('`', "'")}\``;
}

function codeOf(character: string): string {
  return (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
}
