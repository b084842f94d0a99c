import type { Where } from '../seen';
import { type Markup, markup } from './markup';
import type { Column } from './table';

/** Leads to an order where the page is shown by something that can open it; null where it cannot. */
export type LinkTo = (where: Pick<Where, 'path' | 'line'>) => string | null;

/** The column that says where the order of a row stands. */
export const whereColumn = (linkTo: LinkTo): Column<Pick<Where, 'path' | 'line'>> => ({
  title: 'Where',
  cell: (where) => linked(linkTo(where), markup`<code>${where.path}:${where.line}</code>`),
});

const linked = (address: string | null, text: Markup): Markup =>
  address === null ? text : markup`<a class="order" href="${address}">${text}</a>`;
