/** Where everything on a pair stands, as ordered and as read. Millimetres from the middle of the bridge on the boxed centre line. */
import type { Eye } from '../../grammar';
import { outlinePoints } from '../../optics';
import { attempt } from '../attempt';
import { type Worked, type WorkedCode, workedLens } from '../computed';
import type { Evaluation } from '../evaluate';
import { tidy } from '../exact';
import { isProgressive, isSegmented } from '../lens-kinds';
import { distancesRead } from '../measures/places';
import type { Design, Distances, Order, OrderedLens, PerEye } from '../model';
import { placingPd } from '../placing-pd';
import { noValues, type ReadValues } from '../reduce';

/** As the examiner sees it: `right` to the examiner’s right, which is the wearer’s left; `up` upwards. */
export interface Spot {
  readonly right: number;
  readonly up: number;
}

/** What is placed in front of the eye. */
export type PointKind = 'optical-centre' | 'prism-point' | 'distance-centre' | 'fitting-point';

export interface LensScene {
  readonly eye: Eye;
  readonly lens: OrderedLens;
  readonly kind: PointKind;
  /** Everything worked out from the order for this lens. */
  readonly worked: readonly Worked[];
  /** Middle of the boxed lens. */
  readonly middle: Spot | null;
  /** Round the boxed lens, counter-clockwise; null where the effective diameter is not known or cannot be. */
  readonly outline: readonly Spot[] | null;
  readonly ordered: Spot | null;
  readonly read: Spot | null;
  /** The bare optical centre as spotted on the focimeter. */
  readonly spotted: Spot | null;
  /** The middle of the top of the segment. */
  readonly segment: { readonly design: Design; readonly ordered: Spot; readonly read: Spot | null } | null;
  /** The smallest blank, about the middle it is cut from. */
  readonly blank: { readonly middle: Spot; readonly diameter: number } | null;
}

export interface Scene {
  readonly order: Order;
  /** Boxed width, height, bridge; null where one of them is missing. */
  readonly frame: { readonly a: number; readonly b: number; readonly dbl: number } | null;
  readonly lenses: PerEye<LensScene>;
  readonly values: ReadValues;
  /** What could not be drawn, and why, one sentence each. */
  readonly missing: readonly string[];
}

export function sceneOf(order: Order, evaluation: Evaluation | null): Scene {
  const values = evaluation?.values ?? noValues();
  const { a, b, dbl } = order.frame;
  const frame = a && b && dbl ? { a: a.value, b: b.value, dbl: dbl.value } : null;
  const lenses = { R: lensScene('R', order, values, frame), L: lensScene('L', order, values, frame) };
  return { order, frame, lenses, values, missing: missingFrom(order, lenses, frame) };
}

/** Without a frame and without points before the eyes there is nothing to be seen from the front. */
export const isDrawable = ({ frame, lenses }: Pick<Scene, 'frame' | 'lenses'>): boolean =>
  frame !== null || lenses.R.ordered !== null || lenses.L.ordered !== null;

/** The direction in which an eye lies from the bridge, as the examiner sees it. */
export const sideOf = (eye: Eye): 1 | -1 => (eye === 'R' ? -1 : 1);

function lensScene(eye: Eye, order: Order, values: ReadValues, frame: Scene['frame']): LensScene {
  const lens = order.lenses[eye];
  const worked = workedLens(order, eye);
  const middle = frame && { right: sideOf(eye) * ((frame.dbl + frame.a) / 2), up: 0 };
  const ordered = orderedSpot(eye, order, worked, middle);
  const base = { eye, lens, kind: kindOf(lens), worked, middle, outline: outlineOf(order, middle) };
  return {
    ...base,
    ordered,
    read: readSpot(eye, order, values, ordered, frame),
    spotted: spottedSpot(eye, values, ordered),
    segment: segmentOf(eye, order, values, worked, middle, frame),
    blank: blankOf(eye, worked, middle),
  };
}

export function kindOf(lens: OrderedLens): PointKind {
  if (isProgressive(lens)) return 'fitting-point';
  if (isSegmented(lens)) return 'distance-centre';
  return lens.prism ? 'prism-point' : 'optical-centre';
}

/** A single figure among those worked out. */
export function workedNumber(worked: readonly Worked[], what: WorkedCode, name: string): number | null {
  const value = worked.find((one) => one.what === what)?.values[name]?.value;
  return typeof value === 'number' ? value : null;
}

const inwards = (from: Spot, eye: Eye, by: number): Spot => ({ ...from, right: tidy(from.right - sideOf(eye) * by) });

/** By the decentration where there is a frame; else before the eye, on the centre line. */
function orderedSpot(eye: Eye, order: Order, worked: readonly Worked[], middle: Spot | null): Spot | null {
  if (order.lenses[eye].role === 'absent') return null;
  const moved = workedNumber(worked, 'decentration', 'in');
  const up = workedNumber(worked, 'raise', 'up') ?? 0;
  if (middle && moved !== null) return { ...inwards(middle, eye, moved), up };
  const { of } = placingPd(order);
  const half = of[eye]?.value ?? (of.binocular && of.binocular.value / 2);
  return half === null ? null : { right: sideOf(eye) * half, up };
}

