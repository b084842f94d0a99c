/// <reference lib="dom" />
/** Runs inside the view of the report: passes on which button was pressed and which order is wanted. */
import type { FromPage } from './messages';

declare function acquireVsCodeApi(): { postMessage: (message: FromPage) => void };

const editor = acquireVsCodeApi();

document.addEventListener('click', (event) => {
  const pressed = event.target as Element;
  const ask = pressed.closest<HTMLElement>('button[data-ask]')?.dataset.ask;
  if (ask) editor.postMessage(ask as FromPage);
  const order = pressed.closest('a.order')?.getAttribute('href');
  if (!order) return;
  // The editor would look for a program to open the address with.
  event.preventDefault();
  event.stopPropagation();
  editor.postMessage({ order });
});
