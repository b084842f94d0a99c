/** Asks where a text is to be kept, and writes it there. */
import { Uri, window, workspace } from 'vscode';

const FILTERS = { html: 'HTML', svg: 'SVG' } as const;

export type TextFile = keyof typeof FILTERS;

/** Gives back where it was written, or nothing where nobody wanted it. */
export async function saveText(title: string, ending: TextFile, text: string): Promise<Uri | undefined> {
  const folder = workspace.workspaceFolders?.[0]?.uri;
  const target = await window.showSaveDialog({
    ...(folder ? { defaultUri: Uri.joinPath(folder, `${fileName(title)}.${ending}`) } : {}),
    filters: { [FILTERS[ending]]: [ending] },
  });
  if (target) await workspace.fs.writeFile(target, new TextEncoder().encode(text));
  return target;
}

/** A title as a name that every file system takes. */
export const fileName = (title: string): string => title.replace(/[^\p{L}\p{N} ,._-]/gu, '-').slice(0, 80);
