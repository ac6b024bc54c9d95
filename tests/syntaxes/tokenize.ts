/**
 * A small reader of TextMate grammars, enough for ours: `match`, `begin`/`end`, `captures`, `include` of the
 * repository. Editors use an engine of their own with Oniguruma's expressions; ours keep to what both understand.
 */

interface Rule {
  readonly name?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly captures?: Captures;
  readonly beginCaptures?: Captures;
  readonly endCaptures?: Captures;
  readonly patterns?: readonly Rule[];
  readonly include?: string;
}

type Captures = Record<string, { readonly name: string }>;

export interface Grammar extends Rule {
  readonly scopeName: string;
  readonly patterns: readonly Rule[];
  readonly repository: Record<string, Rule>;
}

/** A piece of a line and its innermost scope; text without a scope of its own has that of its block. */
export interface Piece {
  readonly text: string;
  readonly scope: string;
}

interface Open {
  readonly rule: Rule;
  readonly end: RegExp;
}

/** Reads a text line by line. */
export function tokenize(grammar: Grammar, text: string): Piece[][] {
  const stack: Open[] = [];
  return text.split('\n').map((line) => readLine(grammar, stack, line));
}

function readLine(grammar: Grammar, stack: Open[], line: string): Piece[] {
  const pieces: Piece[] = [];
  const push = (end: number, from: number, scope: string) => {
    if (end > from) pieces.push({ text: line.slice(from, end), scope });
  };
  let at = 0;
  for (;;) {
    const open = stack.at(-1);
    const outer = open?.rule.name ?? '';
    const rules = rulesOf(grammar, open ? (open.rule.patterns ?? []) : grammar.patterns);
    const found = first(rules, line, at);
    const end = open && exec(open.end, line, at);
    if (open && end && (!found || end.index <= found.match.index)) {
      push(end.index, at, outer);
      pushCaptures(line, end, open.rule.endCaptures, outer, pieces);
      stack.pop();
      at = end.index + end[0].length;
      continue;
    }
    if (!found) {
      push(line.length, at, outer);
      return pieces;
    }
    const { rule, match } = found;
    push(match.index, at, outer);
    pushCaptures(line, match, rule.captures ?? rule.beginCaptures, rule.name ?? outer, pieces);
    if (rule.begin !== undefined) stack.push({ rule, end: new RegExp(rule.end!, 'dug') });
    at = match.index + match[0].length;
    if (match[0].length === 0) throw new Error(`A rule matches nothing: ${rule.match ?? rule.begin}`);
  }
}

/** Rules with what they include put in their place, in order. */
function rulesOf(grammar: Grammar, rules: readonly Rule[]): Rule[] {
  return rules.flatMap((rule) => {
    if (rule.include) {
      const included = grammar.repository[rule.include.slice(1)];
      if (!included) throw new Error(`The grammar has no ${rule.include}.`);
      return rulesOf(
        grammar,
        included.match === undefined && included.begin === undefined ? (included.patterns ?? []) : [included],
      );
    }
    return [rule];
  });
}

/** The rule that matches first; of several at one place the first one listed. */
function first(
  rules: readonly Rule[],
  line: string,
  at: number,
): { rule: Rule; match: RegExpExecArray } | undefined {
  let best: { rule: Rule; match: RegExpExecArray } | undefined;
  for (const rule of rules) {
    const match = exec(new RegExp(rule.match ?? rule.begin!, 'dug'), line, at);
    if (match && (!best || match.index < best.match.index)) best = { rule, match };
  }
  return best;
}

function exec(expression: RegExp, line: string, at: number): RegExpExecArray | null {
  expression.lastIndex = at;
  return expression.exec(line);
}

function pushCaptures(
  line: string,
  match: RegExpExecArray,
  captures: Captures | undefined,
  scope: string,
  pieces: Piece[],
): void {
  const end = match.index + match[0].length;
  let at = match.index;
  for (const [i, range] of (match.indices ?? []).entries()) {
    const name = captures?.[i]?.name;
    if (!name || !range || range[0] < at) continue;
    if (range[0] > at) pieces.push({ text: line.slice(at, range[0]), scope });
    pieces.push({ text: line.slice(...range), scope: name });
    at = range[1];
  }
  if (end > at) pieces.push({ text: line.slice(at, end), scope });
}
