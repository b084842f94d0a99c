import type { BlockAnalysis, Context, Evaluation, FirstPass, Order, Reading } from '../../orders';

/** Where an order stands, so that a figure can be traced back to it. */
export interface Where {
  readonly order: string | null;
  readonly path: string;
  /** Line of the order in its file, counted from 1. */
  readonly line: number;
}

/** One order as the parts of the report look at it. */
export interface Seen {
  readonly analysis: BlockAnalysis;
  readonly order: Order;
  readonly evaluation: Evaluation;
  readonly first: FirstPass | null;
  readonly context: Context;
  readonly where: Where;
}

/** The reading that the first pass rests on. */
export const firstReading = ({ order, first }: Seen): Reading | null =>
  first ? (order.readings[first.reading] ?? null) : null;

/** Dates far from any bench are slips of the pen, and would stretch every axis of time. */
export const usableDay = (day: string | null | undefined): string | null =>
  day && day >= '1950-01-01' && day <= '2199-12-31' ? day : null;
