import type { Verdict } from '../../orders';
import type { Snapshot } from '../snapshot';
import { verdictInWords } from './verdict-words';

/** A request of our own: how many orders of the workspace stand how, and on demand those of one verdict. */
export const ORDER_LIST = 'lentil/orders';

/** One order of the workspace. */
export interface OrderRow {
  readonly name: string | null;
  readonly verdict: Verdict;
  readonly words: string;
  readonly uri: string;
  readonly line: number;
}

export interface OrderListParams {
  /** The verdict whose orders are wanted; only counts are given without. */
  readonly verdict?: Verdict;
}

export interface OrderList {
  readonly counts: Readonly<Record<Verdict, number>>;
  /** Those of the wanted verdict, in the order of files and lines. */
  readonly orders: readonly OrderRow[];
  /** How many more there are than are given. */
  readonly more: number;
}

/** So many orders of a verdict are listed; nobody scrolls through more. */
const MOST = 1_000;

/** The rows of one block, none where it is no order. */
export function orderRows(snapshot: Snapshot, index: number): readonly OrderRow[] {
  if (snapshot.document.blocks[index]?.kind !== 'order') return [];
  const { order, evaluation } = snapshot.block(index);
  if (!order || !evaluation) return [];
  const { uri } = snapshot;
  const line = snapshot.firstLine(index) + order.place.line;
  return [{ name: order.name, verdict: evaluation.verdict, words: verdictInWords(order, evaluation), uri, line }];
}

/** @param files rows of each file in the order of its lines */
export function orderList(files: Iterable<readonly OrderRow[]>, { verdict }: OrderListParams): OrderList {
  const counts = { accept: 0, reject: 0, incomplete: 0, unread: 0 };
  const orders: OrderRow[] = [];
  for (const rows of files) {
    for (const row of rows) {
      counts[row.verdict]++;
      if (row.verdict === verdict && orders.length < MOST) orders.push(row);
    }
  }
  return { counts, orders, more: verdict ? counts[verdict] - orders.length : 0 };
}
