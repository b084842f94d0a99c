/** What the editor at the other end can do, in one flat list, read once from its first message. */
import type { ClientCapabilities } from 'vscode-languageserver';

export interface Abilities {
  readonly configuration: boolean;
  readonly configurationEvents: boolean;
  readonly workspaceFolders: boolean;
  readonly fileEvents: boolean;
  readonly hintRefresh: boolean;
  readonly markdownHover: boolean;
  readonly relatedInformation: boolean;
  /** Edits may carry the version of the document they are meant for. */
  readonly versionedEdits: boolean;
  readonly literalActions: boolean;
  readonly preferredActions: boolean;
  readonly nestedSymbols: boolean;
  readonly mostFolds: number;
}

export function abilitiesOf({ textDocument, workspace }: ClientCapabilities): Abilities {
  const formats = textDocument?.hover?.contentFormat;
  return {
    configuration: workspace?.configuration ?? false,
    configurationEvents: workspace?.didChangeConfiguration?.dynamicRegistration ?? false,
    workspaceFolders: workspace?.workspaceFolders ?? false,
    fileEvents: workspace?.didChangeWatchedFiles?.dynamicRegistration ?? false,
    hintRefresh: workspace?.inlayHint?.refreshSupport ?? false,
    markdownHover: formats === undefined || formats.includes('markdown'),
    relatedInformation: textDocument?.publishDiagnostics?.relatedInformation ?? false,
    versionedEdits: workspace?.workspaceEdit?.documentChanges ?? false,
    literalActions: textDocument?.codeAction?.codeActionLiteralSupport !== undefined,
    preferredActions: textDocument?.codeAction?.isPreferredSupport ?? false,
    nestedSymbols: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport ?? false,
    mostFolds: textDocument?.foldingRange?.rangeLimit ?? Number.POSITIVE_INFINITY,
  };
}
