import type { LineNode, Span } from '../../../grammar';
import type { BlockAnalysis } from '../../../orders';
import type { Site } from '../../snapshot';

/** The place that is asked about, with everything known of its line. */
export interface Spot extends Site {
  readonly analysis: BlockAnalysis;
  readonly text: string;
  readonly node: LineNode;
}

/** One thing to say, and the columns of the line it is about. */
export interface Part extends Span {
  readonly markdown: string;
}

export const covers = ({ start, end }: Span, character: number): boolean => start <= character && character <= end;

/** A heading with a list below it. */
export const listed = (heading: string, items: readonly string[]): string =>
  [`**${heading}**`, '', ...items.map((item) => `- ${item}`)].join('\n');
