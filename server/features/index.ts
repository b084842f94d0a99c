/** Every feature by its name; each is a function of a snapshot, what the editor asks, and options. */
import { codeActions } from './code-actions';
import { definition } from './definition';
import { diagnostics } from './diagnostics';
import { documentHighlights } from './document-highlights';
import { documentSymbols } from './document-symbols';
import { folding } from './folding';
import { formatting, rangeFormatting } from './formatting';
import { hover } from './hover';
import { inlayHints } from './inlay-hints';
import { references } from './references';
import { prepareRename, rename } from './rename';
import { workspaceSymbols } from './workspace-symbols';

export const FEATURES = {
  codeActions,
  definition,
  diagnostics,
  documentHighlights,
  documentSymbols,
  folding,
  formatting,
  hover,
  inlayHints,
  prepareRename,
  rangeFormatting,
  references,
  rename,
  workspaceSymbols,
};

export type Features = typeof FEATURES;
