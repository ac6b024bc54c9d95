import { changedPieces } from '../language/incremental/changed-pieces.ts';
import type { FileTree } from '../language/incremental/file-tree.ts';
import type { Piece, PieceError } from '../language/incremental/piece.ts';
import { pieceOf } from '../language/incremental/tree.ts';
import { equalFacts } from './equal-facts.ts';
import type { Statement, StatementOf, TextRange, Unreadable } from './plan.ts';
import { statementIn, type TextStatement } from './text-statement.ts';

/** One file, read as far as it can be. */
export interface ReadFile {
  readonly uri: string;
  /** A new list whenever a fact in it is new, and the same one until then. */
  readonly statements: readonly Statement[];
  readonly imports: readonly StatementOf<'import'>[];
  readonly hasPlan: boolean;
  readonly unreadables: readonly Unreadable[];
  /** The statements in which something is written wrongly, in no order. */
  readonly faulty: readonly Statement[];
  /** Counts the changes of faults and unreadable places, which are found beside what is worked out from facts. */
  readonly wording: number;
  /** Every label that another has taken the place of, in the order in which it happened. */
  readonly formerLabels: readonly (string | undefined)[];
  /** The statement that was read from a node of the syntax tree. */
  statementOf(node: object): Statement | undefined;
}

/** What the statements of a syntax tree say. It follows the tree through its edits and reads anew only what they touch. */
export function readFile(uri: string, tree: FileTree): ReadFile {
  return new FileReading(uri, tree);
}

/** After so many the words count as new, so that somebody who types all day does not fill the memory. */
const MOST_FORMER_LABELS = 1000;

class FileReading implements ReadFile {
  readonly uri: string;
  readonly #tree: FileTree;
  #pieces: readonly Piece[] = [];
  #statements: readonly Statement[] = [];
  readonly #ofPiece = new WeakMap<Piece, TextStatement>();
  readonly #unreadables = new WeakMap<Piece, readonly Unreadable[]>();
  readonly #faulty = new Set<TextStatement>();
  #wording = 0;
  #formerLabels: (string | undefined)[] = [];
  #imports: readonly StatementOf<'import'>[] | undefined;
  #hasPlan: boolean | undefined;
  #refusal: FileTree['refusal'];

  constructor(uri: string, tree: FileTree) {
    this.uri = uri;
    this.#tree = tree;
  }

  get statements(): readonly Statement[] {
    this.#follow();
    return this.#statements;
  }

  get imports(): readonly StatementOf<'import'>[] {
    this.#follow();
    this.#imports ??= this.#statements.filter((s): s is StatementOf<'import'> => s.fact.kind === 'import');
    return this.#imports;
  }

  get hasPlan(): boolean {
    this.#follow();
    this.#hasPlan ??= this.#statements.some((s) => s.fact.kind === 'plan');
    return this.#hasPlan;
  }

