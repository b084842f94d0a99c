import type { Evaluation } from '../../evaluate';
import type { Level } from '../../finding';

/**
 * The level of a reservation about a reading: once nothing in the verdict rests on that reading any more, it is told as
 * information only.
 * @param reading index of the reading in the order
 */
export const whileItCounts = ({ measures }: Evaluation, reading: number, level: Level): Level =>
  measures.length === 0 || measures.some((one) => one.reading === reading) ? level : 'info';
