import type { FileTree } from '../../language/incremental/file-tree.ts';
import { libraryTexts } from '../../language/library/texts.ts';
import type { Source, Statement, TextRange } from '../plan.ts';
import type { ReadFile } from '../read-file.ts';
import { readTree } from '../read-text.ts';
import { TextSource } from '../text-source.ts';
import { libraryFacts } from './facts.ts';

/** What was kept of a statement when the library was built in. Nothing is wrong with any of them. */
type LibraryStatement = Pick<Statement, 'fact' | 'label' | 'description'>;

/** By file, in the order of their texts. */
const facts = libraryFacts as readonly (readonly LibraryStatement[])[];

const libraries = new Map<string, readonly ReadFile[]>();

/**
 * The shipped library, whose facts are built in. Its text is parsed when somebody asks where something is written in it.
 *
 * @param folder URI of the folder in which its files lie for an editor to open.
 */
export function readLibrary(folder: string): readonly ReadFile[] {
  let files = libraries.get(folder);
  if (!files) {
    files = libraryTexts.map(([name, text]) => {
      let tree: FileTree | undefined;
      return readLibraryFile(`${folder}/${name}`, name, () => {
        tree ??= readTree(text);
        return tree;
      });
    });
    libraries.set(folder, files);
  }
  return files;
}

/**
 * One file of the shipped library.
 *
 * @param name What it is called in the library: `cables.feedplot`.
 * @param tree Its text as shipped, parsed.
 */
export function readLibraryFile(uri: string, name: string, tree: () => FileTree): ReadFile {
  const own = facts[libraryTexts.findIndex(([one]) => one === name)] ?? [];
  const statements = own.map(
    (read, index): Statement => ({ ...read, faults: [], source: new LibrarySource(uri, index, tree) }),
  );
  return {
    uri,
    statements,
    imports: [],
    hasPlan: false,
    unreadables: [],
    faulty: [],
    wording: 0,
    formerLabels: [],
    statementOf: (node) => statements[(tree().value.statements as readonly object[]).indexOf(node)],
  };
}

/** Where a statement of the library is written: every statement of its text has a fact, so both count alike. */
class LibrarySource implements Source {
  readonly file: string;
  readonly #index: number;
  readonly #tree: () => FileTree;

  constructor(file: string, index: number, tree: () => FileTree) {
    this.file = file;
    this.#index = index;
    this.#tree = tree;
  }

  range(part?: string): TextRange {
    return this.#inText().range(part);
  }

  whole(): TextRange {
    return this.#inText().whole();
  }

  #inText(): TextSource {
    return new TextSource(this.file, this.#tree().value.statements[this.#index]!);
  }
}
