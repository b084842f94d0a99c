/** Lines of a reading with places left open, and the figures to expect in them. */
import type { Eye } from '../grammar';
import { type Power, prismBeforeEye } from '../optics';
import { drumFromFront, workedLens } from './computed';
import { roundTo, tidy } from './exact';
import { isOffice } from './lens-kinds';
import { powerAtReference } from './measures/power';
import { orderedPrism } from './measures/wanted-prism';
import type { Distances, Order, OrderedLens } from './model';
import { axisFigures, figure, prismAsTyped, signed } from './words';

/** A place in a line where something is still to be written. */
export interface Blank {
  readonly what: 'date' | 'instrument' | 'value';
  /** What a lens that is exactly as ordered shows, as it is typed; null where the order does not say enough. */
  readonly expected: string | null;
  /** Names to choose from, none where anything may stand. */
  readonly choices: readonly string[];
}

/** One line to be filled in: text and places in the order in which they stand, and a remark for the end of the line. */
export interface LineToTake {
  readonly parts: readonly (string | Blank)[];
  /** Without the mark of a comment; null where there is nothing to say. */
  readonly comment: string | null;
}

export const blank = (expected: string | null): Blank => ({ what: 'value', expected, choices: [] });

/** A line in text. `fill` says what stands in each place; without it the places stay empty. */
export function lineToTakeInText({ parts, comment }: LineToTake, fill: (place: Blank) => string = () => ''): string {
  const line = parts.map((part) => (typeof part === 'string' ? part : fill(part))).join('');
  return comment === null ? line.trimEnd() : `${line.trimEnd()}  # ${comment}`;
}

const expecting = (parts: LineToTake['parts'], words: string | null, how: string | null = null): LineToTake => {
  const comment = [how, words === null ? null : `expect ${words}`].filter((one) => one !== null).join('; ');
  return { parts, comment: comment === '' ? null : comment };
};

/** The power of one lens: both drum positions and the wheel, or the figures of an instrument that shows them. */
export function powerLine(order: Order, lens: OrderedLens, isDrum: boolean): LineToTake {
  const made = powerAtReference(order, lens);
  const where = isOffice(lens) ? ' at near-point' : '';
  if (made === null || made === 'unstated') return { parts: [lens.eye, ' ', blank(null), where], comment: null };
  return powerParts(lens.eye, made, isDrum, where);
}

/** The top of an office lens is weaker than its near point by the degression. */
export function topLine(order: Order, lens: OrderedLens, degression: number, isDrum: boolean): LineToTake {
  const near = powerAtReference(order, lens);
  if (near === null || near === 'unstated') return { parts: [lens.eye, ' ', blank(null), ' at top'], comment: null };
  return powerParts(lens.eye, { ...near, sphere: tidy(near.sphere - degression) }, isDrum, ' at top');
}

function powerParts(eye: Eye, { sphere, cylinder, axis }: Power, isDrum: boolean, where: string): LineToTake {
  const thin = signed(sphere);
  if (tidy(cylinder) === 0) return expecting([eye, ' ', blank(thin), where], thin);
  const wheel = axisFigures(axis);
  if (!isDrum) {
    const parts = [eye, ' ', blank(thin), ' ', blank(signed(cylinder)), ' x ', blank(wheel), where];
    return expecting(parts, `${thin} ${signed(cylinder)} x ${wheel}`);
  }
  const wide = signed(sphere + cylinder);
  const parts = [eye, ' lines ', blank(thin), ' / ', blank(wide), ' x ', blank(wheel), where];
  return expecting(parts, `thin lines ${thin}, wide lines ${wide}, wheel ${wheel}`);
}

/** The add of a progressive stands on the lens; that of a segment is the way of the drum with the front on the stop. */
export function addLine(
  order: Order,
  lens: OrderedLens,
  add: number,
  { isEngraved, intermediate }: { readonly isEngraved: boolean; readonly intermediate: number | null },
): LineToTake {
  const { eye } = lens;
  const between = intermediate === null ? [] : [' intermediate ', blank(signed(intermediate))];
  if (isEngraved) return expecting([`add ${eye} `, blank(signed(add)), ' engraved', ...between], signed(add));
  const [from, to] = drumPositions(order, lens, add);
  const parts = [`add ${eye} `, blank(from), ' -> ', blank(to), ' front-vertex', ...between];
  const positions = from && to ? `${from} -> ${to} on the thin lines` : `an add of ${signed(add)}`;
  return expecting(parts, `${positions}${ringOf(order, eye)}`, 'front surface on the stop');
}

