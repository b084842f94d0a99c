/** The extension in a window of its own: the server is the `lentil` command in a process beside the editor. */
import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { checkTask } from './check-task';
import { answerForFiles } from './files';
import { actionCommands, clientOptions, ID, NAME, outputChannel, restartCommand } from './language-client';
import { views } from './views';

let client: LanguageClient | undefined;

export function activate(context: ExtensionContext): void {
  const output = outputChannel();
  const server = { module: context.asAbsolutePath('dist/lentil.mjs'), args: ['serve'], transport: TransportKind.ipc };
  client = new LanguageClient(ID, NAME, server, clientOptions(output));
  context.subscriptions.push(
    output,
    restartCommand(client),
    ...actionCommands(),
    ...answerForFiles(client),
    ...views(context, client),
    checkTask({
      program: process.execPath,
      command: Uri.joinPath(context.extensionUri, 'dist', 'lentil.mjs'),
      // The program is the editor’s own, which then runs as plain Node.js.
      env: { ELECTRON_RUN_AS_NODE: '1' },
    }),
  );
  // Nothing waits for the server; whoever asks it something is answered when it is there.
  client.start().catch((error: unknown) => output.error(String(error)));
}

export const deactivate = (): Promise<void> | undefined => client?.dispose();
