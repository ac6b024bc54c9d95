/** How findings put things into words: the same thing is named the same way in every message. */
import type { Analysis, Interface, Link, Node, Segment, Settings } from '../analysis/model.ts';
import { formatLength } from '../physics/display.ts';
import type { Statement } from '../plan/plan.ts';

/** A name longer than this is a slip or an attack; a message shows its beginning. */
const LONGEST_NAME = 48;

/** Characters that a terminal or an editor would act on, or show in another order, and halves of characters. */
const INVISIBLE = /[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/gu;

/** A text of the plan as a message shows it: no control characters, and cut when absurdly long. */
export function shown(text: string): string {
  const visible = text.replace(INVISIBLE, ' ').replaceAll('`', "'");
  const letters = [...visible];
  return letters.length > LONGEST_NAME ? `${letters.slice(0, LONGEST_NAME - 12).join('')}…` : visible;
}

/** `` `name` ``, for what is spoken of as a word rather than as a thing. */
export function quoted(text: string): string {
  return `\`${shown(text)}\``;
}

/** Names as `a, b and c`; of a long list the first ones and how many more there are. */
export function listed(names: readonly string[], most = 5): string {
  return listedWords(names.map(shown), most);
}

/** The same for words of our own, in which every name is shown as a name already: they are never cut. */
export function listedWords(words: readonly string[], most = 5): string {
  if (words.length > most)
    return `${words.slice(0, most - 1).join(', ')} and ${words.length - most + 1} more`;
  return joined(words, 'and');
}

export function either(items: readonly string[]): string {
  return joined(items.map(shown), 'or');
}

function joined(names: readonly string[], word: string): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} ${word} ${names.at(-1)}`;
}

/** `1 picture`, `4 pictures`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A length in the plan's unit, with as many digits as tell it from the one `beside` it. */
export function lengthText({ settings }: { settings: Settings }, length_m: number, beside?: number): string {
  return formatLength(length_m, settings.units, beside);
}

/** What an `accept` calls a link: its name, its ends, or the source or destination that is plugged in by it. */
export function linkSubject(link: Link): string {
  const { statement } = link;
  if (statement.fact.kind !== 'link') return statement.fact.name;
  if (link.named) return link.name;
  return `${link.from.text} ${link.bothWays ? '<->' : '->'} ${link.to.text}`;
}

/** A link inside a sentence: `trunk`, `the cable from scores to mixer.in1`. */
export function linkText(link: Link): string {
  return link.named ? shown(link.name) : `the cable from ${shown(link.from.text)} to ${shown(link.to.text)}`;
}

/** A link at the start of a sentence. */
export function linkStart(link: Link): string {
  return link.named ? shown(link.name) : capital(linkText(link));
}

/** The part of a link's statement that names its cable, if it does. */
export function cablePart({ statement }: Link): string | undefined {
  return statement.fact.cable === undefined ? undefined : 'cables/0';
}

/** The part that a link's length is told at: where it is stated, else its cable. */
export function lengthPart(link: Link): string | undefined {
  return link.statement.fact.length_m === undefined ? cablePart(link) : 'lengths/0';
}

/** The part of a link's statement that names one of its ends in a node. */
export function endPart({ statement }: Link, end: 'from' | 'to'): string | undefined {
  if (statement.fact.kind === 'link') return end;
  if (statement.fact.kind === 'source') return end === 'to' ? 'into/0' : undefined;
  return end === 'from' ? 'from/0' : undefined;
}

/** ` in segment finale`, ` in segments finale and interval`; nothing for what always holds. */
export function inSegments(segments: readonly (Segment | undefined)[]): string {
  const names = segments.flatMap((segment) => (segment ? [segment.name] : []));
  if (names.length === 0) return '';
  return ` in ${names.length === 1 ? 'segment' : 'segments'} ${listed(names)}`;
}

/** An interface as people say it: its label, `10GBASE-T`, else its name. */
export function interfaceText({ name, statement }: Interface): string {
  return shown(statement.label ?? name);
}

/** `a place`, `an interface`. */
export function withArticle(noun: string): string {
  return `${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun}`;
}

/** What kind of thing a statement declares: `a place`, `an interface`. */
export function kindText({ fact }: Statement): string {
  return withArticle(fact.kind);
}

/** Whether a statement belongs to the shipped library. */
export function isOfLibrary({ plan }: Pick<Analysis, 'plan'>, statement: Statement): boolean {
  return plan.libraryFiles.has(statement.source.file);
}

/** `Box D (box_d)` when it has a label, else its name. */
export function nodeText({ name, statement }: Node): string {
  return statement.label === undefined ? shown(name) : `${shown(statement.label)} (${shown(name)})`;
}
