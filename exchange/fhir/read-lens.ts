/** One lens specification. Whatever could be taken for another lens is refused, never guessed. */
import type { Eye } from '../../orders';
import { oneLine } from '../../orders/write';
import { checkedFigure, powerProblem } from '../parts/checked';
import { isDesign } from '../parts/design-words';
import type { PartCode } from '../parts/part';
import { inWords, isList, isNumber, isObject, type Json, type JsonObject } from '../safe-json';
import { LENS_EXTENSIONS, PRODUCT_CODES } from './codes';
import { readExtensions } from './read-extensions';
import { NotTaken, type Taking } from './taking';

/** Elements that only a contact lens has. */
const CONTACT = ['power', 'backCurve', 'diameter', 'duration'];

const KNOWN = new Set([
  'id',
  'product',
  'eye',
  'sphere',
  'cylinder',
  'axis',
  'prism',
  'add',
  'note',
  'extension',
  'color',
  'brand',
]);

/** Takes what is said of one lens, and returns its eye. */
export function readLens(lens: Json, path: string, taking: Taking): Eye {
  if (!isObject(lens)) throw new NotTaken('a lens specification is not an object');
  if (lens.modifierExtension !== undefined)
    throw new NotTaken('a lens specification says that something unknown here changes its meaning');
  refuseContact(lens);
  const eye = eyeOf(lens.eye);
  readPower(lens, eye, path, taking);
  readPrisms(lens.prism, eye, path, taking);
  readProduct(lens.product, eye, path, taking);
  for (const key of ['color', 'brand']) {
    if (lens[key] === undefined) continue;
    taking.note(`${key} ${inWords(lens[key])}`);
    taking.lose(`${path}${key} ${inWords(lens[key])}`, 'as-words', eye);
  }
  readNotes(lens.note, eye, path, taking);
  readExtensions(lens.extension, path, eye, LENS_EXTENSIONS, taking);
  taking.rest(lens, path, KNOWN, eye);
  return eye;
}

function refuseContact(lens: JsonObject): void {
  const coding = isObject(lens.product) && isList(lens.product.coding) ? lens.product.coding : [];
  const isContact = coding.some((one) => isObject(one) && one.system === PRODUCT_CODES && one.code === 'contact');
  if (isContact || CONTACT.some((key) => lens[key] !== undefined))
    throw new NotTaken('it is a contact lens, not a spectacle lens');
}

function eyeOf(eye: Json): Eye {
  if (eye === 'right') return 'R';
  if (eye === 'left') return 'L';
  throw new NotTaken(eye === undefined ? 'a lens is specified for no eye' : `there is no eye called ${inWords(eye)}`);
}

function readPower(lens: JsonObject, eye: Eye, path: string, taking: Taking): void {
  const values = new Map<PartCode, number>();
  for (const code of ['sphere', 'cylinder', 'axis', 'add'] as const) {
    const value = figureOf(lens[code], code, `${path}${code}`, eye, taking);
    if (value !== undefined) values.set(code, value);
  }
  const problem = powerProblem(values);
  if (problem) throw new NotTaken(problem);
  const isSphere = !values.get('cylinder');
  if (isSphere && values.has('axis')) {
    // The axis of no cylinder says nothing; one without any cylinder may belong to a figure that was left out.
    if (!values.has('cylinder')) taking.lose(`${path}axis ${inWords(lens.axis)}`, 'unclear', eye);
    values.delete('axis');
  }
  for (const [code, value] of values) taking.fact(code, eye, value);
}

function figureOf(value: Json, code: PartCode, path: string, eye: Eye, taking: Taking): number | undefined {
  if (value === undefined) return undefined;
  if (!isNumber(value)) throw new NotTaken(`${code.replaceAll('-', ' ')} ${inWords(value)} is not a number`);
  const checked = checkedFigure(code, value.value);
  if ('error' in checked) throw new NotTaken(checked.error);
  if (checked.rounded && code === 'axis') throw new NotTaken(`axis ${value.value} is not a whole number of degrees`);
  if (checked.rounded) taking.lose(`${path} ${value.value}`, 'rounded', eye);
  return checked.value;
}

const BASES: Readonly<Record<string, readonly [code: 'prism-in' | 'prism-up', sign: 1 | -1]>> = {
  in: ['prism-in', 1],
  out: ['prism-in', -1],
  up: ['prism-up', 1],
  down: ['prism-up', -1],
};

/** Entries are components: one along the horizontal and one along the vertical. */
function readPrisms(list: Json, eye: Eye, path: string, taking: Taking): void {
  if (list === undefined) return;
  const seen = new Set<PartCode>();
  for (const [at, prism] of (isList(list) ? list : [list]).entries()) {
    if (!isObject(prism)) throw new NotTaken('a prism is not an object');
    const base = typeof prism.base === 'string' && Object.hasOwn(BASES, prism.base) ? BASES[prism.base] : undefined;
    if (!base) throw new NotTaken(`there is no prism base called ${inWords(prism.base ?? 'nothing')}`);
    const [code, sign] = base;
    const where = `${path}prism[${at}].`;
    const amount = figureOf(prism.amount, code, `${where}amount`, eye, taking);
    if (amount === undefined) throw new NotTaken('a prism has no amount');
    if (amount < 0) throw new NotTaken(`a prism of ${amount} has a sign beside its base`);
    if (seen.has(code)) throw new NotTaken('two prisms along the same direction stand for one eye');
    seen.add(code);
    taking.fact(code, eye, sign * amount);
    taking.rest(prism, where, new Set(['id', 'amount', 'base']), eye);
  }
}

/** The words of a product are taken as the design where they read as one, else as a note. */
function readProduct(product: Json, eye: Eye, path: string, taking: Taking): void {
  if (!isObject(product)) return;
  const { coding, text } = product;
  for (const one of isList(coding) ? coding : []) {
    const isLens = isObject(one) && one.system === PRODUCT_CODES && one.code === 'lens';
    if (!isLens) taking.lose(`${path}product.coding ${inWords(one)}`, 'no-place', eye);
  }
  taking.rest(product, `${path}product.`, new Set(['id', 'coding', 'text']), eye);
  if (typeof text !== 'string' || text.trim() === '') return;
  if (isDesign(text)) taking.design(eye, oneLine(text));
  else {
    taking.note(text);
    taking.lose(`${path}product.text ${inWords(text)}`, 'as-words', eye);
  }
}

function readNotes(list: Json, eye: Eye, path: string, taking: Taking): void {
  if (list === undefined) return;
  for (const [at, one] of (isList(list) ? list : [list]).entries()) {
    const where = `${path}note[${at}]`;
    if (!isObject(one) || typeof one.text !== 'string') {
      taking.lose(`${where} ${inWords(one)}`, 'no-place', eye);
      continue;
    }
    taking.note(one.text);
    taking.rest(one, `${where}.`, new Set(['id', 'text']), eye);
  }
}
