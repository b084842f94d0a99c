/** Whole blocks with places to fill in, in the canonical layout. */
import { CompletionItemKind } from 'vscode-languageserver';
import { materials, type Order, toleranceSets } from '../../../orders';
import type { Snapshot } from '../../snapshot';
import { readingToFillIn } from '../reading-to-fill-in';
import { choiceAt } from '../stops';
import type { Cursor } from './cursor';
import type { EyeNames } from './eye-names';
import type { Offer } from './offer';

const SETS = toleranceSets.map(({ id }) => id);
const MATERIALS = materials.map(({ id }) => id);
const DESIGNS = ['single-vision', 'bifocal flat-top 28', 'progressive', 'office'];
const SUPPLIES = ['glazed', 'edged', 'uncut'];

const block = (word: string, detail: string, lines: readonly string[]): Offer => ({
  label: `${word}, with its lines`,
  kind: CompletionItemKind.Snippet,
  detail,
  also: [word],
  snippet: lines.join('\n'),
});

const orderBlock = ({ R, L }: EyeNames): Offer =>
  block('order', 'A pair of lenses: powers, PD, design, material, frame.', [
    'order $1',
    `  ${R.padEnd(12)}$2`,
    `  ${L.padEnd(12)}$3`,
    '  pd          $4',
    `  design      ${choiceAt(5, DESIGNS)}`,
    `  lens        ${choiceAt(6, MATERIALS)}`,
    '  frame       A $7  B $8  DBL $9  ED $10',
    `  supply      ${choiceAt(11, SUPPLIES)}`,
    '  $0',
  ]);

const INSTRUMENT = block('instrument', 'A focimeter or a lens measure that readings name.', [
  'instrument $1',
  '  kind        $2',
  `  reads-to    ${choiceAt(3, ['0.125', '0.25', '0.06', '0.01'])}`,
  '  calibrated  $4 due $5',
  '  $0',
]);

const TOLERANCE = block('tolerance', 'Limits of the house, built on a published set.', [
  `tolerance $1 from ${choiceAt(2, SETS)}`,
  '  power       $3',
  '  cylinder    $4',
  '  pd          $5',
  '  height      $6',
  '  $0',
]);

const DEFAULTS = block('defaults', 'What holds for every order of the file that does not say otherwise.', [
  'defaults',
  `  lens        ${choiceAt(1, MATERIALS)}`,
  `  supply      ${choiceAt(2, SUPPLIES)}`,
  '  $0',
]);

/** The reading that the order above calls for. It brings its own indent, so what stands before the word is taken off. */
function readingBlock(snapshot: Snapshot, order: Order, today: string): Offer[] {
  const lines = readingToFillIn(order, snapshot.context, today);
  if (lines === null) return [];
  return [block('reading', 'All that this order calls for and that was not read yet.', [lines.trimStart(), '    $0'])];
}

/**
 * The blocks that may be begun where the cursor stands. The reading is worked out from its order, which takes longer than
 * all else, so it is left out where another word is being typed.
 */
export function wholeBlocks(snapshot: Snapshot, cursor: Cursor, eyes: EyeNames, today: string): Offer[] {
  const { block: index, room, text, word, character } = cursor;
  const isReadingTyped = /^(?:r|$)/i.test(text.slice(word.start, character));
  const order = room === 'order' || room === 'reading' ? snapshot.block(index).order : null;
  const inOrder = order && isReadingTyped ? readingBlock(snapshot, order, today) : [];
  return [...inOrder, orderBlock(eyes), INSTRUMENT, TOLERANCE, DEFAULTS];
}
