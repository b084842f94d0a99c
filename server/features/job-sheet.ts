import type { TextDocumentPositionParams } from 'vscode-languageserver';
import { jobPicture, jobSheet, SHEET_STYLE, type SheetOf, sheetPage } from '../../orders';
import type { Snapshot } from '../snapshot';

/** A request of our own: the sheet of the order at a place. */
export const JOB_SHEET = 'lentil/sheet';

/** In parts for a view that has a page already, as a page of its own, or the picture alone. */
export type SheetForm = 'parts' | 'page' | 'picture';

export interface SheetParams extends TextDocumentPositionParams {
  readonly as?: SheetForm;
}

export interface SheetAnswer {
  /** Of the order, such as `Job QL-1042`. */
  readonly title: string;
  /** Title and verdict in one line. */
  readonly summary: string;
  /** HTML of the parts or of a whole page, or an SVG document. */
  readonly text: string;
  /** What the parts need to look as they should. */
  readonly style: string;
}

/** The sheet of the order that the place stands in; nothing where there is none. */
export function jobSheetAt(snapshot: Snapshot, { position, as = 'parts' }: SheetParams): SheetAnswer | null {
  const { order, evaluation, block } = snapshot.block(snapshot.site(position).block);
  if (!order) return null;
  const of: SheetOf = { order, evaluation, lines: block.lines.map(({ text }) => text) };
  const { title, summary, html } = jobSheet(of);
  return { title, summary, text: TEXTS[as]?.(of) ?? html, style: SHEET_STYLE };
}

const TEXTS: Readonly<Partial<Record<SheetForm, (of: SheetOf) => string>>> = {
  page: sheetPage,
  picture: ({ order, evaluation }) => jobPicture(order, evaluation),
};
