/** What the editor tells the page of a sheet, and what the page asks of the editor. */

export interface Sheet {
  readonly title: string;
  readonly summary: string;
  /** Markup that the server has made, every text in it escaped. */
  readonly text: string;
  readonly style: string;
}

export type ToPage = { readonly kind: 'sheet'; readonly sheet: Sheet } | { readonly kind: 'none' };

export type FromPage = 'ready' | 'html' | 'svg' | 'print';
