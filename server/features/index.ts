/** Every feature by its name; each is a function of a snapshot, what the editor asks, and options. */
import { codeActions } from './code-actions';
import { diagnostics } from './diagnostics';
import { documentSymbols } from './document-symbols';
import { folding } from './folding';
import { formatting, rangeFormatting } from './formatting';
import { hover } from './hover';
import { inlayHints } from './inlay-hints';

export const FEATURES = {
  codeActions,
  diagnostics,
  documentSymbols,
  folding,
  formatting,
  hover,
  inlayHints,
  rangeFormatting,
};

export type Features = typeof FEATURES;
