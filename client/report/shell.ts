/** The page that the report is shown in. */
import { l10n, type Uri, type Webview } from 'vscode';
import { viewPage } from '../view-page';
import type { FromPage, Report } from './messages';

/** The colours of the theme under the names that the report knows. Its own choice between light and dark has no say here. */
const STYLE = `
body {
  padding-top: 0; font-family: var(--vscode-font-family);
  --ground: var(--paper);
  --raised: var(--glass);
  --quiet: var(--soft);
  --line: var(--rule);
  --grid: color-mix(in srgb, var(--vscode-editor-foreground) 14%, var(--vscode-editor-background));
  --mark: var(--vscode-textLink-foreground);
  --mark-soft: color-mix(in srgb, var(--vscode-textLink-foreground) 65%, var(--vscode-editor-background));
  --outside: var(--vscode-editorError-foreground, var(--vscode-errorForeground));
  --note-ground: var(--glass);
  --note-line: var(--vscode-editorWarning-foreground, var(--rule));
  --link: var(--vscode-textLink-foreground);
}
:root:has(.vscode-light, .vscode-high-contrast-light) { color-scheme: light; }
:root:has(.vscode-dark, .vscode-high-contrast:not(.vscode-high-contrast-light)) { color-scheme: dark; }
.tools { margin: 0 calc(-1 * clamp(1rem, 4vw, 2.5rem)) 1.5rem; padding: 0.5rem clamp(1rem, 4vw, 2.5rem); }
[id] { scroll-margin-top: 3rem; }
code { color: inherit; background: none; padding: 0; }
`.trim();

const buttons = (): readonly (readonly [FromPage & string, string])[] => [
  ['again', l10n.t('Make It Anew')],
  ['html', l10n.t('Save as HTML…')],
];

export const shell = (webview: Webview, extension: Uri, { title, style, body }: Report): string =>
  viewPage(webview, extension, {
    title,
    script: 'report-page.js',
    style: `${style}\n${STYLE}`,
    buttons: buttons(),
    body,
  });
