/** The sheet as a file, for filing with the job and for printing. */
import { env, l10n, UIKind, Uri, window, workspace } from 'vscode';
import type { CurrentOrder } from '../current-order';
import { fileName, saveText, type TextFile } from '../save-text';
import type { Sheet } from './messages';

const FORMS = { html: 'page', svg: 'picture' } as const;

/** Asks where to, and writes the sheet of the order under the cursor there; gives back where it was written. */
export async function saveSheet(current: CurrentOrder, file: TextFile): Promise<Uri | undefined> {
  const sheet = await sheetOf(current, FORMS[file]);
  return sheet ? saveText(sheet.title, file, sheet.text) : undefined;
}

/**
 * A view inside the editor has no way to a printer, so the sheet is opened in the browser of the machine. Where the
 * editor itself runs in a browser there is no such way either, and the sheet is saved first.
 */
export async function printSheet(current: CurrentOrder, storage: Uri): Promise<void> {
  if (env.uiKind === UIKind.Desktop && storage.scheme === 'file' && !env.remoteName) {
    const sheet = await sheetOf(current, 'page');
    if (!sheet) return;
    await workspace.fs.createDirectory(storage);
    const target = Uri.joinPath(storage, `${fileName(sheet.title)}.html`);
    await workspace.fs.writeFile(target, new TextEncoder().encode(sheet.text));
    await env.openExternal(target);
    return;
  }
  const saved = await saveSheet(current, 'html');
  if (saved) window.showInformationMessage(l10n.t('The sheet is saved. Open it in a browser to print it.'));
}

async function sheetOf(current: CurrentOrder, as: 'page' | 'picture'): Promise<Sheet | null> {
  const sheet = await current.ask<Sheet>('lentil/sheet', { as });
  if (!sheet) window.showInformationMessage(l10n.t('Put the cursor into an order to see its sheet.'));
  return sheet;
}
