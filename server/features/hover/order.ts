import { sectionsOf } from '../../../grammar';
import {
  type Eye,
  type Order,
  type Worked,
  type WorkedCode,
  workedInWords,
  workedLens,
  workedPair,
} from '../../../orders';
import { contentEnd } from '../lines';
import { figuresOfLine, OF_POWER, OVERVIEW } from './order-figures';
import { covers, listed, type Part, type Spot } from './part';

const EYES: readonly Eye[] = ['R', 'L'];

/** On a line of an order: what is worked out from it, and how; at the order’s name a short overview. */
export function aboutOrder(spot: Spot): Part[] {
  const { analysis, line, node, character, text } = spot;
  const { order, block } = analysis;
  const section = sectionsOf(block)[line]?.kind;
  if (!order || !node.head || (section !== 'body' && section !== 'header')) return [];
  if (node.kind === 'power') return EYES.flatMap((eye) => aboutPower(order, eye, line, character));
  const span = { start: node.head.start, end: contentEnd(text) };
  if (covers(node.head, character) || character > span.end) return [];
  const figures = node.kind === 'order' ? overview(order) : workings(order, figuresOfLine(node));
  return figures.map((markdown) => ({ ...span, markdown }));
}

function aboutPower(order: Order, eye: Eye, line: number, character: number): Part[] {
  const place = order.lenses[eye].written?.place;
  if (place?.line !== line || !covers(place, character)) return [];
  const words = chosen(workedLens(order, eye), OF_POWER).map(withWay);
  return words.length > 0 ? [{ start: place.start, end: place.end, markdown: listed(`${eye} lens`, words) }] : [];
}

/** Each lens and the pair, every figure with its formula and inputs. */
const workings = (order: Order, codes: readonly WorkedCode[]): string[] =>
  codes.length === 0 ? [] : lists(order, codes, withWay);

const overview = (order: Order): string[] => lists(order, OVERVIEW, alone);

function lists(order: Order, codes: readonly WorkedCode[], say: (one: Worked) => string): string[] {
  const said = EYES.map((eye) => ({ of: `${eye} lens`, words: chosen(workedLens(order, eye), codes).map(say) }));
  const pair = chosen(workedPair(order), codes);
  const ofPair = { of: 'pair', words: pair.map((one) => `${one.eye ? `${one.eye} ` : ''}${say(one)}`) };
  return [...asFewAsNeeded(said), ofPair]
    .filter(({ words }) => words.length > 0)
    .map(({ of, words }) => listed(of, words));
}

interface Said {
  readonly of: string;
  readonly words: readonly string[];
}

/** What is the same for both lenses is said once. */
function asFewAsNeeded(said: readonly Said[]): readonly Said[] {
  const [right, left] = said;
  const isSame = right && left && right.words.join('\n') === left.words.join('\n');
  return isSame ? [{ of: 'R and L lens', words: right.words }] : said;
}

/** In the order in which they are asked for. */
const chosen = (figures: readonly Worked[], codes: readonly WorkedCode[]): Worked[] =>
  codes.flatMap((code) => figures.filter((one) => one.what === code));

function withWay(one: Worked): string {
  const { how } = workedInWords(one);
  return `${alone(one)}: ${how}`;
}

function alone(one: Worked): string {
  const { title, value } = workedInWords(one);
  return `${title} \`${value}\``;
}
