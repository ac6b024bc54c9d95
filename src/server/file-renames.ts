import { GrammarUtils, type LangiumDocument, type LangiumDocuments } from 'langium';
import type { FileOperationHandler } from 'langium/lsp';
import {
  type FileOperationOptions,
  type RenameFilesParams,
  TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import type { PlanFile } from '../language/generated/ast.ts';
import { resolveImport } from '../language/imports.ts';
import { isLibrary } from '../language/visibility.ts';
import { relativePath } from './relative-path.ts';
import type { FeedplotSharedServices } from './services.ts';

/** Keeps imports right when a file or a folder gets another name: those that lead to it, and its own. */
export class ImportsFollowFiles implements FileOperationHandler {
  readonly fileOperationOptions: FileOperationOptions = {
    willRename: {
      filters: [
        { pattern: { glob: '**/*.feedplot', matches: 'file' } },
        { pattern: { glob: '**', matches: 'folder' } },
      ],
    },
  };
  readonly #documents: LangiumDocuments;

  constructor(shared: FeedplotSharedServices) {
    this.#documents = shared.workspace.LangiumDocuments;
  }

  willRenameFiles({ files }: RenameFilesParams): WorkspaceEdit {
    const moved = (uri: string) => {
      for (const { oldUri, newUri } of files) {
        if (uri === oldUri) return newUri;
        if (uri.startsWith(`${oldUri}/`)) return newUri + uri.slice(oldUri.length);
      }
      return uri;
    };
    const changes = new Map<string, TextEdit[]>();
    for (const document of this.#documents.all) {
      const uri = document.uri.toString();
      const edits = isLibrary(uri) ? [] : editsOf(document, uri, moved);
      if (edits.length > 0) changes.set(uri, edits);
    }
    return { changes: Object.fromEntries(changes) };
  }
}

function editsOf(document: LangiumDocument, uri: string, moved: (uri: string) => string): TextEdit[] {
  return (document.parseResult.value as PlanFile).statements.flatMap((statement) => {
    if (statement.$type !== 'Import') return [];
    const target = resolveImport(uri, statement.path ?? '');
    const written = GrammarUtils.findNodeForProperty(statement.$cstNode, 'path');
    if (!target || !written || (moved(target) === target && moved(uri) === uri)) return [];
    const path = relativePath(moved(uri), moved(target));
    return path === undefined || path === statement.path
      ? []
      : [TextEdit.replace(written.range, `"${path}"`)];
  });
}
