import {
  type AstNode,
  AstUtils,
  type CstNode,
  type LangiumDocument,
  type ReferenceDescription,
} from 'langium';
import type { RenameProvider } from 'langium/lsp';
import {
  ErrorCodes,
  type Range,
  type RenameParams,
  ResponseError,
  type TextDocumentPositionParams,
  TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import type { Kit, Port } from '../language/generated/ast.ts';
import { portNames, portsOf } from '../language/ports.ts';
import { isLibrary } from '../language/visibility.ts';
import { isReserved } from '../language/words.ts';
import { namesakeOf, spokenOfAlone } from './namesakes.ts';
import { leafAt } from './positions.ts';
import { planReferences } from './references.ts';
import type { FeedplotLspServices } from './services.ts';

/**
 * Renames what is declared, and ports with their row: `in3` of `in[1..4]` becomes `camera3` when all four become
 * `camera`. A name that cannot stand, or that something else has, is refused: a plan never means something else
 * after a renaming.
 */
export class PlanRename implements RenameProvider {
  readonly #services: FeedplotLspServices;

  constructor(services: FeedplotLspServices) {
    this.#services = services;
  }

  prepareRename(document: LangiumDocument, params: TextDocumentPositionParams): Range | undefined {
    const leaf = leafAt(document, params.position);
    if (!leaf || !this.#target(leaf)) return undefined;
    return leaf.range;
  }

  rename(document: LangiumDocument, params: RenameParams): WorkspaceEdit | undefined {
    const leaf = leafAt(document, params.position);
    const target = leaf && this.#target(leaf);
    if (!target) return undefined;
    const stem = this.#newStem(leaf, target, params.newName.trim());
    const old = (target as { name?: string }).name ?? '';
    if (stem === old) return { changes: {} };
    const uses = planReferences(this.#services)
      .findReferences(target, { includeDeclaration: true })
      .toArray();
    this.#refuseCollision(target, stem, uses);
    return { changes: editsOf(uses, old, stem, this.#services) };
  }

  #target(leaf: CstNode): AstNode | undefined {
    const [target] = planReferences(this.#services).findDeclarations(leaf);
    if (!target || (target as { name?: string }).name === undefined) return undefined;
    if (isLibrary(AstUtils.getDocument(target).uri.toString()))
      refuse(`\`${leaf.text}\` belongs to the shipped library and keeps its name.`);
    return target;
  }

  /** The new name, or for one of a row of ports what the names of the row begin with. */
  #newStem(leaf: CstNode, target: AstNode, newName: string): string {
    const number = target.$type === 'Port' ? leaf.text.slice((target as Port).name.length) : '';
    if (number !== '' && !(newName.endsWith(number) && newName.length > number.length)) {
      const { name, low, high } = target as Port;
      refuse(
        `\`${leaf.text}\` is one of the row \`${name}[${low}..${high}]\`, which is renamed as a whole: ` +
          `the new name must end in ${number}, such as \`${withoutNumber(newName)}${number}\`.`,
      );
    }
    const stem = number === '' ? newName : newName.slice(0, -number.length);
    this.#refuseBadName(number === '' ? stem : newName, newName);
    if (target.$type === 'Port' && (target as Port).low !== undefined && /\d$/.test(stem))
      refuse(
        `What the names of a row begin with cannot end in a digit: \`${stem}\` and 1 would read \`${stem}1\`.`,
      );
    return stem;
  }

  #refuseBadName(name: string, typed: string): void {
    if (isReserved(name)) refuse(`\`${name}\` is a word of the language and cannot name anything.`);
    const { tokens, errors } = this.#services.parser.Lexer.tokenize(name);
    const [token] = tokens;
    const isName =
      token?.tokenType.name === 'ID' || token?.tokenType.CATEGORIES?.some((c) => c.name === 'NAME');
    if (errors.length > 0 || tokens.length !== 1 || !isName || token?.image !== name)
      refuse(
        `\`${typed}\` is no name: a name begins with a letter and has letters, digits, \`_\` and inner hyphens.`,
      );
  }

  #refuseCollision(target: AstNode, stem: string, uses: readonly ReferenceDescription[]): void {
    if (target.$type === 'Port') {
      refusePortCollision(target as Port, stem);
      return;
    }
    const { Visibility } = this.#services.references;
    const documents = new Set(
      this.#services.shared.workspace.LangiumDocuments.all
        .filter((d) => Visibility.of(d).some((seen) => seen === AstUtils.getDocument(target)))
        .flatMap((d) => [...Visibility.of(d)]),
    );
    const anySpace = spokenOfAlone(stem, target, uses, documents);
    const other = namesakeOf(stem, target, documents, anySpace);
    if (other) refuse(`There is already ${other}. Choose another name.`);
  }
}

function refusePortCollision(port: Port, stem: string): void {
  const kit = AstUtils.getContainerOfType(port, (node): node is Kit => node.$type === 'Kit');
  if (!kit) return;
  const taken = new Set(
    portsOf(kit)
      .filter((other) => other !== port)
      .flatMap(portNames),
  );
  const clash = portNames({ ...port, name: stem }).find((name) => taken.has(name));
  if (clash) refuse(`\`${kit.name}\` already has a port \`${clash}\`. Choose another name.`);
}

function editsOf(
  uses: readonly ReferenceDescription[],
  old: string,
  stem: string,
  services: FeedplotLspServices,
): Record<string, TextEdit[]> {
  const edits = new Map<string, TextEdit[]>();
  for (const { sourceUri, segment } of uses) {
    const uri = sourceUri.toString();
    const document = services.shared.workspace.LangiumDocuments.getDocument(sourceUri);
    const written = document?.textDocument.getText(segment.range) ?? old;
    const list = edits.get(uri) ?? [];
    list.push(TextEdit.replace(segment.range, stem + written.slice(old.length)));
    edits.set(uri, list);
  }
  return Object.fromEntries(edits);
}

function withoutNumber(name: string): string {
  return name.replace(/\d+$/, '') || 'port';
}

function refuse(message: string): never {
  throw new ResponseError(ErrorCodes.InvalidParams, message);
}
