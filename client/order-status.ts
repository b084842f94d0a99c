/** The order under the cursor in the status bar: verdict in words, the measure that uses most of its limit beside it. */
import { type Disposable, l10n, StatusBarAlignment, window } from 'vscode';
import type { CurrentOrder } from './current-order';
import { OneAtATime } from './one-at-a-time';
import { type Verdict, verdictIcon } from './verdict';

interface OrderStatus {
  readonly name: string | null;
  readonly verdict: Verdict;
  readonly words: string;
  readonly measures: string;
}

const PAUSE = 80;
/** Left of what other extensions put there, but not of the editor’s own. */
const PRIORITY = 50;

export function orderStatus(current: CurrentOrder): Disposable[] {
  const item = window.createStatusBarItem('lentil.order', StatusBarAlignment.Left, PRIORITY);
  item.name = l10n.t('Lentil: Order');
  item.command = 'lentil.showSheet';
  const drawing = new OneAtATime(async () => {
    const status = await current.ask<OrderStatus>('lentil/orderStatus');
    if (!status) return item.hide();
    const name = status.name ?? l10n.t('order without a name');
    item.text = `$(${verdictIcon(status.verdict)}) ${name}: ${status.words}`;
    item.tooltip = [status.words, status.measures, l10n.t('Show the job sheet')].filter(Boolean).join('\n');
    item.accessibilityInformation = { label: `${name}: ${status.words}. ${status.measures}` };
    item.show();
  }, PAUSE);
  drawing.ask();
  return [item, drawing, current.onChange(() => drawing.ask())];
}
