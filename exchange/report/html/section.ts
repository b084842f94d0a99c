import { type Markup, markup, type Part } from './markup';

export interface Section {
  /** Its anchor. */
  readonly id: string;
  readonly title: string;
  readonly body: Part;
}

/** Said where a sample is small, so that nobody has to look at the counts to know. */
export const smallMark = (isSmall: boolean): Markup | null =>
  isSmall ? markup` <span class="small-sample">small sample</span>` : null;

/** Stands in the place of a chart and a table that would be empty. */
export const nothing = (text: string): Markup => markup`<p class="nothing">${text}</p>\n`;

export const note = (text: Part): Markup => markup`<p class="note">${text}</p>\n`;
