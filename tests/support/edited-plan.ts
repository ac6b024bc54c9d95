/** A plan that is edited as an editor edits it: what an edit leaves alone stays the same statement. */
import { applyEdit } from '../../src/language/incremental/edit.ts';
import type { FileTree } from '../../src/language/incremental/file-tree.ts';
import type { FeedplotParser } from '../../src/language/incremental/parser.ts';
import { Text } from '../../src/language/incremental/text.ts';
import { createFeedplotServices } from '../../src/language/services.ts';
import { type AssembledPlan, assemblePlan } from '../../src/plan/assemble.ts';
import { readLibrary } from '../../src/plan/library/read.ts';
import { type ReadFile, readFile } from '../../src/plan/read-file.ts';

const { parser } = createFeedplotServices().Feedplot;
const uri = 'file:///show/show.feedplot';
const library = readLibrary('file:///library');

export class EditedPlan {
  readonly #tree: FileTree;
  readonly #file: ReadFile;
  #assembled: AssembledPlan | undefined;

  constructor(text: string) {
    this.#tree = (parser.LangiumParser as FeedplotParser).readFile(Text.of(text));
    this.#file = readFile(uri, this.#tree);
  }

  get text(): string {
    return this.#tree.text.toString();
  }

  /** As it now is; the same plan again where no fact is another. */
  get assembled(): AssembledPlan {
    const file = (wanted: string) => (wanted === uri ? this.#file : 'not found');
    this.#assembled = assemblePlan(uri, { file, library }, this.#assembled)!;
    return this.#assembled;
  }

  /** Replaces [start, end). */
  edit(start: number, end: number, text: string): void {
    const before = this.#tree.text;
    const edit = { start, end, before, text: before.replace(start, end, text) };
    applyEdit(this.#tree, edit, parser.LangiumParser as FeedplotParser, parser.Lexer);
  }
}
