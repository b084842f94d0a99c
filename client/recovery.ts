/** What happens when the server ends without being asked to: it is started again and that is told once; no text is lost. */
import { commands, l10n, window } from 'vscode';
import { CloseAction, type CloseHandlerResult, ErrorAction, type ErrorHandler } from 'vscode-languageclient';

/** So many ends within so long, milliseconds, and it is left alone until somebody starts it. */
const MOST = 5;
const WHILE = 180_000;

export class Recovery implements ErrorHandler {
  #ends: number[] = [];
  #isTold = false;

  error(): { readonly action: ErrorAction; readonly handled: boolean } {
    return { action: ErrorAction.Continue, handled: true };
  }

  closed(): CloseHandlerResult {
    const now = Date.now();
    this.#ends = [...this.#ends.filter((end) => now - end < WHILE), now];
    if (this.#ends.length >= MOST) {
      this.#ends = [];
      this.#isTold = false;
      this.#offerStart();
      return { action: CloseAction.DoNotRestart, handled: true };
    }
    if (!this.#isTold) {
      this.#isTold = true;
      window.showWarningMessage(l10n.t('The Lentil server ended and was started again. No text is lost.'));
    }
    return { action: CloseAction.Restart, handled: true };
  }

  async #offerStart(): Promise<void> {
    const start = l10n.t('Start Afresh');
    const told = l10n.t('The Lentil server has ended {0} times and is left alone.', MOST);
    if ((await window.showErrorMessage(told, start)) === start) await commands.executeCommand('lentil.startAfresh');
  }
}
