/** What the client in a window and the one in a browser have in common. */
import { commands, type Disposable, type LogOutputChannel, window, workspace } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { ACTION_COMMANDS } from './actions';
import { OFFERS_FILES } from './files';
import { Recovery } from './recovery';

export const ID = 'lentil';
export const NAME = 'Lentil';

/**
 * Files, unsaved texts, and the files of whatever file system the workspace lies in. What other schemes show, such as
 * an older version of a file, is a copy of one of them.
 */
export function clientOptions(outputChannel: LogOutputChannel): LanguageClientOptions {
  const schemes = new Set(['file', 'untitled', ...(workspace.workspaceFolders ?? []).map(({ uri }) => uri.scheme)]);
  return {
    documentSelector: [...schemes].map((scheme) => ({ scheme, language: ID })),
    outputChannel,
    initializationOptions: OFFERS_FILES,
    errorHandler: new Recovery(),
  };
}

export const outputChannel = (): LogOutputChannel => window.createOutputChannel(NAME, { log: true });

/** The command that starts the server anew. */
export const restartCommand = (client: BaseLanguageClient): Disposable =>
  commands.registerCommand('lentil.startAfresh', async () => {
    if (client.needsStop()) await client.stop();
    await client.start();
  });

/** The commands that do what the server offers at the cursor. */
export const actionCommands = (): Disposable[] =>
  ACTION_COMMANDS.map(({ command, kind, takesFirst }) =>
    commands.registerCommand(command, () =>
      commands.executeCommand('editor.action.codeAction', { kind, apply: takesFirst ? 'first' : 'ifSingle' }),
    ),
  );
