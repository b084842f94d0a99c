import { type Markup, markup, type Part } from './markup';

export interface Column<Row> {
  readonly title: string;
  /** Figures stand to the right, one above the other. */
  readonly figures?: boolean;
  readonly cell: (row: Row) => Part;
}

export interface TableOptions {
  readonly caption: string;
  /** Scrolls within the page on a screen; on paper it is as long as it is. */
  readonly tall?: boolean;
}

/** A table whose first column names its rows. */
export function table<Row>(
  columns: readonly Column<Row>[],
  rows: readonly Row[],
  { caption, tall }: TableOptions,
): Markup {
  const head = columns.map(({ title, figures }) => markup`<th scope="col"${side(figures)}>${title}</th>`);
  const body = rows.map((row) => {
    const cells = columns.map(({ cell, figures }, at) =>
      at === 0 ? markup`<th scope="row">${cell(row)}</th>` : markup`<td${side(figures)}>${cell(row)}</td>`,
    );
    return markup`<tr>${cells}</tr>\n`;
  });
  return markup`<div class="scroll${tall ? ' tall' : ''}" tabindex="0" role="region" aria-label="${caption}">
<table><caption>${caption}</caption>
<thead><tr>${head}</tr></thead>
<tbody>
${body}</tbody></table></div>
`;
}

const side = (figures: boolean | undefined): Markup => (figures ? markup` class="figures"` : markup``);
