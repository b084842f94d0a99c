/** How figures are spelled, and what each spelling is taken as. Spelling only: no limits, no optics. */
import type { IToken } from 'chevrotain';
import { endOf, TOUCHING } from './tokens';
import type { Figure, Problem } from './tree';

/** What a figure stands for decides how it may be spelled. */
export type FigureUse = 'power' | 'add' | 'length' | 'prism' | 'plain' | 'difference';

export type Tell = (problem: Problem) => void;

/** A sign with a blank behind it, and the word that stands before it. */
export interface ApartSign {
  readonly sign: IToken;
  /** The word before the sign, or null when a figure or nothing stands there. */
  readonly after: string | null;
}

const PLAIN = /^[-+]?\d+(?:\.\d+)?$/;
const TYPOGRAPHIC_MINUS = /^[\u2010-\u2015\u2212\uFE63\uFF0D]/;
const WIDE = /[\uFF0B\uFF0C-\uFF0E\uFF10-\uFF19]/;

/** Two digits without a point that are as likely hundredths as whole dioptres. */
const EIGHTH_OR_QUARTER = new Set(['12', '25', '37', '50', '62', '75', '87']);

/** Beyond this no spectacle lens is made, in dioptres or prism dioptres; a figure read as hundredths is refused above it. */
const LARGEST_POWER = 40;

/**
 * Turns a figure token into a value. At most one thing is told of one figure: what keeps it from being taken, else what
 * was guessed, else how it is spelled.
 */
export function readFigure(token: IToken, use: FigureUse, tell: Tell, apart: ApartSign | null = null): Figure {
  const { image } = token;
  const plain = PLAIN.test(image) ? image : normal(image);
  const first = apart ? normal(`${apart.sign.image}0`)[0] : plain[0];
  const sign: Figure['sign'] = first === '-' ? '-' : first === '+' ? '+' : '';
  const start = apart ? apart.sign.startOffset : token.startOffset;
  const end = endOf(token);
  const digits = apart || sign === '' ? plain : plain.slice(1);
  const point = digits.indexOf('.');
  const decimals = point < 0 ? 0 : digits.length - point - 1;
  const amount = Number(digits);

  const doubt = doubtOf(token, digits, sign, amount, use);
  if (doubt?.refused) {
    tell({ code: doubt.code, start, end, ...(doubt.data ? { data: doubt.data } : {}) });
    return { value: null, sign, decimals, start, end };
  }
  if (apart) tell({ code: 'sign-apart', start, end, data: { sign, after: apart.after } });
  else if (doubt) tell({ code: doubt.code, start, end, ...(doubt.data ? { data: doubt.data } : {}) });
  else if (plain !== image) tellSpelling(image, start, end, tell);
  const value = doubt?.value ?? amount;
  return { value: sign === '-' && value !== 0 ? -value : value, sign, decimals, start, end };
}

/** A figure as its value is said, for one that needs no digits. */
export const zeroAt = (token: IToken): Figure => ({
  value: 0,
  sign: '',
  decimals: 0,
  start: token.startOffset,
  end: endOf(token),
});

interface Doubt {
  readonly code: string;
  /** Not taken: its value stays unknown. */
  readonly refused: boolean;
  /** What it is taken as, when that is not what the digits say. */
  readonly value?: number;
  readonly data?: Readonly<Record<string, unknown>>;
}

const refused = (code: string, data?: Doubt['data']): Doubt => ({ code, refused: true, ...(data ? { data } : {}) });

function doubtOf(token: IToken, digits: string, sign: Figure['sign'], amount: number, use: FigureUse): Doubt | null {
  if (token.payload === TOUCHING) return refused('figures-touch');
  if (use === 'length') return sign === '-' ? refused('length-negative') : null;
  if (use === 'prism') return amount > LARGEST_POWER ? implausible(amount, 'prism') : null;
  if (use !== 'power' && use !== 'add') return null;
  if (amount === 0) return null;
  if (use === 'power' && sign === '') return refused('sign-missing');
  if (digits.includes('.')) return amount > LARGEST_POWER ? implausible(amount) : null;
  if (digits.length > 2) {
    const hundredths = amount / 100;
    if (hundredths > LARGEST_POWER) return implausible(hundredths);
    return { code: 'point-missing', refused: false, value: hundredths, data: { sign, value: hundredths } };
  }
  if (digits.length === 2 && (EIGHTH_OR_QUARTER.has(digits) || digits.startsWith('0')))
    return refused('point-ambiguous', { sign, digits });
  return amount > LARGEST_POWER ? implausible(amount) : { code: 'whole-dioptres', refused: false };
}

const implausible = (value: number, of: 'power' | 'prism' = 'power'): Doubt =>
  refused('power-implausible', { value, largest: LARGEST_POWER, of });

/** Sign, digits and point as a plain keyboard has them, and no digit left out on either side of the point. */
function normal(image: string): string {
  const narrow = WIDE.test(image) ? image.normalize('NFKC') : image;
  return narrow
    .replace(TYPOGRAPHIC_MINUS, '-')
    .replace(',', '.')
    .replace(/^([-+]?)\./, '$10.')
    .replace(/\.$/, '.0');
}

function tellSpelling(image: string, start: number, end: number, tell: Tell): void {
  if (WIDE.test(image)) tell({ code: 'wide-characters', start, end });
  else if (TYPOGRAPHIC_MINUS.test(image)) tell({ code: 'typographic-sign', start, end });
  else if (image.includes(',')) tell({ code: 'decimal-comma', start, end });
  else tell({ code: 'bare-point', start, end, data: { digits: image.replace(/^[-+]/, '') } });
}

/** An axis is a whole number from 1 to 180; 0 is written 180. */
export function readAxis(token: IToken, tell: Tell): Figure {
  const { image, startOffset: start } = token;
  const end = endOf(token);
  const digits = WIDE.test(image) ? image.normalize('NFKC') : image;
  const value = Number(digits);
  if (!/^\d+$/.test(digits) || value > 180) {
    tell({ code: 'axis-range', start, end, data: { digits: image } });
    return { value: null, sign: '', decimals: 0, start, end };
  }
  if (value === 0) tell({ code: 'axis-zero', start, end });
  else if (digits.length < 3) tell({ code: 'axis-short', start, end, data: { digits: digits.length, value } });
  else if (digits !== image) tell({ code: 'wide-characters', start, end });
  return { value: value === 0 ? 180 : value, sign: '', decimals: 0, start, end };
}
