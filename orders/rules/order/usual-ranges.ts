/** Between which values the figures of an order usually lie, and why a figure beyond them is looked at twice. */
import { resultant } from '../../../optics';
import { attempt } from '../../attempt';
import { isLess } from '../../exact';
import type { Order, OrderedLens, Placed } from '../../model';

export interface UsualRange {
  readonly what: string;
  readonly unit: 'D' | 'mm' | 'deg' | 'prism' | '';
  readonly least: number;
  readonly most: number;
  /** What else the figure may be, as the end of a sentence. */
  readonly reason: string;
}

export interface Found extends UsualRange {
  readonly value: Placed<number>;
}

/** The bounds are common practice, no source, except the add, which exam pages give as up to 4.00. */
const LENS: readonly (UsualRange & { readonly of: (lens: OrderedLens) => Placed<number> | null })[] = [
  {
    what: 'sphere',
    unit: 'D',
    least: -20,
    most: 20,
    reason: 'a point may have slipped by one place',
    of: ({ written }) => written && { value: written.value.sphere, place: written.place },
  },
  {
    what: 'cylinder',
    unit: 'D',
    least: -8,
    most: 8,
    reason: 'it may be the wide-line position instead of the difference',
    of: ({ written }) => written && { value: written.value.cylinder, place: written.place },
  },
  {
    what: 'add',
    unit: 'D',
    least: 0.5,
    most: 4,
    reason: 'it may be the near power instead of the add',
    // A negative add is told by itself.
    of: ({ add }) => (add && add.value < 0 ? null : add),
  },
  {
    what: 'prism',
    unit: 'prism',
    least: 0,
    most: 12,
    reason: 'a point may be missing',
    of: ({ prism }) => {
      const amount = prism && attempt(() => resultant(prism.value).amount);
      return prism && amount !== null ? { value: amount, place: prism.place } : null;
    },
  },
  {
    what: 'base curve',
    unit: 'D',
    least: 0,
    most: 12,
    reason: 'it may be a radius',
    of: ({ baseCurve }) => baseCurve,
  },
  {
    what: 'centre thickness',
    unit: 'mm',
    least: 0.8,
    most: 15,
    reason: 'a lens thinner than that breaks, and a thicker one is hardly worn',
    of: ({ thickness }) => thickness.centre,
  },
  {
    what: 'edge thickness',
    unit: 'mm',
    least: 0.5,
    most: 15,
    reason: 'an edge thinner than that chips, and a thicker one fits no rim',
    of: ({ thickness }) => thickness.edge,
  },
  {
    what: 'blank',
    unit: 'mm',
    least: 45,
    most: 90,
    reason: 'blanks are made between 50 and 85',
    of: ({ blank }) => blank,
  },
  { what: 'inset', unit: 'mm', least: -1, most: 6, reason: 'it may be that of both eyes', of: ({ inset }) => inset },
  {
    what: 'index',
    unit: '',
    least: 1.45,
    most: 1.95,
    reason: 'no spectacle lens is made of such a material',
    of: ({ material }) =>
      material?.value.index == null ? null : { value: material.value.index, place: material.place },
  },
  {
    what: 'segment width',
    unit: 'mm',
    least: 12,
    most: 50,
    reason: 'the cross between depth and width may be missing',
    of: ({ design }) => (design?.value.width == null ? null : { value: design.value.width, place: design.place }),
  },
  {
    what: 'corridor',
    unit: 'mm',
    least: 6,
    most: 22,
    reason: 'it may be the fitting height',
    of: ({ design }) => (design?.value.corridor == null ? null : { value: design.value.corridor, place: design.place }),
  },
];

const ORDER: readonly (UsualRange & { readonly of: (order: Order) => Placed<number> | null })[] = [
  {
    what: 'lens width A',
    unit: 'mm',
    least: 25,
    most: 75,
    reason: 'it may be the frame front',
    of: ({ frame }) => frame.a,
  },
  { what: 'lens height B', unit: 'mm', least: 14, most: 70, reason: 'it may be the width', of: ({ frame }) => frame.b },
  {
    what: 'DBL',
    unit: 'mm',
    least: 8,
    most: 30,
    reason: 'it may be the temple or the width',
    of: ({ frame }) => frame.dbl,
  },
  {
    what: 'vertex distance worn',
    unit: 'mm',
    least: 5,
    most: 25,
    reason: 'lashes and nose leave room for little else',
    of: ({ asWorn }) => asWorn.vertex,
  },
  {
    what: 'vertex distance of the refraction',
    unit: 'mm',
    least: 5,
    most: 25,
    reason: 'lashes and nose leave room for little else',
    of: ({ tested }) => tested,
  },
  {
    what: 'tilt',
    unit: 'deg',
    least: -5,
    most: 25,
    reason: 'ears stand where they stand',
    of: ({ asWorn }) => asWorn.panto,
  },
  {
    what: 'wrap',
    unit: 'deg',
    least: -5,
    most: 30,
    reason: 'even sports frames bend no more',
    of: ({ asWorn }) => asWorn.wrap,
  },
];

/** The figures of one lens that lie outside their usual range, with that range. */
export const unusualOfLens = (lens: OrderedLens): readonly Found[] => unusual(LENS, lens);

/** The figures of the whole order that lie outside their usual range, with that range. */
export const unusualOfOrder = (order: Order): readonly Found[] => unusual(ORDER, order);

function unusual<S>(
  ranges: readonly (UsualRange & { readonly of: (source: S) => Placed<number> | null })[],
  source: S,
): readonly Found[] {
  const found: Found[] = [];
  for (const range of ranges) {
    const value = range.of(source);
    if (!value || !(isLess(value.value, range.least) || isLess(range.most, value.value))) continue;
    const { what, unit, least, most, reason } = range;
    found.push({ what, unit, least, most, reason, value });
  }
  return found;
}
