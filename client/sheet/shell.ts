/** The page that a sheet is shown in. */
import { l10n, type Uri, type Webview } from 'vscode';
import { escaped, viewPage } from '../view-page';
import type { FromPage } from './messages';

/** Names that a sheet knows besides those of all views. */
const STYLE = `
body {
  --read: var(--vscode-textLink-foreground);
  --fail: var(--vscode-editorError-foreground, var(--vscode-errorForeground));
  --pass: var(--vscode-testing-iconPassed, var(--vscode-editor-foreground));
  --face: var(--vscode-font-family);
}
#none { padding: 1rem 1.5rem; margin: 0; }
#told { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
`.trim();

const buttons = (): readonly (readonly [FromPage, string])[] => [
  ['html', l10n.t('Save as HTML…')],
  ['svg', l10n.t('Save Picture as SVG…')],
  ['print', l10n.t('Print…')],
];

export const shell = (webview: Webview, extension: Uri): string =>
  viewPage(webview, extension, {
    title: l10n.t('Job Sheet'),
    script: 'sheet-page.js',
    style: STYLE,
    buttons: buttons(),
    areDisabled: true,
    body: `<p id="told" role="status"></p>
<p id="none">${escaped(l10n.t('Put the cursor into an order to see its sheet.'))}</p>
<div id="sheet" hidden></div>`,
  });
