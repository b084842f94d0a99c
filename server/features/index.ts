/** Every feature by its name; each is a function of a snapshot, what the editor asks, and options. */
import { codeActions } from './code-actions';
import { codeLens } from './code-lens';
import { completion } from './completion';
import { definition } from './definition';
import { diagnostics } from './diagnostics';
import { documentHighlights } from './document-highlights';
import { documentLinks } from './document-links';
import { documentSymbols } from './document-symbols';
import { folding } from './folding';
import { formatting, rangeFormatting } from './formatting';
import { hover } from './hover';
import { inlayHints } from './inlay-hints';
import { jobSheetAt } from './job-sheet';
import { onTypeFormatting } from './on-type-formatting';
import { orderList } from './order-list';
import { orderStatus } from './order-status';
import { references } from './references';
import { prepareRename, rename } from './rename';
import { selectionRanges } from './selection-ranges';
import { semanticTokens, semanticTokensInRange } from './semantic-tokens';
import { workspaceSymbols } from './workspace-symbols';

export const FEATURES = {
  codeActions,
  codeLens,
  completion,
  definition,
  diagnostics,
  documentHighlights,
  documentLinks,
  documentSymbols,
  folding,
  formatting,
  hover,
  inlayHints,
  jobSheetAt,
  onTypeFormatting,
  orderList,
  orderStatus,
  prepareRename,
  rangeFormatting,
  references,
  rename,
  selectionRanges,
  semanticTokens,
  semanticTokensInRange,
  workspaceSymbols,
};

export type Features = typeof FEATURES;
