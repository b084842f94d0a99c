/** How figures are spelled, and what each spelling is taken as. Spelling only: no limits, no optics. */
import type { IToken } from 'chevrotain';
import { endOf } from './tokens';
import type { Figure, Problem } from './tree';

/** What a figure stands for decides how it may be spelled. */
export type FigureUse = 'power' | 'add' | 'length' | 'distance' | 'prism' | 'plain' | 'difference';

export type Tell = (problem: Problem) => void;

const TYPOGRAPHIC_MINUS = /^[\u2010-\u2015\u2212\uFE63\uFF0D]/;
const WIDE = /[\uFF0B\uFF0D-\uFF0E\uFF0C\uFF10-\uFF19]/;

/** Two digits without a point that are as likely hundredths as whole dioptres. */
const EIGHTH_OR_QUARTER = new Set(['12', '25', '37', '50', '62', '75', '87']);

/** Beyond this no spectacle lens is made; a figure read as hundredths is refused above it. */
const LARGEST_POWER = 40;

interface Spelling {
  readonly sign: '' | '+' | '-';
  /** Digits with a point, without sign. */
  readonly digits: string;
}

function spellingOf(image: string): Spelling {
  const plain = WIDE.test(image) ? image.normalize('NFKC') : image;
  const first = plain[0] as string;
  const sign = first === '+' ? '+' : first === '-' || TYPOGRAPHIC_MINUS.test(first) ? '-' : '';
  return { sign, digits: (sign === '' ? plain : plain.slice(1)).replace(',', '.') };
}

const negate = (sign: string, value: number): number => (sign === '-' && value !== 0 ? -value : value);

/** Turns a figure token into a value, telling whatever the next person could misread. */
export function readFigure(token: IToken, use: FigureUse, tell: Tell, apart: IToken | null = null): Figure {
  const own = spellingOf(token.image);
  const sign = apart ? (spellingOf(`${apart.image}0`).sign as Figure['sign']) : own.sign;
  const start = apart ? apart.startOffset : token.startOffset;
  const end = endOf(token);
  const point = own.digits.indexOf('.');
  const decimals = point < 0 ? 0 : own.digits.length - point - 1;
  const place = { start, end };
  if (use === 'distance' && isMaybePair(token.image)) {
    tell({ code: 'pair-unclear', ...place });
    return { value: null, sign, decimals, start, end };
  }

  if (WIDE.test(token.image)) tell({ code: 'wide-characters', ...place });
  else {
    if (TYPOGRAPHIC_MINUS.test(apart ? apart.image : token.image)) tell({ code: 'typographic-sign', ...place });
    if (token.image.includes(',')) tell({ code: 'decimal-comma', ...place });
  }
  if (point === 0 || (point >= 0 && decimals === 0))
    tell({ code: 'bare-point', ...place, data: { digits: own.digits } });

  const plain = Number(point === own.digits.length - 1 ? own.digits.slice(0, -1) : own.digits);
  let value: number | null = negate(sign, plain);
  if (use === 'power' || use === 'add') value = readDioptres(own.digits, sign, plain, use, place, tell);
  else if ((use === 'length' || use === 'distance') && sign === '-') {
    tell({ code: 'length-negative', ...place });
    value = null;
  }
  return { value, sign, decimals, start, end };
}

/** `63,60`: a decimal comma, or two distances? Only a second part that could be a distance raises the question. */
const isMaybePair = (image: string): boolean => /^\d\d,(?:[2-7]\d|8[0-5])$/.test(image);

function readDioptres(
  digits: string,
  sign: Figure['sign'],
  plain: number,
  use: 'power' | 'add',
  place: { start: number; end: number },
  tell: Tell,
): number | null {
  if (use === 'power' && sign === '' && plain !== 0) {
    tell({ code: 'sign-missing', ...place });
    return null;
  }
  if (digits.includes('.') || plain === 0) {
    if (plain > LARGEST_POWER) return refuse(place, tell, plain);
    return negate(sign, plain);
  }
  if (digits.length === 1) {
    tell({ code: 'whole-dioptres', ...place });
    return negate(sign, plain);
  }
  if (digits.length === 2) {
    if (EIGHTH_OR_QUARTER.has(digits) || digits.startsWith('0')) {
      tell({ code: 'point-ambiguous', ...place, data: { sign, digits } });
      return null;
    }
    if (plain > LARGEST_POWER) return refuse(place, tell, plain);
    tell({ code: 'whole-dioptres', ...place });
    return negate(sign, plain);
  }
  const hundredths = plain / 100;
  if (hundredths > LARGEST_POWER) return refuse(place, tell, hundredths);
  tell({ code: 'point-missing', ...place, data: { sign, value: hundredths } });
  return negate(sign, hundredths);
}

function refuse(place: { start: number; end: number }, tell: Tell, value: number): null {
  tell({ code: 'power-implausible', ...place, data: { value, largest: LARGEST_POWER } });
  return null;
}

/** An axis is a whole number from 1 to 180; 0 is written 180. */
export function readAxis(token: IToken, tell: Tell): Figure {
  const { sign, digits } = spellingOf(token.image);
  const place = { start: token.startOffset, end: endOf(token) };
  const value = Number(digits);
  const figure = { ...place, sign, decimals: digits.includes('.') ? digits.length - digits.indexOf('.') - 1 : 0 };
  if (sign !== '' || !Number.isInteger(value) || digits.includes('.') || value > 180) {
    tell({ code: 'axis-range', ...place, data: { digits: token.image } });
    return { ...figure, value: null };
  }
  if (value === 0) {
    tell({ code: 'axis-zero', ...place });
    return { ...figure, value: 180 };
  }
  if (digits.length < 3) tell({ code: 'axis-short', ...place, data: { digits: digits.length, value } });
  return { ...figure, value };
}
