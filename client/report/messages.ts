/** What the editor shows in the view of the report, and what the page asks of the editor. */

export interface Report {
  readonly title: string;
  /** Markup that the server has made, every text in it escaped. */
  readonly body: string;
  readonly style: string;
  /** The same as a page by itself. */
  readonly page: string;
}

/** `again` makes it anew, `html` saves it, and an address opens the order that it leads to. */
export type FromPage = 'again' | 'html' | { readonly order: string };
