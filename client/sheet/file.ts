/** The sheet as a file, for filing with the job and for printing. */
import { env, l10n, UIKind, Uri, window, workspace } from 'vscode';
import type { CurrentOrder } from '../current-order';
import type { Sheet } from './messages';

export type SheetFile = 'html' | 'svg';

const FORMS = {
  html: { as: 'page', filter: 'HTML' },
  svg: { as: 'picture', filter: 'SVG' },
} as const;

/** Asks where to, and writes the sheet of the order under the cursor there; gives back where it was written. */
export async function saveSheet(current: CurrentOrder, file: SheetFile): Promise<Uri | undefined> {
  const { as, filter } = FORMS[file];
  const sheet = await sheetOf(current, as);
  if (!sheet) return undefined;
  const folder = workspace.workspaceFolders?.[0]?.uri;
  const name = `${fileName(sheet.title)}.${file}`;
  const target = await window.showSaveDialog({
    ...(folder ? { defaultUri: Uri.joinPath(folder, name) } : {}),
    filters: { [filter]: [file] },
  });
  if (!target) return undefined;
  await workspace.fs.writeFile(target, new TextEncoder().encode(sheet.text));
  return target;
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

/** The title as a name that every file system takes. */
const fileName = (title: string): string => title.replace(/[^\p{L}\p{N} ._-]/gu, '-').slice(0, 80);
