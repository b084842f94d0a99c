import type { Snapshot } from '../snapshot';

/** So many lines are about a thousand orders with their readings. */
export const MOST_LINES = 20_000;

/** Whether answers that cover a whole document are left off, since an editor asks for them after every edit. */
export const isVeryLarge = ({ document }: Snapshot): boolean => document.lineCount > MOST_LINES;
