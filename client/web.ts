/** The extension in a browser: the server is a worker beside the editor. */
import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { clientOptions, ID, NAME, outputChannel, restartCommand } from './language-client';

let client: LanguageClient | undefined;
let worker: Worker | undefined;

export async function activate(context: ExtensionContext): Promise<void> {
  const output = outputChannel();
  const program = Uri.joinPath(context.extensionUri, 'dist', 'server-web.js').toString(true);
  const start = async (): Promise<Worker> => {
    worker?.terminate();
    worker = new Worker(program);
    return worker;
  };
  client = new LanguageClient(ID, NAME, start, clientOptions(output));
  context.subscriptions.push(output, restartCommand(client));
  await client.start();
}

export async function deactivate(): Promise<void> {
  await client?.dispose();
  worker?.terminate();
}
