/** The sheet of the order under the cursor, beside the text. It follows the cursor and every edit. */
import { type Disposable, l10n, type Uri, ViewColumn, type WebviewPanel, window } from 'vscode';
import type { CurrentOrder } from '../current-order';
import { OneAtATime } from '../one-at-a-time';
import { printSheet, saveSheet } from './file';
import type { FromPage, Sheet, ToPage } from './messages';
import { shell } from './shell';

const VIEW = 'lentil.sheet';
/** Between the last of several edits and the drawing, milliseconds. */
const PAUSE = 60;

export class SheetPanel implements Disposable {
  readonly #current: CurrentOrder;
  readonly #extension: Uri;
  readonly #storage: Uri;
  readonly #drawing = new OneAtATime(() => this.#draw(), PAUSE);
  readonly #following: Disposable;
  #panel: WebviewPanel | undefined;

  constructor(current: CurrentOrder, extension: Uri, storage: Uri) {
    this.#current = current;
    this.#extension = extension;
    this.#storage = storage;
    this.#following = current.onChange(() => {
      if (this.#panel?.visible) this.#drawing.ask();
    });
  }

  show(): void {
    if (this.#panel) this.#panel.reveal(undefined, true);
    else this.#open();
  }

  dispose(): void {
    this.#following.dispose();
    this.#drawing.dispose();
    this.#panel?.dispose();
  }

  #open(): void {
    const place = { viewColumn: ViewColumn.Beside, preserveFocus: true };
    const panel = window.createWebviewPanel(VIEW, l10n.t('Job Sheet'), place, {
      enableScripts: true,
      enableFindWidget: true,
      localResourceRoots: [this.#extension],
    });
    this.#panel = panel;
    panel.webview.onDidReceiveMessage((asked: FromPage) => this.#answer(asked));
    panel.onDidChangeViewState(() => {
      if (panel.visible) this.#drawing.ask();
    });
    panel.onDidDispose(() => {
      this.#panel = undefined;
    });
    panel.webview.html = shell(panel.webview, this.#extension);
  }

  async #answer(asked: FromPage): Promise<void> {
    if (asked === 'ready') this.#drawing.ask();
    else if (asked === 'print') await printSheet(this.#current, this.#storage);
    else await saveSheet(this.#current, asked);
  }

  async #draw(): Promise<void> {
    const sheet = await this.#current.ask<Sheet>('lentil/sheet');
    const panel = this.#panel;
    if (!panel) return;
    const message: ToPage = sheet ? { kind: 'sheet', sheet } : { kind: 'none' };
    panel.title = sheet?.title ?? l10n.t('Job Sheet');
    await panel.webview.postMessage(message);
  }
}
