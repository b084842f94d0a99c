/** The extension in a window of its own: the server is the `lentil` command in a process beside the editor. */
import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { checkTask } from './check-task';
import { clientOptions, ID, NAME, outputChannel } from './language-client';
import { run } from './run';

let client: LanguageClient | undefined;

export function activate(context: ExtensionContext): void {
  const output = outputChannel();
  const server = { module: context.asAbsolutePath('dist/lentil.mjs'), args: ['serve'], transport: TransportKind.ipc };
  client = new LanguageClient(ID, NAME, server, clientOptions(output));
  run(
    context,
    client,
    output,
    checkTask({
      program: process.execPath,
      command: Uri.joinPath(context.extensionUri, 'dist', 'lentil.mjs'),
      // The program is the editor’s own, which then runs as plain Node.js.
      env: { ELECTRON_RUN_AS_NODE: '1' },
    }),
  );
}

export const deactivate = (): Promise<void> | undefined => client?.dispose();
