/** Has the server make the report, shows how far it is, and lets it be given up. */
import { l10n, ProgressLocation, window } from 'vscode';
import { type BaseLanguageClient, WorkDoneProgress } from 'vscode-languageclient';
import type { Report } from './messages';

/** Nothing where somebody has given it up, or where it could not be made, which is told. */
export const makeReport = (client: BaseLanguageClient): Thenable<Report | null> =>
  window.withProgress(
    { location: ProgressLocation.Notification, title: l10n.t('Making the quality report'), cancellable: true },
    async (progress, token) => {
      const workDoneToken = crypto.randomUUID();
      let told = 0;
      const listening = client.onProgress(WorkDoneProgress.type, workDoneToken, (value) => {
        if (value.kind === 'end') return;
        const { percentage = told, message = '' } = value;
        progress.report({ increment: percentage - told, message });
        told = percentage;
      });
      try {
        const report = await client.sendRequest<Report | null>('lentil/report', { workDoneToken }, token);
        if (!report) tellFailure();
        return report;
      } catch (error) {
        if (!token.isCancellationRequested) tellFailure(error);
        return null;
      } finally {
        listening.dispose();
      }
    },
  );

function tellFailure(error?: unknown): void {
  const why = error instanceof Error ? ` ${error.message}` : '';
  window.showErrorMessage(`${l10n.t('The report could not be made. The output of Lentil says more.')}${why}`);
}
