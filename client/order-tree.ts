/** The orders of the workspace in the explorer, by verdict, with how many there are of each. */
import {
  type Disposable,
  EventEmitter,
  l10n,
  Range,
  ThemeIcon,
  type TreeDataProvider,
  TreeItem,
  TreeItemCollapsibleState,
  Uri,
  window,
  workspace,
} from 'vscode';
import { type BaseLanguageClient, State } from 'vscode-languageclient';
import { ID } from './language-client';
import { OneAtATime } from './one-at-a-time';
import { VERDICTS, type Verdict, verdictIcon, verdictTitle } from './verdict';

interface OrderRow {
  readonly name: string | null;
  readonly verdict: Verdict;
  readonly words: string;
  readonly uri: string;
  readonly line: number;
}

interface OrderList {
  readonly counts: Readonly<Record<Verdict, number>>;
  readonly orders: readonly OrderRow[];
  readonly more: number;
}

type Node =
  | { readonly kind: 'verdict'; readonly verdict: Verdict; readonly count: number }
  | { readonly kind: 'order'; readonly order: OrderRow }
  | { readonly kind: 'more'; readonly count: number };

const VIEW = 'lentil.orders';
/** Typing goes on undisturbed; the list follows when it pauses, milliseconds. */
const PAUSE = 500;

class OrderTree implements TreeDataProvider<Node> {
  readonly #client: BaseLanguageClient;
  readonly #changed = new EventEmitter<void>();
  readonly onDidChangeTreeData = this.#changed.event;

  constructor(client: BaseLanguageClient) {
    this.#client = client;
  }

  refresh(): void {
    this.#changed.fire();
  }

  async getChildren(parent?: Node): Promise<Node[]> {
    if (this.#client.state !== State.Running || (parent && parent.kind !== 'verdict')) return [];
    const list = await this.#client.sendRequest<OrderList | null>('lentil/orders', { verdict: parent?.verdict });
    if (!list) return [];
    if (!parent)
      return VERDICTS.filter((verdict) => list.counts[verdict] > 0).map((verdict) => ({
        kind: 'verdict',
        verdict,
        count: list.counts[verdict],
      }));
    const orders = list.orders.map((order): Node => ({ kind: 'order', order }));
    return list.more > 0 ? [...orders, { kind: 'more', count: list.more }] : orders;
  }

  getTreeItem(node: Node): TreeItem {
    switch (node.kind) {
      case 'verdict':
        return verdictItem(node.verdict, node.count);
      case 'order':
        return orderItem(node.order);
      case 'more':
        return new TreeItem(l10n.t('{0} more', node.count));
    }
  }
}

function verdictItem(verdict: Verdict, count: number): TreeItem {
  const isUrgent = verdict === 'reject';
  const state = isUrgent ? TreeItemCollapsibleState.Expanded : TreeItemCollapsibleState.Collapsed;
  const item = new TreeItem(verdictTitle(verdict), state);
  item.id = verdict;
  item.description = String(count);
  item.iconPath = new ThemeIcon(verdictIcon(verdict));
  item.accessibilityInformation = { label: l10n.t('{0}: {1} orders', verdictTitle(verdict), count) };
  return item;
}

function orderItem({ name, words, uri, line }: OrderRow): TreeItem {
  const item = new TreeItem(name ?? l10n.t('order without a name'));
  const resource = Uri.parse(uri);
  const path = workspace.asRelativePath(resource);
  item.id = `${uri}#${line}`;
  item.description = `${words} · ${path}`;
  item.tooltip = `${name ?? ''}\n${words}\n${path}:${line + 1}`.trim();
  item.command = {
    command: 'vscode.open',
    title: l10n.t('Open'),
    arguments: [resource, { selection: new Range(line, 0, line, 0) }],
  };
  return item;
}

/** Shows the view and lets it follow what changes; gives back how to bring it up to date at once. */
export function orderTree(client: BaseLanguageClient): { readonly refresh: () => void; readonly parts: Disposable[] } {
  const tree = new OrderTree(client);
  const view = window.createTreeView(VIEW, { treeDataProvider: tree });
  const following = new OneAtATime(async () => {
    if (view.visible) tree.refresh();
  }, PAUSE);
  const files = workspace.createFileSystemWatcher('**/*.lentil');
  const ask = (): void => following.ask();
  const parts = [
    view,
    following,
    files,
    files.onDidChange(ask),
    files.onDidCreate(ask),
    files.onDidDelete(ask),
    workspace.onDidChangeTextDocument(({ document }) => {
      if (document.languageId === ID) ask();
    }),
    workspace.onDidChangeConfiguration((event) => {
      if (event.affectsConfiguration(ID)) ask();
    }),
    client.onDidChangeState(ask),
  ];
  return { refresh: () => tree.refresh(), parts };
}
