/** Answers the server’s questions for files that only the editor can read, such as those of a workspace in a browser. */
import { type Disposable, RelativePattern, Uri, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

/** Tells the server that it may ask. */
export const OFFERS_FILES = { files: true };

const PASSED_OVER = '**/{node_modules,.*}/**';
const MOST = 20_000;

export function answerForFiles(client: BaseLanguageClient): Disposable[] {
  return [
    client.onRequest('lentil/listFiles', async ({ folder }: { readonly folder: string }) => {
      const pattern = new RelativePattern(Uri.parse(folder), '**/*.lentil');
      const found = await workspace.findFiles(pattern, PASSED_OVER, MOST);
      return found.map(String);
    }),
    client.onRequest('lentil/readFile', async ({ uri }: { readonly uri: string }) => {
      try {
        return new TextDecoder().decode(await workspace.fs.readFile(Uri.parse(uri)));
      } catch {
        // There is no such file.
        return null;
      }
    }),
  ];
}