function readSpot(
  eye: Eye,
  order: Order,
  values: ReadValues,
  ordered: Spot | null,
  frame: Scene['frame'],
): Spot | null {
  if (!ordered) return null;
  const distances = distancesRead(order, values).find((one) => one?.[eye] || one?.pair);
  const right = placeRead(distances, eye, ordered.right, sumOf(placingPd(order).of));
  const height = isSegmented(order.lenses[eye]) ? null : heightRead(values, eye, frame);
  if (right === null && height === null) return null;
  return { right: right ?? ordered.right, up: height ?? ordered.up };
}

/** A sum that was read for both eyes says nothing of either, so half of its error is shown at each. */
function placeRead(
  read: ReadValues['figures']['pd'],
  eye: Eye,
  orderedRight: number,
  orderedSum: number | null,
): number | null {
  const own = read?.[eye]?.value;
  if (own !== undefined) return sideOf(eye) * own;
  const both = read?.pair?.value;
  if (both === undefined || orderedSum === null) return null;
  return tidy(orderedRight + (sideOf(eye) * (both - orderedSum)) / 2);
}

export const sumOf = ({ binocular, R, L }: Distances): number | null =>
  binocular?.value ?? (R && L ? tidy(R.value + L.value) : null);

function heightRead(values: ReadValues, eye: Eye, frame: Scene['frame']): number | null {
  const height = values.figures.height?.[eye]?.value;
  return frame && height !== undefined ? tidy(height - frame.b / 2) : null;
}

function spottedSpot(eye: Eye, values: ReadValues, ordered: Spot | null): Spot | null {
  const read = values.figures['optical-centres'];
  const own = read?.[eye]?.value ?? (read?.pair && read.pair.value / 2);
  return own === undefined ? null : { right: sideOf(eye) * own, up: ordered?.up ?? 0 };
}

function segmentOf(
  eye: Eye,
  order: Order,
  values: ReadValues,
  worked: readonly Worked[],
  middle: Spot | null,
  frame: Scene['frame'],
): LensScene['segment'] {
  const lens = order.lenses[eye];
  const below = workedNumber(worked, 'segment-drop', 'below');
  const moved = workedNumber(worked, 'total-inset', 'in') ?? workedNumber(worked, 'decentration', 'in');
  if (!middle || below === null || moved === null || !lens.design) return null;
  const ordered = { ...inwards(middle, eye, moved), up: -below };
  const right = placeRead(values.figures['near-pd'], eye, ordered.right, sumOf(order.nearPd));
  const up = heightRead(values, eye, frame);
  const isRead = right !== null || up !== null;
  const read = isRead ? { right: right ?? ordered.right, up: up ?? ordered.up } : null;
  return { design: lens.design.value, ordered, read };
}

/** The smallest blank counts the horizontal move alone, so its middle is shown on the centre line. */
function blankOf(eye: Eye, worked: readonly Worked[], middle: Spot | null): LensScene['blank'] {
  const diameter = workedNumber(worked, 'blank', 'diameter');
  const moved = workedNumber(worked, 'decentration', 'in');
  return middle && diameter !== null && moved !== null ? { middle: inwards(middle, eye, moved), diameter } : null;
}

function outlineOf({ frame: { a, b, ed } }: Order, middle: Spot | null): readonly Spot[] | null {
  if (!middle || !a || !b || !ed) return null;
  const shape = { a: a.value, b: b.value, ed: ed.value };
  const points = attempt(() => outlinePoints(shape, { right: 0, up: 0 }));
  if (!points) return null;
  return [...points]
    .sort((one, other) => Math.atan2(one.up, one.right) - Math.atan2(other.up, other.right))
    .map(({ right, up }) => ({ right: right + middle.right, up }));
}

function missingFrom(order: Order, lenses: PerEye<LensScene>, frame: Scene['frame']): string[] {
  const { a, b, dbl, ed } = order.frame;
  const given = { A: a, B: b, DBL: dbl };
  const lacking = Object.entries(given).flatMap(([name, value]) => (value ? [] : [name]));
  const all = [lenses.R, lenses.L].filter(({ lens }) => lens.role !== 'absent');
  if (!isDrawable({ frame, lenses })) return ['Neither a whole frame nor a PD is given, so the lenses are not drawn.'];
  return [
    lacking.length === 3 ? 'No frame given: only the points before the eyes are drawn.' : '',
    lacking.length > 0 && lacking.length < 3 ? `The frame lacks ${lacking.join(' and ')}, so it is not drawn.` : '',
    frame && !ed ? 'No ED given: the lenses are drawn as plain boxes, without a blank.' : '',
    frame && ed && all.some(({ outline }) => !outline) ? 'The ED does not fit A and B, so the boxes are drawn.' : '',
    all.some(({ ordered }) => !ordered) ? 'No PD given: the points before the eyes are not drawn.' : '',
    frame && all.some(({ lens }) => !lens.height)
      ? 'No height given: what has no height is drawn on the centre line.'
      : '',
  ].filter(Boolean);
}
