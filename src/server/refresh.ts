import { DocumentState } from 'langium';
import type { ClientCapabilities, Connection } from 'vscode-languageserver';
import type { FeedplotSharedServices } from './services.ts';

/** An editor asks again for the file that is typed in by itself; the others can wait until the typing pauses. */
const PAUSE_MS = 400;

/** Tells the editor to ask again for hints and lenses when they may have changed in a file that was not touched. */
export function addRefresh(connection: Connection, services: FeedplotSharedServices): void {
  let able: ClientCapabilities['workspace'] = {};
  let timer: ReturnType<typeof setTimeout> | undefined;
  const refresh = () => {
    if (able?.inlayHint?.refreshSupport) void connection.languages.inlayHint.refresh().catch(ignore);
    if (able?.codeLens?.refreshSupport)
      void connection.sendRequest('workspace/codeLens/refresh').catch(ignore);
  };
  services.lsp.LanguageServer.onInitialize(({ capabilities }) => {
    able = capabilities.workspace;
  });
  services.workspace.DocumentBuilder.onBuildPhase(DocumentState.Validated, () => {
    if (services.workspace.TextDocuments.all().length < 2) return;
    clearTimeout(timer);
    timer = setTimeout(refresh, PAUSE_MS);
  });
  services.workspace.ConfigurationProvider.onConfigurationSectionUpdate(refresh);
  connection.onShutdown(() => clearTimeout(timer));
}

/** An editor that cannot be asked now asks by itself later. */
function ignore(): void {}
