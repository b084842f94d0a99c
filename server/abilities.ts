/** What the editor at the other end can do, in one flat list, read once from its first message. */
import { type ClientCapabilities, InsertTextMode } from 'vscode-languageserver';

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
  /** Completions may hold places to fill in. */
  readonly snippets: boolean;
  /** Inserted lines can be left as they are, without the editor indenting them anew. */
  readonly linesAsTheyAre: boolean;
  /** The words about a completion may come when it is looked at. */
  readonly lateDocumentation: boolean;
  readonly markdownCompletion: boolean;
  /** Edits of an action may hold places to fill in. */
  readonly snippetEdits: boolean;
  readonly mostFolds: number;
}

export function abilitiesOf({ textDocument, workspace }: ClientCapabilities): Abilities {
  const formats = textDocument?.hover?.contentFormat;
  const item = textDocument?.completion?.completionItem;
  const edit = workspace?.workspaceEdit;
  return {
    configuration: workspace?.configuration ?? false,
    configurationEvents: workspace?.didChangeConfiguration?.dynamicRegistration ?? false,
    workspaceFolders: workspace?.workspaceFolders ?? false,
    fileEvents: workspace?.didChangeWatchedFiles?.dynamicRegistration ?? false,
    hintRefresh: workspace?.inlayHint?.refreshSupport ?? false,
    markdownHover: formats === undefined || formats.includes('markdown'),
    relatedInformation: textDocument?.publishDiagnostics?.relatedInformation ?? false,
    versionedEdits: edit?.documentChanges ?? false,
    literalActions: textDocument?.codeAction?.codeActionLiteralSupport !== undefined,
    preferredActions: textDocument?.codeAction?.isPreferredSupport ?? false,
    nestedSymbols: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport ?? false,
    snippets: item?.snippetSupport ?? false,
    linesAsTheyAre: item?.insertTextModeSupport?.valueSet.includes(InsertTextMode.asIs) ?? false,
    lateDocumentation: item?.resolveSupport?.properties.includes('documentation') ?? false,
    markdownCompletion: item?.documentationFormat?.includes('markdown') ?? false,
    snippetEdits: (edit?.documentChanges && edit.snippetEditSupport) ?? false,
    mostFolds: textDocument?.foldingRange?.rangeLimit ?? Number.POSITIVE_INFINITY,
  };
}
