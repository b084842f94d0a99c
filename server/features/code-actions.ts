import { type CodeAction, CodeActionKind, type CodeActionParams } from 'vscode-languageserver';
import type { Snapshot } from '../snapshot';
import { addReading } from './code-actions/add-reading';
import type { Asking } from './code-actions/asking';
import { eyeLines } from './code-actions/eye-lines';
import { fixAll } from './code-actions/fix-all';
import { fixes } from './code-actions/fixes';
import { ADD_READING, EYE_LINES, FIX_ALL, PD_HALVES, POWER_FORM, PRISM_FORM } from './code-actions/kinds';
import { pdHalves } from './code-actions/pd-halves';
import { powerForms } from './code-actions/power-forms';
import { prismForms } from './code-actions/prism-forms';
import type { Options } from './options';

interface Maker {
  readonly kind: CodeActionKind;
  readonly make: (asking: Asking) => CodeAction[];
  /** Looks at the whole document, so it is made only for an editor that asks for just that. */
  readonly onRequest?: true;
}

const MAKERS: readonly Maker[] = [
  { kind: CodeActionKind.QuickFix, make: fixes },
  { kind: POWER_FORM, make: powerForms },
  { kind: PRISM_FORM, make: prismForms },
  { kind: EYE_LINES, make: eyeLines },
  { kind: PD_HALVES, make: pdHalves },
  { kind: ADD_READING, make: addReading },
  { kind: FIX_ALL, make: fixAll, onRequest: true },
];

export const ACTION_KINDS: readonly CodeActionKind[] = [...new Set(MAKERS.map(({ kind }) => kind))];

/** What can be done at a place: mend a finding or confirm it, write a figure in another form, take a reading. */
export function codeActions(snapshot: Snapshot, params: CodeActionParams, options: Options): CodeAction[] | null {
  const { only } = params.context;
  if (!options.abilities.literalActions) return null;
  const isWanted = ({ kind, onRequest }: Maker): boolean =>
    only ? only.some((wanted) => isWithin(kind, wanted)) : !onRequest;
  const makers = MAKERS.filter(isWanted);
  return makers.length > 0 ? makers.flatMap(({ make }) => make({ snapshot, params, options })) : null;
}

/** Kinds are parted by points, from the wide to the narrow; the empty kind holds all. */
const isWithin = (kind: CodeActionKind, wanted: CodeActionKind): boolean =>
  wanted === '' || kind === wanted || kind.startsWith(`${wanted}.`);
