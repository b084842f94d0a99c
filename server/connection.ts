/** Which message goes where, and nothing else. */
import {
  type Connection,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  FileChangeType,
  type FileOperationRegistrationOptions,
  type InitializeParams,
  type InitializeResult,
  TextDocumentSyncKind,
  type WorkDoneProgressParams,
} from 'vscode-languageserver';
import { dayOf, SETTINGS_FILE } from '../orders';
import { version } from '../package.json';
import { type Abilities, abilitiesOf } from './abilities';
import { withClientFiles } from './client-files';
import { FEATURES, type Features } from './features';
import { ACTION_KINDS } from './features/code-actions';
import { resolveCompletion, TRIGGERS } from './features/completion';
import { JOB_SHEET } from './features/job-sheet';
import { FINISHES } from './features/on-type-formatting';
import type { Options } from './features/options';
import { ORDER_LIST, type OrderListParams } from './features/order-list';
import { ORDER_STATUS } from './features/order-status';
import { filesToRename } from './features/rename';
import { LEGEND } from './features/semantic-tokens';
import { guard, guardLong, guardWithout } from './guard';
import { EXTENSION, type Platform } from './platform';
import { Publisher } from './publisher';
import { Session } from './session';
import type { Snapshot } from './snapshot';
import { WorkspaceFiles } from './workspace-files';
import { WorkspaceOrders } from './workspace-orders';
import { REPORT, workspaceReport } from './workspace-report';

/** Changes of settings that come one after the other make the editor ask for its hints once, after this pause. */
const REFRESH_PAUSE = 100;

/**
 * Serves one editor over a connection that is not listening yet.
 * @param features stands in for the features in tests of what happens when one fails
 */
export function serve(connection: Connection, platform: Platform, features: Features = FEATURES): void {
  let abilities: Abilities = abilitiesOf({});
  let pushed: unknown;
  let refresh: ReturnType<typeof setTimeout> | undefined;
  const log = (message: string): void => connection.console.error(message);

  let offersFiles = false;
  let folders: readonly string[] = [];
  const files = withClientFiles(platform, connection, () => offersFiles);
  const configuration = async (folder: string | undefined): Promise<unknown> => {
    if (!abilities.configuration) return pushed;
    return connection.workspace.getConfiguration({ ...(folder ? { scopeUri: folder } : {}), section: 'lentil' });
  };
  const session = new Session({
    ...files,
    configuration,
    edited: (uri) => publisher.changed(uri),
    faults: (files) => publisher.faults(files),
    log,
    settled: (uri) => {
      publisher.changed(uri);
      if (!abilities.hintRefresh) return;
      clearTimeout(refresh);
      refresh = setTimeout(() => unlessGone(() => connection.languages.inlayHint.refresh()), REFRESH_PAUSE);
    },
  });
  const workspace = new WorkspaceFiles(session, files);
  const workspaceOrders = new WorkspaceOrders(session, workspace);
  const options = (uri: string): Options => ({
    abilities,
    settings: session.settings(uri),
    today: dayOf(new Date()),
    names: () => session.lookup(),
    isEveryFileRead: () => session.isEveryFileRead,
  });
  const publisher = new Publisher(session, {
    send: (params) => unlessGone(() => connection.sendDiagnostics(params)),
    diagnosticsOf: (snapshot) => features.diagnostics(snapshot, options(snapshot.uri)),
    log,
  });

  connection.onInitialize((params: InitializeParams): InitializeResult => {
    abilities = abilitiesOf(params.capabilities);
    pushed = params.initializationOptions?.lentil;
    offersFiles = params.initializationOptions?.files === true;
    folders = (params.workspaceFolders ?? []).map(({ uri }) => uri);
    return { serverInfo: { name: 'lentil', version }, capabilities: CAPABILITIES };
  });
  connection.onInitialized(() => {
    // Only now may the editor be asked for anything.
    session.setFolders(folders);
    if (abilities.workspaceFolders) {
      connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) =>
        session.addFolders(
          added.map(({ uri }) => uri),
          removed.map(({ uri }) => uri),
        ),
      );
    }
    if (abilities.configurationEvents)
      unlessGone(() => connection.client.register(DidChangeConfigurationNotification.type, { section: 'lentil' }));
    if (abilities.fileEvents)
      unlessGone(() => connection.client.register(DidChangeWatchedFilesNotification.type, WATCHED));
  });
  connection.onDidChangeConfiguration(({ settings }) => {
    pushed = settings?.lentil;
    session.settingsChanged();
  });
  connection.onDidChangeWatchedFiles(({ changes }) => {
    for (const { uri, type } of changes) session.fileChanged(uri, type);
  });
  connection.workspace.onDidDeleteFiles(({ files }) => {
    for (const { uri } of files) session.fileChanged(uri, FileChangeType.Deleted);
  });
  connection.workspace.onDidRenameFiles(({ files }) => {
    for (const { oldUri } of files) session.fileChanged(oldUri, FileChangeType.Deleted);
    for (const { newUri } of files) session.folderCame(newUri);
  });
  connection.onShutdown(() => {
    clearTimeout(refresh);
    publisher.stop();
    session.stop();
  });

  connection.onDidOpenTextDocument(({ textDocument: { uri, version, text } }) => session.open(uri, version, text));
  connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) =>
    session.change(uri, version, contentChanges),
  );
  connection.onDidCloseTextDocument(({ textDocument: { uri } }) => {
    session.close(uri);
    publisher.closed(uri);
  });

  type Request = { readonly textDocument: { readonly uri: string } };
  const guarded = <P extends Request, R>(
    name: string,
    feature: (snapshot: Snapshot, params: P, options: Options) => R | null,
    before?: (snapshot: Snapshot, params: P) => Promise<unknown>,
  ) => guard<P, R>(name, session, log, (snapshot, params) => feature(snapshot, params, options(snapshot.uri)), before);
  const namesRead = (): Promise<void> => session.namesRead();
  connection.onHover(guarded('hover', features.hover));
  connection.languages.inlayHint.on(guarded('inlay hints', features.inlayHints));
  connection.onCodeAction(guarded('code actions', features.codeActions));
  connection.onDocumentSymbol(guarded('document symbols', features.documentSymbols));
  connection.onFoldingRanges(guarded('folding', features.folding));
  connection.onDocumentFormatting(guarded('formatting', features.formatting));
  connection.onDefinition(guarded('definition', features.definition, namesRead));
  connection.onReferences(guarded('references', features.references, namesRead));
  connection.onDocumentHighlight(guarded('document highlights', features.documentHighlights));
  connection.onPrepareRename(guarded('prepare rename', features.prepareRename));
  connection.onRenameRequest(
    guarded('rename', features.rename, async (snapshot, params) => {
      await namesRead();
      await session.readAgain(filesToRename(snapshot, params, options(snapshot.uri)));
    }),
  );
  connection.onWorkspaceSymbol(
    guardWithout('workspace symbols', log, (params) => features.workspaceSymbols(session.lookup(), params), namesRead),
  );
  connection.onDocumentRangeFormatting(guarded('range formatting', features.rangeFormatting));
  connection.onDocumentOnTypeFormatting(guarded('formatting while typing', features.onTypeFormatting));
  connection.onCompletion(guarded('completion', features.completion));
  connection.onCompletionResolve((item) => resolveCompletion(item, abilities));
  connection.onCodeLens(guarded('code lenses', features.codeLens));
  connection.onDocumentLinks(guarded('document links', features.documentLinks));
  connection.onSelectionRanges(guarded('selection ranges', features.selectionRanges));
  connection.languages.semanticTokens.on(guarded('semantic tokens', features.semanticTokens));
  connection.languages.semanticTokens.onRange(guarded('tokens of a range', features.semanticTokensInRange));
  connection.onRequest(JOB_SHEET, guarded('job sheet', features.jobSheetAt));
  connection.onRequest(ORDER_STATUS, guarded('order status', features.orderStatus));
  const ordersJudged = (): Promise<void> => workspaceOrders.bringUpToDate();
  connection.onRequest(
    ORDER_LIST,
    guardWithout(
      'orders',
      log,
      (params: OrderListParams) => features.orderList(workspaceOrders.rows, params),
      ordersJudged,
    ),
  );
  connection.onRequest(
    REPORT,
    guardLong('report', log, async ({ workDoneToken }: WorkDoneProgressParams, token) => {
      const progress = connection.window.attachWorkDoneProgress(workDoneToken);
      progress.begin('Quality report', 0);
      try {
        return await workspaceReport(session, workspace, token, (done, path) => progress.report(done, path));
      } finally {
        progress.done();
      }
    }),
  );
}

