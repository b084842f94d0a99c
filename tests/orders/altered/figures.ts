/** Figures of an order or a reading moved by twice their tolerance and a hair. */
import type { Block } from '../../../grammar';
import type { Evaluation, Measure } from '../../../orders';
import type { Alteration } from './letters';

/** A figure of a line with the names that lead to it in the tree. */
export interface Found {
  readonly path: string;
  readonly start: number;
  readonly end: number;
  readonly value: number;
  readonly sign: string;
  readonly decimals: number;
}

/** Every figure of a tree. */
export function figuresIn(value: unknown, path = ''): Found[] {
  if (typeof value !== 'object' || value === null) return [];
  const part = value as Record<string, unknown>;
  if ('decimals' in part) return typeof part.value === 'number' ? [{ ...(part as unknown as Found), path }] : [];
  return Object.entries(part).flatMap(([key, it]) => figuresIn(it, /^\d+$/.test(key) ? path : `${path}.${key}`));
}

type Rule = readonly [line: RegExp, path: RegExp, quantities: readonly string[]];

/** Which measures a figure goes into; the largest of their limits is taken. */
const RULES: readonly Rule[] = [
  [/^(power|powers)$/, /\.power\.(sphere|thin|wide|first\.power|second\.power)$/, ['power']],
  [/^(power|powers)$/, /\.power\.cylinder$/, ['cylinder']],
  [/^(power|powers)$/, /\.power\.(axis|wheel)$/, ['axis']],
  [/^(power|powers|add)$/, /\.intermediate$/, ['intermediate', 'add']],
  [/^add$/, /\.(value|from|to)$/, ['add']],
  [/^(power|powers)$/, /\.add\.(value|from|to)$/, ['add']],
  [/^prism$/, /\.amount$/, ['prism', 'prism-horizontal', 'prism-vertical']],
  [/^pd$/, /\.distance\./, ['pd']],
  [/^pd$/, /\.near\./, ['near-pd', 'pd']],
  [/^centres$/, /\.distance\./, ['pd']],
  [/^eye-figure height$/, /\.value$/, ['height']],
  [/^eye-figure base-curve$/, /\.value$/, ['base-curve']],
  [/^settings thickness$/, /\.figure$/, ['centre-thickness']],
  [/^segment$/, /\.width$/, ['segment-width']],
  [/^segment$/, /\.tilt$/, ['segment-tilt']],
  [/^design$/, /\.width$/, ['segment-width']],
  [/^clock$/, /\.(distance|segment)$/, ['add']],
  [/^clock$/, /\.meridians\.power$/, ['warp']],
  [/^figure zero$/, /\.figure$/, ['power']],
];

/**
 * The tolerance of a figure as the set of the order has it, in the unit of the figure; null where it has none. Centres and
 * heights of weak lenses are limited by the prism they make: their tolerance is where the stronger lens makes as much.
 */
export function toleranceOf(kind: string, path: string, { measures }: Evaluation): number | null {
  const rule = RULES.find(([line, part]) => line.test(kind) && part.test(path));
  if (!rule) return null;
  const limits = (quantities: readonly string[], unit: string | null): number[] =>
    measures
      .filter((one) => quantities.includes(one.quantity) && (unit === null || one.unit === unit))
      .flatMap(({ limit }) => limit?.amount ?? []);
  const [quantities] = [rule[2]];
  const own = limits(quantities, /^(pd|centres|eye-figure height)$/.test(kind) ? 'mm' : null);
  if (own.length > 0) return Math.max(...own);
  if (/^(pd|centres)$/.test(kind)) return asPlace(limits(['prism', 'prism-horizontal', 'pd'], 'prism'), measures);
  if (kind === 'eye-figure height')
    return (
      max(limits(['height-difference'], 'mm')) ??
      asPlace(limits(['prism', 'prism-vertical', 'height-difference'], 'prism'), measures)
    );
  return null;
}

const max = (all: readonly number[]): number | null => (all.length === 0 ? null : Math.max(...all));

function asPlace(prism: readonly number[], measures: readonly Measure[]): number | null {
  const strongest = Math.max(
    ...measures.filter(({ quantity }) => quantity === 'power').map(({ ordered }) => Math.abs(ordered ?? 0)),
  );
  const most = max(prism);
  return most === null || !(strongest > 0) ? null : (10 * most) / strongest;
}

/** The name of a line: its kind, and which of its kind. */
export const kindOf = (node: { readonly kind: string }): string =>
  'which' in node && typeof node.which === 'string' && node.kind !== 'powers' && node.kind !== 'pd'
    ? `${node.kind} ${node.which}`
    : node.kind;

/** Every figure of one line moved both ways. */
export function figuresMoved(block: Block, at: number, line: number, judged: Evaluation): Alteration[] {
  const { text: before } = block.lines[at] as Block['lines'][number];
  const parsed = block.lines[at]?.parsed(block.kind);
  const kind = parsed ? kindOf(parsed.node) : '';
  return figuresIn(parsed?.node).flatMap((found) => {
    const tolerance = toleranceOf(kind, found.path, judged);
    if (tolerance === null) return [];
    const part = before.slice(found.start, found.end);
    return [1, -1].flatMap((way): Alteration[] => {
      const after = before.slice(0, found.start) + moved(found, way * tolerance * 2) + before.slice(found.end);
      return after === before ? [] : [{ line, before, after, part, start: found.start, how: 'moved' }];
    });
  });
}

/** An axis goes round; everything else keeps its sign as it was written, and a hair more is moved than twice. */
function moved({ path, value, sign, decimals }: Found, by: number): string {
  if (/\.(axis|wheel)$/.test(path))
    return String(((value + Math.sign(by) * Math.ceil(Math.abs(by) + 1) + 359) % 180) + 1).padStart(3, '0');
  const places = Math.max(decimals, /amount|power|add|value|zero/.test(path) ? 2 : 1);
  const far = Math.sign(by) * (Math.ceil(Math.abs(by) * 10 ** places) / 10 ** places + 10 ** -places);
  const next = value + far;
  const text = Math.abs(next).toFixed(places);
  return sign !== '' || next < 0 ? `${next < 0 ? '-' : '+'}${text}` : text;
}
