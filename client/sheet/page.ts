/// <reference lib="dom" />
/** Runs inside the view of the sheet: shows what it is sent, and passes on which button was pressed. */
import type { FromPage, ToPage } from './messages';

declare function acquireVsCodeApi(): { postMessage: (message: FromPage) => void };

const editor = acquireVsCodeApi();
const byId = (id: string): HTMLElement => document.getElementById(id) as HTMLElement;
const style = new CSSStyleSheet();
document.adoptedStyleSheets = [style];

window.addEventListener('message', ({ data }: MessageEvent<ToPage>) => {
  const isSheet = data.kind === 'sheet';
  byId('none').hidden = isSheet;
  byId('sheet').hidden = !isSheet;
  for (const button of Array.from(document.querySelectorAll('button'))) button.disabled = !isSheet;
  if (data.kind === 'sheet') show(data.sheet);
});

function show({ summary, text, style: rules, title }: Extract<ToPage, { kind: 'sheet' }>['sheet']): void {
  const [x, y] = [window.scrollX, window.scrollY];
  if (style.cssRules.length === 0) style.replaceSync(rules);
  byId('sheet').innerHTML = text;
  document.title = title;
  window.scrollTo(x, y);
  // Only a change is read out, and not every keystroke.
  if (byId('told').textContent !== summary) byId('told').textContent = summary;
}

for (const button of Array.from(document.querySelectorAll<HTMLButtonElement>('button[data-ask]')))
  button.addEventListener('click', () => editor.postMessage(button.dataset.ask as FromPage));

editor.postMessage('ready');
