/** The extension in a browser: the server is a worker beside the editor. */
import { type ExtensionContext, Uri } from 'vscode';
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type MessageTransports,
} from 'vscode-languageclient/browser';
import { clientOptions, ID, NAME, outputChannel } from './language-client';
import { run } from './run';

let client: LanguageClient | undefined;
let worker: Worker | undefined;

export function activate(context: ExtensionContext): void {
  const output = outputChannel();
  const program = Uri.joinPath(context.extensionUri, 'dist', 'server-web.js').toString(true);
  // The editor's own Worker makes objects that the language client does not take for workers, so it is given both ends.
  const start = async (): Promise<MessageTransports> => {
    worker?.terminate();
    worker = new Worker(program);
    return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
  };
  client = new LanguageClient(ID, NAME, start, clientOptions(output));
  run(context, client, output);
}

export async function deactivate(): Promise<void> {
  await client?.dispose();
  worker?.terminate();
}
