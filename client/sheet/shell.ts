/** The page that a sheet is shown in: its buttons, the colours of the theme, and a policy that lets nothing in from outside. */
import { env, l10n, Uri, type Webview } from 'vscode';
import type { FromPage } from './messages';

/** The colours of the editor’s theme under the names that a sheet knows. */
const THEME = `
body {
  padding: 0;
  --ink: var(--vscode-editor-foreground);
  --paper: var(--vscode-editor-background);
  --soft: color-mix(in srgb, var(--vscode-editor-foreground) 78%, var(--vscode-editor-background));
  --glass: color-mix(in srgb, var(--vscode-editor-foreground) 8%, var(--vscode-editor-background));
  --rule: color-mix(in srgb, var(--vscode-editor-foreground) 25%, var(--vscode-editor-background));
  --read: var(--vscode-textLink-foreground);
  --fail: var(--vscode-editorError-foreground, var(--vscode-errorForeground));
  --pass: var(--vscode-testing-iconPassed, var(--vscode-editor-foreground));
  --face: var(--vscode-font-family);
}
body.vscode-high-contrast, body.vscode-high-contrast-light {
  --soft: var(--vscode-editor-foreground);
  --glass: var(--vscode-editor-background);
  --rule: var(--vscode-contrastBorder, var(--vscode-editor-foreground));
}
.tools { display: flex; gap: 0.5rem; flex-wrap: wrap; padding: 0.5rem 1.5rem; position: sticky; top: 0; z-index: 1; background: var(--paper); border-bottom: 1px solid var(--rule); }
.tools button { font: inherit; color: var(--vscode-button-secondaryForeground, var(--ink)); background: var(--vscode-button-secondaryBackground, transparent); border: 1px solid var(--vscode-contrastBorder, transparent); border-radius: 2px; padding: 0.25rem 0.75rem; cursor: pointer; }
.tools button:hover { background: var(--vscode-button-secondaryHoverBackground, var(--glass)); }
.tools button:focus-visible, .scroll:focus-visible { outline: 2px solid var(--vscode-focusBorder); outline-offset: 1px; }
.tools button:disabled { opacity: 0.6; cursor: default; }
#none { padding: 1rem 1.5rem; margin: 0; }
#told { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
[hidden] { display: none; }
`.trim();

const button = (ask: FromPage, words: string): string =>
  `<button type="button" data-ask="${ask}" disabled>${escaped(words)}</button>`;

export function shell(webview: Webview, extension: Uri, nonce: string): string {
  const script = webview.asWebviewUri(Uri.joinPath(extension, 'dist', 'sheet-page.js'));
  const policy = `default-src 'none'; style-src 'nonce-${nonce}'; script-src 'nonce-${nonce}'`;
  return `<!DOCTYPE html>
<html lang="${escaped(env.language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(l10n.t('Job Sheet'))}</title>
<style nonce="${nonce}">${THEME}</style>
</head>
<body>
<div class="tools" role="toolbar" aria-label="${escaped(l10n.t('Job Sheet'))}">
${button('html', l10n.t('Save as HTML…'))}
${button('svg', l10n.t('Save Picture as SVG…'))}
${button('print', l10n.t('Print…'))}
</div>
<p id="told" lang="en" role="status"></p>
<p id="none">${escaped(l10n.t('Put the cursor into an order to see its sheet.'))}</p>
<div id="sheet" lang="en" hidden></div>
<script nonce="${nonce}" src="${script}"></script>
</body>
</html>`;
}

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (one) => ENTITIES[one] as string);
