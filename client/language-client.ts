/** What the client in a window and the one in a browser have in common. */
import { commands, type Disposable, type LogOutputChannel, window } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';

export const ID = 'lentil';
export const NAME = 'Lentil';

/** Files and unsaved texts; what other schemes show is a copy of one of them. */
export const clientOptions = (outputChannel: LogOutputChannel): LanguageClientOptions => ({
  documentSelector: ['file', 'untitled'].map((scheme) => ({ scheme, language: ID })),
  outputChannel,
});

export const outputChannel = (): LogOutputChannel => window.createOutputChannel(NAME, { log: true });

/** The command that starts the server anew. */
export const restartCommand = (client: BaseLanguageClient): Disposable =>
  commands.registerCommand('lentil.startAfresh', async () => {
    if (client.needsStop()) await client.stop();
    await client.start();
  });
