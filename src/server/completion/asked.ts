import { type CompletionItem, CompletionItemKind, InsertTextFormat } from 'vscode-languageserver';
import type { Analysis } from '../../analysis/model.ts';
import type { Statement } from '../../plan/plan.ts';
import type { CurrentPlan } from '../plans.ts';
import type { FeedplotSharedServices } from '../services.ts';
import type { Where } from './where.ts';

/** Everything that a list of completions is made from. */
export interface Asked {
  readonly where: Where;
  readonly shared: FeedplotSharedServices;
  /** Undefined for a file that no plan imports. */
  readonly plan: CurrentPlan | undefined;
  readonly analysis: Analysis | undefined;
  /** Statements whose names can be used here. */
  readonly visible: readonly Statement[];
  /** The statement that is being written, as far as it could be read. */
  readonly statement: Statement | undefined;
  readonly snippets: boolean;
}

/** What a completion says and does; groups stand in order, and within a group as they are listed. */
export interface Offer {
  readonly label: string;
  readonly kind: CompletionItemKind;
  /** Beside the label: what tells it from the others. */
  readonly detail?: string | undefined;
  /** Markdown, shown when it is looked at. */
  readonly documentation?: string | undefined;
  /** What is written, when that is not the label. */
  readonly text?: string;
  /** A pattern with parts in `<>` that are to be replaced. */
  readonly pattern?: string;
  readonly group?: number;
  /** A sign that accepts it and is written behind it. */
  readonly commit?: string;
  /** What its documentation is made of when it is looked at. */
  readonly named?: NamedThing;
}

/** A declaration, to be found again when its documentation is asked for. */
export interface NamedThing {
  readonly uri: string;
  readonly kind: string;
  readonly name: string;
}

export function itemOf({ where, snippets }: Asked, offer: Offer, index: number): CompletionItem {
  const { label, kind, detail, documentation, text = label, pattern, group = 5, commit, named } = offer;
  const asSnippet = pattern !== undefined && snippets;
  const newText = asSnippet ? snippetOf(pattern) : text;
  return {
    label,
    kind,
    ...(detail ? { labelDetails: { description: detail }, detail } : {}),
    ...(documentation ? { documentation: { kind: 'markdown', value: documentation } } : {}),
    ...(commit ? { commitCharacters: [commit] } : {}),
    ...(named ? { data: named } : {}),
    ...(asSnippet ? { insertTextFormat: InsertTextFormat.Snippet } : {}),
    filterText: label,
    sortText: `${group}${String(index).padStart(5, '0')}`,
    textEdit: { range: where.range, newText },
  };
}

/** `place <name>` as the protocol writes it; the same words get the same number, so that they are typed once. */
function snippetOf(pattern: string): string {
  const numbers = new Map<string, number>();
  return pattern.replace(/[$\\]|<([^<>\n-][^<>\n]*)?>/g, (whole, part: string | undefined) => {
    if (whole === '<>') return '$0';
    if (part === undefined) return `\\${whole}`;
    const number = numbers.get(part) ?? numbers.size + 1;
    numbers.set(part, number);
    return `\${${number}:${part}}`;
  });
}

/** The text of the last word before the cursor that is one of these. */
export function lastOf({ where }: Asked, words: readonly string[]): string | undefined {
  return where.before.findLast(({ image }) => words.includes(image))?.image;
}

export { CompletionItemKind };
