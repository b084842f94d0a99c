import { join } from 'node:path';
import { root } from '../project.mjs';

export const codeServerVersion = '4.100.3';

/** Everything the workbench needs is kept in one folder that git ignores and that may be deleted at any time. */
export const cache = join(root, '.workbench');
export const codeServerHome = join(cache, `code-server-${codeServerVersion}`);
export const editor = join(codeServerHome, 'node_modules', 'code-server', 'lib', 'vscode');
export const editorMain = join(editor, 'out', 'server-main.js');
export const vsix = join(cache, 'lentil.vsix');
/** A copy of what goes into the packed extension. */
export const staged = join(cache, 'extension');
