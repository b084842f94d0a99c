/** Which alterations leave a plain accept that says something else than before. */
import { type Block, type BlockKind, type LentilDocument, parseDocument, parseLine } from '../../../grammar';
import { type Analysis, analyseDocument } from '../../../orders';
import { said } from '../../support/lines';
import type { Accepted } from './accepted';
import { figuresMoved } from './figures';
import { type Alteration, lettersAltered } from './letters';

/** An alteration with where it was made. */
export interface Altered extends Alteration {
  readonly of: Accepted;
  readonly document: LentilDocument;
  readonly block: Block['kind'];
  /** The first word of the line, by its usual spelling. */
  readonly head: string;
  /** Whether the line stands in a reading that a later one follows. */
  readonly isEarlier: boolean;
}

export const plain = ({ blocks }: Analysis): boolean => {
  const judged = blocks.flatMap(({ evaluation }) => evaluation ?? []);
  return judged.length > 0 && judged.every((one) => one.verdict === 'accept' && one.reservations.length === 0);
};

/** Every alteration of the letters and figures of an order, of its readings and of the lines above it. */
export function alterationsOf(of: Accepted, isNew: (line: string, block: Block['kind']) => boolean): Altered[] {
  const document = parseDocument(of.lines.join('\n'));
  const analysis = analyseDocument(document);
  const judged = analysis.blocks.find(({ evaluation }) => evaluation)?.evaluation;
  if (!judged) return [];
  return document.blocks.flatMap((block, index) =>
    block.lines.flatMap(({ text }, at) => {
      if (!isNew(text, block.kind)) return [];
      const line = (document.starts[index] as number) + at;
      const isEarlier =
        isBelowReading(block, at) && block.lines.slice(at).some((one) => /^\s*reading\b/.test(one.text));
      const head = parseLine(text, block.kind as BlockKind).node.head?.word ?? '';
      const where = { of, document, block: block.kind, head, isEarlier };
      return [...lettersAltered(text, line), ...figuresMoved(block, at, line, judged)].map((one) => ({
        ...one,
        ...where,
      }));
    }),
  );
}

const isBelowReading = ({ lines }: Block, at: number): boolean =>
  lines.slice(0, at + 1).some(({ text }) => /^\s*reading\b/.test(text));

export const afterwards = ({ document, line, before, after }: Altered): LentilDocument =>
  document.edit({ start: { line, character: 0 }, end: { line, character: before.length } }, after);

/** Whether nothing is asked although something else stands there. */
export function survives(one: Altered): boolean {
  const analysis = analyseDocument(afterwards(one));
  return plain(analysis) && !(one.how !== 'moved' && (isSaidAlike(one) || isSameThing(one, analysis)));
}

/** Another spelling of the same line. */
const isSaidAlike = ({ before, after, block }: Altered): boolean =>
  JSON.stringify(said(before, block as BlockKind)) === JSON.stringify(said(after, block as BlockKind));

/** Lines that only say what is ordered or what was read: two of them are alike where that is the same. */
const MEASURED = new Set(['R', 'L', 'both', 'add', 'prism', 'pd', 'height', 'clock', 'again', 'thinning']);

/** Another way to say the same: `add +2.00 engraved` and `add L +2.00 engraved` for one line for each eye. */
function isSameThing({ head, document }: Altered, after: Analysis): boolean {
  if (!MEASURED.has(head)) return false;
  return meaning(analyseDocument(document)) === meaning(after);
}

const meaning = ({ blocks }: Analysis): string =>
  JSON.stringify(
    blocks.map(({ order, evaluation }) => order && [{ ...order, readings: null }, evaluation?.values]),
    (key, value) => (['place', 'places', 'withPlace', 'named'].includes(key) ? undefined : value),
  );