/** Watching files tells nothing of what goes with the folder it lies in; an editor tells of what it did itself. */
const FOLDERS: FileOperationRegistrationOptions = { filters: [{ pattern: { glob: '**/*', matches: 'folder' } }] };

const CAPABILITIES: InitializeResult['capabilities'] = {
  positionEncoding: 'utf-16',
  textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
  hoverProvider: true,
  inlayHintProvider: true,
  codeActionProvider: { codeActionKinds: [...ACTION_KINDS] },
  documentSymbolProvider: { label: 'Lentil' },
  foldingRangeProvider: true,
  documentFormattingProvider: true,
  documentRangeFormattingProvider: true,
  documentOnTypeFormattingProvider: { firstTriggerCharacter: FINISHES },
  completionProvider: { triggerCharacters: [...TRIGGERS], resolveProvider: true },
  codeLensProvider: {},
  documentLinkProvider: {},
  selectionRangeProvider: true,
  semanticTokensProvider: { legend: LEGEND, full: true, range: true },
  definitionProvider: true,
  referencesProvider: true,
  documentHighlightProvider: true,
  renameProvider: { prepareProvider: true },
  workspaceSymbolProvider: true,
  workspace: {
    workspaceFolders: { supported: true, changeNotifications: true },
    fileOperations: { didDelete: FOLDERS, didRename: FOLDERS },
  },
};

const WATCHED = { watchers: [{ globPattern: `**/*${EXTENSION}` }, { globPattern: `**/${SETTINGS_FILE}` }] };

/** An editor may refuse what it is asked, or be gone by then; the server works without an answer. */
async function unlessGone(send: () => Promise<unknown>): Promise<void> {
  try {
    await send();
  } catch {
    // There is nobody to tell.
  }
}
