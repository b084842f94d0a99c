/** An editor of a few lines, connected to the server by a pair of streams in memory. */
import { PassThrough } from 'node:stream';
import { onTestFinished } from 'vitest';
import {
  type ClientCapabilities,
  ConfigurationRequest,
  createConnection,
  createProtocolConnection,
  DidChangeTextDocumentNotification,
  DidCloseTextDocumentNotification,
  DidOpenTextDocumentNotification,
  InitializedNotification,
  InitializeRequest,
  type InitializeResult,
  InlayHintRefreshRequest,
  LogMessageNotification,
  type ProtocolConnection,
  PublishDiagnosticsNotification,
  type PublishDiagnosticsParams,
  type RegistrationParams,
  RegistrationRequest,
  ShutdownRequest,
  StreamMessageReader,
  StreamMessageWriter,
  type TextDocumentContentChangeEvent,
} from 'vscode-languageserver/node';
import { serve } from '../../server/connection';
import type { Features } from '../../server/features';
import type { Platform } from '../../server/platform';

export interface WireOptions {
  readonly capabilities?: ClientCapabilities;
  readonly folders?: readonly string[];
  /** What the editor answers when asked for settings. */
  readonly configuration?: (scope: string | undefined) => unknown;
  /** Files on disk, by address. */
  readonly files?: Map<string, string>;
  /** Reads them instead, for a disk that is slow. */
  readonly read?: Platform['read'];
  readonly features?: Features;
  readonly initializationOptions?: unknown;
  /** What the editor answers besides, set up before the server speaks. */
  readonly prepare?: (wire: Wire) => void;
}

/** What most editors can do. */
export const USUAL: ClientCapabilities = {
  workspace: {
    configuration: true,
    workspaceFolders: true,
    didChangeConfiguration: { dynamicRegistration: true },
    didChangeWatchedFiles: { dynamicRegistration: true },
    inlayHint: { refreshSupport: true },
    workspaceEdit: { documentChanges: true },
  },
  textDocument: {
    publishDiagnostics: { relatedInformation: true, versionSupport: true },
    hover: { contentFormat: ['markdown', 'plaintext'] },
    codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } }, isPreferredSupport: true },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
  },
};

export class Wire {
  readonly client: ProtocolConnection;
  /** Everything the server has sent without being asked, in its order. */
  readonly published: PublishDiagnosticsParams[] = [];
  readonly logged: string[] = [];
  readonly registered: RegistrationParams['registrations'] = [];
  refreshes = 0;
  /** What the server said of itself. */
  server: InitializeResult = { capabilities: {} };
  #waiting: (() => void)[] = [];
  #version = new Map<string, number>();

  constructor(client: ProtocolConnection, configuration: (scope: string | undefined) => unknown) {
    this.client = client;
    client.onNotification(PublishDiagnosticsNotification.type, (params) => {
      this.published.push(params);
      for (const wake of this.#waiting.splice(0)) wake();
    });
    client.onNotification(LogMessageNotification.type, ({ message }) => {
      this.logged.push(message);
    });
    client.onRequest(RegistrationRequest.type, ({ registrations }) => {
      this.registered.push(...registrations);
    });
    client.onRequest(ConfigurationRequest.type, ({ items }) =>
      Promise.all(items.map(({ scopeUri }) => configuration(scopeUri))),
    );
    client.onRequest(InlayHintRefreshRequest.type, () => {
      this.refreshes++;
    });
    client.listen();
  }

  open(uri: string, text: string, version = 1): Promise<void> {
    this.#version.set(uri, version);
    return this.client.sendNotification(DidOpenTextDocumentNotification.type, {
      textDocument: { uri, languageId: 'lentil', version, text },
    });
  }

  change(uri: string, ...contentChanges: TextDocumentContentChangeEvent[]): Promise<void> {
    const version = (this.#version.get(uri) ?? 0) + 1;
    this.#version.set(uri, version);
    return this.client.sendNotification(DidChangeTextDocumentNotification.type, {
      textDocument: { uri, version },
      contentChanges,
    });
  }

  close(uri: string): Promise<void> {
    return this.client.sendNotification(DidCloseTextDocumentNotification.type, { textDocument: { uri } });
  }

  /** The first list of a document at or after a version. */
  async findings(uri: string, version = this.#version.get(uri) ?? 1): Promise<PublishDiagnosticsParams> {
    for (;;) {
      const found = this.published.findLast((one) => one.uri === uri && (one.version ?? 0) >= version);
      if (found) return found;
      await this.nextPublication();
    }
  }

  async codes(uri: string): Promise<unknown[]> {
    return (await this.findings(uri)).diagnostics.map(({ code }) => code);
  }

  nextPublication(): Promise<void> {
    return new Promise((resolve) => this.#waiting.push(resolve));
  }
}

const diskOf = (files: Map<string, string>, read: Platform['read']): Platform => ({
  reads: (uri) => !uri.startsWith('editor:'),
  read,
  list: async function* (folder) {
    for (const uri of files.keys?.() ?? []) if (uri.startsWith(`${folder}/`)) yield uri;
  },
});

/** Starts a server with an editor at its other end; both end with the test. */
export async function connect({
  capabilities = USUAL,
  folders = [],
  configuration = () => null,
  files = new Map(),
  read = async (uri) => files.get(uri) ?? null,
  features,
  initializationOptions,
  prepare,
}: WireOptions = {}): Promise<Wire> {
  const [up, down] = [new PassThrough(), new PassThrough()];
  // With its own streams a connection would end the process when they close.
  const connection = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
  serve(connection, diskOf(files, read), features);
  connection.listen();
  const client = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  const wire = new Wire(client, configuration);
  prepare?.(wire);
  onTestFinished(async () => {
    await client.sendRequest(ShutdownRequest.type);
    client.dispose();
    connection.dispose();
  });
  wire.server = await client.sendRequest(InitializeRequest.type, {
    processId: null,
    rootUri: null,
    capabilities,
    initializationOptions,
    workspaceFolders: folders.map((uri) => ({ uri, name: uri.split('/').at(-1) ?? '' })),
  });
  await client.sendNotification(InitializedNotification.type, {});
  return wire;
}
