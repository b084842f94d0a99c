import { type ComputedLens, computeLens, type Eye, type Order } from '../../../orders';
import { layoutInWords, nearInWords, powerFiguresInWords } from './lens-words';
import { covers, listed, type Part, type Spot } from './part';

const EYES: readonly Eye[] = ['R', 'L'];

/** On a line of an order: what is worked out from it, and how. */
export function aboutOrder(spot: Spot): Part[] {
  const { analysis, line, node, character } = spot;
  const { order } = analysis;
  if (!order) return [];
  const lenses = EYES.flatMap((eye) => computeLens(order, eye) ?? []);
  if (node.kind === 'power') return lenses.flatMap((lens) => aboutPower(order, lens, line, character));
  const isInOrder = order.readings.every(({ place }) => line < place.line);
  if (!isInOrder || !node.head || covers(node.head, character) || character > spot.text.trimEnd().length) return [];
  const figures = FIGURES[keyOf(node)];
  if (!figures) return [];
  const span = { start: node.head.start, end: spot.text.trimEnd().length };
  return asFewAsNeeded(lenses.map((lens) => ({ eyes: lens.eye, words: figures(order, lens) }))).map(
    ({ eyes, words }) => ({ ...span, markdown: listed(`${eyes} lens`, words) }),
  );
}

interface Said {
  readonly eyes: string;
  readonly words: readonly string[];
}

/** What is the same for both lenses is said once. */
function asFewAsNeeded(said: readonly Said[]): Said[] {
  const [right, left] = said;
  const isSame = right && left && right.words.join() === left.words.join();
  const needed = isSame ? [{ eyes: 'R and L', words: right.words }] : said;
  return needed.filter(({ words }) => words.length > 0);
}

function aboutPower(order: Order, lens: ComputedLens, line: number, character: number): Part[] {
  const place = order.lenses[lens.eye].written?.place;
  if (place?.line !== line || !covers(place, character)) return [];
  const words = [...powerFiguresInWords(order, lens), ...nearInWords(order, lens), ...layoutInWords(order, lens)];
  return [{ start: place.start, end: place.end, markdown: listed(`${lens.eye} lens`, words) }];
}

const keyOf = (node: Spot['node']): string =>
  node.kind === 'settings' || node.kind === 'eye-figure' ? node.which : node.kind;

const FIGURES: Readonly<Record<string, (order: Order, lens: ComputedLens) => string[]>> = {
  add: nearInWords,
  frame: layoutInWords,
  pd: layoutInWords,
  height: layoutInWords,
  inset: layoutInWords,
  blank: layoutInWords,
};
