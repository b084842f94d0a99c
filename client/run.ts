import type { Disposable, ExtensionContext, LogOutputChannel } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { answerForFiles } from './files';
import { actionCommands, restartCommand } from './language-client';
import { views } from './views';

/** Starts the client and everything that works with it, in a window and in a browser alike; it ends with the extension. */
export function run(
  context: ExtensionContext,
  client: BaseLanguageClient,
  output: LogOutputChannel,
  ...more: readonly Disposable[]
): void {
  context.subscriptions.push(
    output,
    restartCommand(client),
    ...actionCommands(),
    ...answerForFiles(client),
    ...views(context, client),
    ...more,
  );
  // Nothing waits for the server; whoever asks it something is answered when it is there.
  client.start().catch((error: unknown) => output.error(String(error)));
}
