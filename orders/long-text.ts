/** A text that is judged block by block and never held as a document: a year of work in one file. */
import { type Block, blockAt, type Cuts, cutsOf, type LentilDocument, textAt } from '../grammar';
import { analyseTogether, type BlockAnalysis } from './analysis';
import { type Choices, type Context, contextFrom, contributes, contributionOf, contributorsOf } from './context';
import { sharedNamesIn } from './order-names';

/** A text cut into blocks, with what holds for all of them. */
export interface LongText {
  readonly cuts: Cuts;
  /** The blocks that others may rest on, by their number. Findings ask whether a block is the very one that holds. */
  readonly holding: ReadonlyMap<number, Block>;
  readonly sharedNames: ReadonlyMap<string, number>;
}

/** Cuts a text and finds what holds for all of it. */
export function longText(text: string): LongText {
  const cuts = cutsOf(text);
  return { cuts, holding: holdingIn(cuts), sharedNames: sharedNamesIn(cuts) };
}

/** Of blocks that say the same thing only the first holds; an order is looked into only for the standard of the file. */
function holdingIn(cuts: Cuts): ReadonlyMap<number, Block> {
  const holding = new Map<number, Block>();
  let hasStandard = false;
  for (const [at, kind] of cuts.kinds.entries()) {
    if (kind === 'order' && (hasStandard || !/standard/i.test(textAt(cuts, at)))) continue;
    const block = blockAt(cuts, at);
    const contribution = contributionOf(block);
    if (!contributes(contribution)) continue;
    holding.set(at, block);
    hasStandard ||= contribution.standards.length > 0;
  }
  return holding;
}

/** The context of such a text; see `contextOf`. */
export function contextOfText(
  { holding, sharedNames }: Omit<LongText, 'cuts'>,
  choices: Choices,
  shared: readonly LentilDocument[],
): Context {
  const sources = shared.map((document) => contributorsOf(document).map(({ block }) => block));
  return contextFrom([[...holding.values()], ...sources], choices, sharedNames);
}

/** The analysis of a block, with the number of its first line in the file, counted from 0. */
export interface PlacedAnalysis {
  readonly analysis: BlockAnalysis;
  readonly firstLine: number;
}

/** Blocks that are analysed together; see `analyseTogether`. */
const LOT = 16;

/**
 * The analyses of the blocks of a text or of a part of it, each lot made when it is asked for.
 * @param first number of the part’s first block in the whole text
 */
export function* analysesIn(
  cuts: Cuts,
  holding: LongText['holding'],
  context: Context,
  first = 0,
): Generator<PlacedAnalysis> {
  const { firstLines } = cuts;
  for (let from = 0; from < firstLines.length; from += LOT) {
    const lot: Block[] = [];
    for (let at = from; at < Math.min(from + LOT, firstLines.length); at++)
      lot.push(holding.get(first + at) ?? blockAt(cuts, at));
    for (const [at, analysis] of analyseTogether(lot, context).entries())
      yield { analysis, firstLine: firstLines[from + at] as number };
  }
}
