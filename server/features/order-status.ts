import type { TextDocumentPositionParams } from 'vscode-languageserver';
import type { Verdict } from '../../orders';
import type { Snapshot } from '../snapshot';
import { inShort } from './measures-in-short';
import { verdictInWords } from './verdict-words';

/** A request of our own: how the order at a place stands. */
export const ORDER_STATUS = 'lentil/orderStatus';

export interface OrderStatus {
  readonly name: string | null;
  readonly verdict: Verdict;
  /** The verdict with what it hangs on. */
  readonly words: string;
  /** How many measures are inside and outside, and which one has used up most of its limit; empty where nothing was judged. */
  readonly measures: string;
}

/** The order that the place stands in; nothing where there is none. */
export function orderStatus(snapshot: Snapshot, { position }: TextDocumentPositionParams): OrderStatus | null {
  const { order, evaluation } = snapshot.block(snapshot.site(position).block);
  if (!order || !evaluation) return null;
  const { verdict, measures } = evaluation;
  return { name: order.name, verdict, words: verdictInWords(order, evaluation), measures: inShort(measures) };
}
