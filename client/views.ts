/** Everything beside the text: the sheet, the report, the list of orders, the status bar, and the commands that belong to them. */
import { commands, type Disposable, type ExtensionContext, Uri, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { CurrentOrder } from './current-order';
import { ID } from './language-client';
import { orderStatus } from './order-status';
import { orderTree } from './order-tree';
import { ReportPanel } from './report/panel';
import { printSheet, saveSheet } from './sheet/file';
import { SheetPanel } from './sheet/panel';

export function views({ extensionUri, globalStorageUri }: ExtensionContext, client: BaseLanguageClient): Disposable[] {
  const current = new CurrentOrder(client);
  const panel = new SheetPanel(current, extensionUri, globalStorageUri);
  const report = new ReportPanel(client, extensionUri);
  const orders = orderTree(client);
  // The view stays out of the explorer until there is something to show in it.
  commands.executeCommand('setContext', 'lentil.isActive', true);
  return [
    current,
    panel,
    report,
    ...orderStatus(current),
    ...orders.parts,
    commands.registerCommand('lentil.showSheet', () => panel.show()),
    commands.registerCommand('lentil.saveSheet', () => saveSheet(current, 'html')),
    commands.registerCommand('lentil.savePicture', () => saveSheet(current, 'svg')),
    commands.registerCommand('lentil.printSheet', () => printSheet(current, globalStorageUri)),
    commands.registerCommand('lentil.showReport', () => report.show()),
    commands.registerCommand('lentil.refreshOrders', () => orders.refresh()),
    commands.registerCommand('lentil.showOrders', () => commands.executeCommand('lentil.orders.focus')),
    commands.registerCommand('lentil.openSample', () => openSample(extensionUri)),
  ];
}

/** A text of its own each time, so that whoever tries things out spoils nothing. */
async function openSample(extension: Uri): Promise<void> {
  const bytes = await workspace.fs.readFile(Uri.joinPath(extension, 'media', 'walkthrough', 'sample.lentil'));
  const document = await workspace.openTextDocument({ language: ID, content: new TextDecoder().decode(bytes) });
  await window.showTextDocument(document);
}
