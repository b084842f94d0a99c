import type { BlockAnalysis, Context } from '../../orders';
import { quoteOf } from '../../orders';
import { contentEnd } from './lines';

/** The lines of the file’s `defaults` that hold for an order, as they are typed there; none where it says all itself. */
export const inheritedLines = ({ inherited }: BlockAnalysis, { defaults }: Context): readonly string[] =>
  inherited.flatMap((line) => {
    const text = defaults?.lines[line]?.text ?? '';
    const said = quoteOf(text.slice(0, contentEnd(text)));
    return said === '' ? [] : [said];
  });
