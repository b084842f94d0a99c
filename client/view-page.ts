/** What the pages of all views share: their head, their buttons, the colours of the theme, and a policy that lets nothing in from outside. */
import { Uri, type Webview } from 'vscode';

export interface ViewPage {
  readonly title: string;
  /** Name of a bundle in `dist`. */
  readonly script: string;
  /** Follows the looks that all views share. */
  readonly style: string;
  /** Words of the buttons by what the page asks of the editor when one is pressed. */
  readonly buttons: readonly (readonly [ask: string, words: string])[];
  /** Buttons that wait until the page enables them. */
  readonly areDisabled?: boolean;
  /** Markup, every text in it escaped. */
  readonly body: string;
}

/** The colours of the editor’s theme, and the buttons in them. */
const LOOKS = `
body {
  padding: 0;
  --ink: var(--vscode-editor-foreground);
  --paper: var(--vscode-editor-background);
  --soft: color-mix(in srgb, var(--vscode-editor-foreground) 78%, var(--vscode-editor-background));
  --glass: color-mix(in srgb, var(--vscode-editor-foreground) 8%, var(--vscode-editor-background));
  --rule: color-mix(in srgb, var(--vscode-editor-foreground) 25%, var(--vscode-editor-background));
}
body.vscode-high-contrast, body.vscode-high-contrast-light {
  --soft: var(--vscode-editor-foreground);
  --glass: var(--vscode-editor-background);
  --rule: var(--vscode-contrastBorder, var(--vscode-editor-foreground));
}
.tools { display: flex; gap: 0.5rem; flex-wrap: wrap; padding: 0.5rem 1.5rem; position: sticky; top: 0; z-index: 1; background: var(--paper); border-bottom: 1px solid var(--rule); }
.tools button { font: inherit; color: var(--vscode-button-secondaryForeground, var(--ink)); background: var(--vscode-button-secondaryBackground, transparent); border: 1px solid var(--vscode-contrastBorder, transparent); border-radius: 2px; padding: 0.25rem 0.75rem; cursor: pointer; }
.tools button:hover { background: var(--vscode-button-secondaryHoverBackground, var(--glass)); }
a:focus-visible, .tools button:focus-visible, .scroll:focus-visible { outline: 2px solid var(--vscode-focusBorder); outline-offset: 1px; }
.tools button:disabled { opacity: 0.6; cursor: default; }
[hidden] { display: none; }
`.trim();

export function viewPage(webview: Webview, extension: Uri, page: ViewPage): string {
  const nonce = crypto.randomUUID();
  const script = webview.asWebviewUri(Uri.joinPath(extension, 'dist', page.script));
  const policy = `default-src 'none'; style-src 'nonce-${nonce}'; script-src 'nonce-${nonce}'`;
  const button = ([ask, words]: readonly [string, string]): string =>
    `<button type="button" data-ask="${ask}"${page.areDisabled ? ' disabled' : ''}>${escaped(words)}</button>`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(page.title)}</title>
<style nonce="${nonce}">${LOOKS}
${page.style}</style>
</head>
<body>
<div class="tools" role="toolbar" aria-label="${escaped(page.title)}">
${page.buttons.map(button).join('\n')}
</div>
${page.body}
<script nonce="${nonce}" src="${script}"></script>
</body>
</html>`;
}

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
export const escaped = (text: string): string => text.replace(/[&<>"]/g, (one) => ENTITIES[one] as string);