/** Through the body of the lens where the order says enough for it, else as for a thin lens. */
function drumPositions(order: Order, lens: OrderedLens, add: number): readonly [string | null, string | null] {
  const worked = drumFromFront(order, lens.eye)?.values;
  const [from, to] = [worked?.distanceThin?.value, worked?.segmentThin?.value];
  if (typeof from === 'number' && typeof to === 'number') return [signed(roundTo(from, 2)), signed(roundTo(to, 2))];
  const made = powerAtReference(order, lens);
  if (made === null || made === 'unstated') return [null, null];
  return [signed(made.sphere), signed(made.sphere + add)];
}

function ringOf(order: Order, eye: Eye): string {
  const ring = workedLens(order, eye).find(({ what }) => what === 'ring-in-segment')?.values.ring?.value;
  return typeof ring === 'number' ? `, target on ring ${figure(roundTo(ring, 2))} in the segment` : '';
}

export function prismLine(order: Order, eyes: readonly Eye[], where: string): LineToTake {
  const expected = eyes.map((eye) => prismAsTyped(prismBeforeEye(orderedPrism(order, eye), eye)));
  const parts = eyes.flatMap((eye, at) => [`${at === 0 ? 'prism ' : '  '}${eye} `, blank(expected[at] ?? null)]);
  return expecting([...parts, where], eyes.map((eye, at) => `${eye} ${expected[at]}`).join(', '));
}

/** Distances for the eyes asked for, where each is ordered by itself, or else the one of the pair. */
export interface Asked {
  readonly of: Distances;
  readonly eyes: readonly Eye[];
}

export function pdLine(distance: Asked | null, near: Asked | null): LineToTake {
  const [far, close] = [distance && lengths(distance), near && lengths(near)];
  const parts = ['pd ', ...(far?.parts ?? []), ...(close ? [far ? ' near ' : 'near ', ...close.parts] : [])];
  const words = [far?.words, close && `near ${close.words}`].filter(Boolean).join(', ');
  return expecting(parts, words);
}

function lengths({ of, eyes }: Asked): { readonly parts: LineToTake['parts']; readonly words: string } {
  const own = eyes.filter((eye) => of[eye]);
  if (own.length === 0 || (own.length < eyes.length && of.binocular)) {
    const expected = of.binocular ? millimetres(of.binocular.value) : null;
    return { parts: [blank(expected)], words: expected ?? 'as ordered' };
  }
  const expected = own.map((eye) => millimetres(of[eye]?.value ?? 0));
  const parts = own.flatMap((eye, at) => [`${at === 0 ? '' : '  '}${eye} `, blank(expected[at] ?? null)]);
  return { parts, words: own.map((eye, at) => `${eye} ${expected[at]}`).join(' ') };
}

/** One figure for each eye: `height R … L …`. */
export function eyeLine(
  word: string,
  figures: readonly { readonly eye: Eye; readonly expected: string }[],
): LineToTake {
  const parts = figures.flatMap(({ eye, expected }, at) => [`${at === 0 ? `${word} ` : '  '}${eye} `, blank(expected)]);
  return expecting(parts, figures.map(({ eye, expected }) => `${eye} ${expected}`).join(', '));
}

/** `thickness R centre … L centre …`, each figure with the word that says where. */
export function thicknessLine(
  figures: readonly {
    readonly eye: Eye;
    readonly where: string;
    readonly expected: string | null;
    readonly bound: boolean;
  }[],
): LineToTake {
  let last: Eye | null = null;
  const parts = figures.flatMap(({ eye, where, expected }) => {
    const before = eye === last ? ' ' : `${last ? '  ' : 'thickness '}${eye} `;
    last = eye;
    return [`${before}${where} `, blank(expected)];
  });
  const words = figures.map(({ eye, where, expected, bound }) =>
    expected === null
      ? `${eye} ${where}, no least is ordered`
      : `${eye} ${where} ${bound ? 'at least ' : ''}${expected}`,
  );
  return expecting(parts, words.join(', '));
}

export const millimetres = (value: number): string => String(roundTo(value, 2));