  get faulty(): readonly Statement[] {
    this.#follow();
    return [...this.#faulty];
  }

  get wording(): number {
    this.#follow();
    return this.#wording;
  }

  get formerLabels(): readonly (string | undefined)[] {
    this.#follow();
    return this.#formerLabels;
  }

  get unreadables(): readonly Unreadable[] {
    const { refusal } = this.#tree;
    if (refusal) {
      const { message, line, column } = refusal;
      return [{ file: this.uri, message, range: { line, column, endLine: line, endColumn: column + 1 } }];
    }
    return this.#tree.brokenPieces().flatMap((piece) => this.#unreadablesOf(piece));
  }

  statementOf(node: object): Statement | undefined {
    this.#follow();
    const cst = (node as { $cstNode?: Parameters<typeof pieceOf>[0] }).$cstNode;
    const piece = cst && pieceOf(cst);
    return piece && this.#ofPiece.get(piece);
  }

  #follow(): void {
    if (this.#pieces === this.#tree.pieces) return;
    const { first, removed, added } = changedPieces(this.#pieces, this.#tree.pieces);
    const before = removed.flatMap((piece) => this.#ofPiece.get(piece) ?? []);
    const read = added.map((piece) => statementIn(piece, this.uri));
    const now = this.#keepWhatMeansTheSame(
      before,
      read.flatMap((statement) => statement ?? []),
    );
    for (const statement of before) this.#faulty.delete(statement);
    for (const statement of now) if (statement.faults.length > 0) this.#faulty.add(statement);
    let next = 0;
    read.forEach((statement, i) => {
      if (statement) this.#ofPiece.set(added[i]!, now[next++]!);
    });
    const { refusal } = this.#tree;
    if (refusal !== this.#refusal || removed.some(isBroken) || added.some(isBroken)) this.#wording++;
    this.#refusal = refusal;
    if (before.length !== now.length || before.some((statement, i) => statement !== now[i])) {
      const at = this.#placeBehind(first);
      this.#statements = [
        ...this.#statements.slice(0, at),
        ...now,
        ...this.#statements.slice(at + before.length),
      ];
      if ([...before, ...now].some(isHead)) {
        this.#imports = undefined;
        this.#hasPlan = undefined;
      }
    }
    this.#pieces = this.#tree.pieces;
  }

  /** Statements that mean what those before them meant go on as the same objects, counted from both ends. */
  #keepWhatMeansTheSame(before: readonly TextStatement[], read: readonly TextStatement[]): TextStatement[] {
    const now = [...read];
    const most = Math.min(before.length, read.length);
    let ahead = 0;
    for (; ahead < most && this.#goesOn(before[ahead]!, read[ahead]!); ahead++) now[ahead] = before[ahead]!;
    for (let i = 1; i <= most - ahead && this.#goesOn(before.at(-i)!, read.at(-i)!); i++)
      now[now.length - i] = before.at(-i)!;
    return now;
  }

  #goesOn(before: TextStatement, read: TextStatement): boolean {
    if (!equalFacts(before.fact, read.fact)) return false;
    const { label } = before;
    if (before.becomes(read)) this.#wording++;
    if (label !== before.label) this.#keepFormerLabel(label);
    return true;
  }

  #keepFormerLabel(label: string | undefined): void {
    if (this.#formerLabels.length >= MOST_FORMER_LABELS) {
      this.#formerLabels = [];
      this.#wording++;
    }
    this.#formerLabels.push(label);
  }

  /** Where in the list of statements those belong that stand in the pieces from this one on. */
  #placeBehind(piece: number): number {
    for (let i = piece - 1; i >= 0; i--) {
      const statement = this.#ofPiece.get(this.#tree.pieces[i]!);
      if (statement) return this.#statements.lastIndexOf(statement) + 1;
    }
    return 0;
  }

  #unreadablesOf(piece: Piece): readonly Unreadable[] {
    let unreadables = this.#unreadables.get(piece);
    if (!unreadables) {
      unreadables = piece.errors.map((error) => new TextUnreadable(this.uri, piece, error));
      this.#unreadables.set(piece, unreadables);
    }
    return unreadables;
  }
}

/** A place that could not be read; it moves with its piece. */
class TextUnreadable implements Unreadable {
  readonly file: string;
  readonly message: string;
  readonly #piece: Piece;
  readonly #error: PieceError;

  constructor(file: string, piece: Piece, error: PieceError) {
    this.file = file;
    this.message = error.message;
    this.#piece = piece;
    this.#error = error;
  }

  get range(): TextRange {
    const { line, column, length } = this.#error;
    const { line: at, character } = this.#piece.position(line, column);
    return { line: at, column: character, endLine: at, endColumn: character + shownLength(length) };
  }
}

/** As much of an unreadable stretch as an editor need underline. */
function shownLength(length: number): number {
  return Math.min(Math.max(1, length), 80);
}

function isBroken(piece: Piece): boolean {
  return piece.errors.length > 0;
}

function isHead({ fact }: Statement): boolean {
  return fact.kind === 'plan' || fact.kind === 'import';
}
