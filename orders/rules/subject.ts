import type { Block } from '../../grammar';
import type { Context } from '../context';
import type { Evaluation } from '../evaluate';
import type { Order } from '../model';

/** What a check may look at. */
export interface Subject {
  readonly order: Order;
  readonly evaluation: Evaluation;
  readonly context: Context;
  /** The lines the order was read from, for what only shows in the writing. */
  readonly block: Block;
}
