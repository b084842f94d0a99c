/** Sample texts with marks in them, so that nobody counts columns. `|` marks a place and is taken out of the text. */
import type { Position, Range } from 'vscode-languageserver';
import { type LentilDocument, parseDocument } from '../../../orders';
import { abilitiesOf } from '../../../server/abilities';
import type { Options } from '../../../server/features/options';
import { NO_NAMES } from '../../../server/names/lookup';
import { DEFAULT_SETTINGS, type Settings } from '../../../server/settings';
import { Snapshot } from '../../../server/snapshot';
import { USUAL } from '../../support/wire';

export const URI = 'file:///bench/week-48.lentil';

export interface Sample {
  readonly text: string;
  readonly snapshot: Snapshot;
  readonly position: Position;
}

export function sample(marked: string, standard: string | null = null, shared: readonly LentilDocument[] = []): Sample {
  const at = marked.indexOf('|');
  const text = at < 0 ? marked : marked.slice(0, at) + marked.slice(at + 1);
  const before = marked.slice(0, Math.max(0, at)).split(/\r\n|\r|\n/);
  return {
    text,
    snapshot: Snapshot.of(URI, 7, parseDocument(text), { standard, shared }),
    position: { line: before.length - 1, character: before.at(-1)?.length ?? 0 },
  };
}

export const options = (settings: Partial<Settings> = {}): Options => ({
  abilities: abilitiesOf(USUAL),
  settings: { ...DEFAULT_SETTINGS, ...settings },
  today: '2026-11-25',
  names: () => NO_NAMES,
  isEveryFileRead: () => true,
});

/** The text that a range covers, cut out of the text as an editor would. */
export function covered(text: string, { start, end }: Range): string {
  const lines = text.split(/(?<=\r\n|\n|\r(?!\n))/);
  const part = lines.slice(start.line, end.line + 1).map((line) => line.replace(/[\r\n]+$/, ''));
  part[part.length - 1] = (part.at(-1) ?? '').slice(0, end.character);
  part[0] = (part[0] ?? '').slice(start.character);
  return part.join('\n');
}

export const WHOLE: Range = { start: { line: 0, character: 0 }, end: { line: 1e6, character: 0 } };

/** A pair with everything in it that a feature may speak of. */
export const BIFOCAL = `standard z80.1-2015

instrument FOC-A
  reads-to    0.125

order QL-1042
  R           -4.50 -0.75 x 022
  L           -4.25 -1.00 x 168
  add         +2.00
  pd          63 near 60
  height      17
  design      bifocal flat-top 28
  lens        resin-1.50
  base-curve  4.00
  frame       A 52  B 36  DBL 18  ED 55
  supply      glazed

  reading 2026-11-24 14:30 by KO with FOC-A
    zero      +0.03
    R         -4.50 -0.62 x 024
    L         lines -4.25 / -5.25 x 168
    add       R -4.50 -> -2.50 front-vertex
    add       L +2.00
    pd        63.5 near 60
    prism     R 0  L 0
    height    R 17  L 16.5
    base-curve R 4.12  L 4.00
`;
