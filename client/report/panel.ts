/** The quality report on the orders of the workspace. It stays as it was made until somebody asks for it anew. */
import { type Disposable, l10n, Range, Uri, ViewColumn, type WebviewPanel, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { saveText } from '../save-text';
import { makeReport } from './make';
import type { FromPage, Report } from './messages';
import { shell } from './shell';

const VIEW = 'lentil.report';

export class ReportPanel implements Disposable {
  readonly #client: BaseLanguageClient;
  readonly #extension: Uri;
  #panel: WebviewPanel | undefined;
  #report: Report | null = null;
  #isMaking = false;

  constructor(client: BaseLanguageClient, extension: Uri) {
    this.#client = client;
    this.#extension = extension;
  }

  /** Makes it, and opens the view when it is there. */
  async show(): Promise<void> {
    if (this.#isMaking) return;
    this.#isMaking = true;
    try {
      const report = await makeReport(this.#client);
      if (report) this.#put(report);
    } finally {
      this.#isMaking = false;
    }
  }

  dispose(): void {
    this.#panel?.dispose();
  }

  #put(report: Report): void {
    this.#report = report;
    const panel = this.#panel ?? this.#open();
    panel.title = report.title;
    panel.webview.html = shell(panel.webview, this.#extension, report);
    panel.reveal();
  }

  #open(): WebviewPanel {
    const panel = window.createWebviewPanel(VIEW, l10n.t('Quality Report'), ViewColumn.Active, {
      enableScripts: true,
      enableFindWidget: true,
      localResourceRoots: [this.#extension],
      // Whoever comes back from an order goes on reading where the report was left.
      retainContextWhenHidden: true,
    });
    panel.webview.onDidReceiveMessage((asked: FromPage) => this.#answer(asked));
    panel.onDidDispose(() => {
      this.#panel = undefined;
      this.#report = null;
    });
    this.#panel = panel;
    return panel;
  }

  async #answer(asked: FromPage): Promise<void> {
    if (asked === 'again') await this.show();
    else if (asked === 'html') {
      if (this.#report) await saveText(this.#report.title, 'html', this.#report.page);
    } else await this.#openOrder(asked.order);
  }

  /** Opens the order beside the report, and always on the same side. */
  async #openOrder(address: string): Promise<void> {
    const [, uri = '', number = '1'] = /^(.*)#L(\d+)$/.exec(address) ?? [];
    const line = Number(number) - 1;
    const viewColumn = this.#panel?.viewColumn === ViewColumn.One ? ViewColumn.Two : ViewColumn.One;
    try {
      await window.showTextDocument(Uri.parse(uri), { viewColumn, selection: new Range(line, 0, line, 0) });
    } catch {
      window.showWarningMessage(l10n.t('The file has gone since the report was made.'));
    }
  }
}
