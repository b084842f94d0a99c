/** Both lenses to scale as the wearer is seen from the front, what was ordered and what was read over each other. */

import type { Eye } from '../../grammar';
import { EYES } from '../model';
import { amountInWords } from '../words';
import { workedInWords } from '../worked-words';
import { type Drawing, label, line, orderedMark, readMark, SCALE, spottedMark } from './drawing';
import { heightLengths, pdLengths, widthLengths } from './lengths';
import { element, type Markup, together } from './markup';
import type { Plane } from './plane';
import { type LensScene, type Scene, type Spot, sideOf } from './scene';
import { segmentPaths } from './segment-shape';

/** Room beside and above the boxes for lengths and their figures, units. */
const BESIDE = 190;
const ABOVE = 96;
const BELOW = 118;
/** What is shown of the wearer where there is no frame, millimetres. */
const BARE = { half: 50, height: 24 };

export function frontView(scene: Scene, id: string): Drawing {
  const size = sizeOf(scene);
  const plane: Plane = {
    x: (right) => size.width / 2 + right * SCALE,
    y: (up) => size.middle - up * SCALE,
  };
  const lenses = EYES.map((eye) => scene.lenses[eye]);
  const content = together(
    datum(scene, plane),
    lenses.map((lens) => blankCircle(lens, plane)),
    lenses.map((lens) => lensBody(lens, scene, plane, id)),
    widthLengths(scene, plane),
    pdLengths(scene, plane),
    EYES.map((eye) => heightLengths(scene, eye, plane)),
    lenses.map((lens) => marks(lens, plane)),
    scene.frame ? null : label(size.width / 2, size.height - 16, 'middle', 'said', 'no frame given'),
  );
  return { width: size.width, height: size.height, content };
}

/** The boxed centre line, just beyond the boxes, so that it crosses no figure. */
function datum({ frame }: Scene, { x, y }: Plane): Markup {
  const half = frame ? frame.dbl / 2 + frame.a + 2 : BARE.half;
  return line(x(-half), y(0), x(half), y(0), 'datum');
}

function sizeOf({ frame, lenses }: Scene): { width: number; height: number; middle: number } {
  const half = frame ? frame.dbl / 2 + frame.a : BARE.half;
  const high = frame ? frame.b / 2 : BARE.height / 2;
  const blanks = EYES.flatMap((eye) => {
    const { blank } = lenses[eye];
    return blank ? [{ aside: Math.abs(blank.middle.right) + blank.diameter / 2, high: blank.diameter / 2 }] : [];
  });
  const aside = Math.max(half * SCALE + BESIDE / 2 + 10, ...blanks.map((one) => one.aside * SCALE + 6));
  const above = Math.max(high * SCALE + ABOVE, ...blanks.map((one) => one.high * SCALE + 6));
  const below = Math.max(high * SCALE + BELOW, ...blanks.map((one) => one.high * SCALE + 6));
  return { width: 2 * aside, height: above + below, middle: above };
}

function blankCircle({ blank, eye }: LensScene, { x, y }: Plane): Markup | null {
  if (!blank) return null;
  const { middle, diameter } = blank;
  return element('circle', {
    class: `blank ${eye}`,
    cx: x(middle.right),
    cy: y(middle.up),
    r: (diameter / 2) * SCALE,
  });
}

function lensBody(one: LensScene, scene: Scene, plane: Plane, id: string): Markup {
  const { eye, middle, outline, lens } = one;
  const { frame } = scene;
  if (!frame || !middle) return eyeName(one, plane, (sideOf(eye) * BARE.half) / 2, BARE.height / 2);
  const clip = `${id}-outline-${eye}`;
  const shape = outline ? pathOf(outline, plane) : null;
  const box = {
    x: plane.x(middle.right - frame.a / 2),
    y: plane.y(frame.b / 2),
    width: frame.a * SCALE,
    height: frame.b * SCALE,
  };
  const isMade = lens.role !== 'absent';
  return element(
    'g',
    { class: `lens ${eye}` },
    element(
      'clipPath',
      { id: clip },
      shape ? element('path', { d: shape }) : element('rect', { ...box, class: 'clip' }),
    ),
    shape && isMade ? element('path', { class: 'glass', d: shape }) : null,
    element('rect', { class: 'box', ...box }),
    line(plane.x(middle.right) - 7, plane.y(0), plane.x(middle.right) + 7, plane.y(0), 'boxed-middle'),
    line(plane.x(middle.right), plane.y(0) - 7, plane.x(middle.right), plane.y(0) + 7, 'boxed-middle'),
    element('g', { 'clip-path': `url(#${clip})` }, segment(one, plane)),
    isMade ? movedIn(one, plane, frame.b / 2) : null,
    eyeName(one, plane, middle.right + (sideOf(eye) * frame.a) / 2, frame.b / 2),
  );
}

const pathOf = (points: readonly Spot[], { x, y }: Plane): string =>
  `M${points.map(({ right, up }) => `${x(right).toFixed(2)} ${y(up).toFixed(2)}`).join('L')}Z`;

function segment({ segment: found, lens, eye }: LensScene, plane: Plane): Markup | null {
  if (!found) return null;
  const draw = (spot: Spot, kind: 'ordered' | 'read'): Markup[] =>
    segmentPaths(lens).map((d) =>
      element('path', {
        class: `segment ${kind} ${eye}`,
        d,
        transform: `translate(${plane.x(spot.right).toFixed(2)} ${plane.y(spot.up).toFixed(2)})`,
      }),
    );
  return together(draw(found.ordered, 'ordered'), found.read ? draw(found.read, 'read') : null);
}

/** The decentration from the boxed centre, as its own figure says it. */
function movedIn({ worked, middle, ordered, eye }: LensScene, plane: Plane, top: number): Markup | null {
  const moved = worked.find(({ what }) => what === 'decentration');
  if (!moved || !middle || !ordered) return null;
  const y = plane.y(top) + 24;
  const outer = sideOf(eye) < 0 ? Math.min(middle.right, ordered.right) : Math.max(middle.right, ordered.right);
  const words = workedInWords(moved).value;
  return element(
    'g',
    { class: 'length plain' },
    line(plane.x(middle.right), y - 5, plane.x(middle.right), y + 5, 'end'),
    line(plane.x(ordered.right), y - 5, plane.x(ordered.right), y + 5, 'end'),
    line(plane.x(middle.right), y, plane.x(ordered.right), y, 'run'),
    label(plane.x(outer) + sideOf(eye) * 8, y + 5, sideOf(eye) < 0 ? 'end' : 'start', 'figure', words),
  );
}

const ROLES: Readonly<Record<LensScene['lens']['role'], string>> = {
  made: '',
  balance: ' balance',
  kept: ' kept',
  absent: ' not ordered',
};

function eyeName({ eye, lens }: LensScene, { x, y }: Plane, right: number, up: number): Markup {
  const side = sideOf(eye);
  return label(x(right), y(up) - 12, side < 0 ? 'start' : 'end', 'eye', `${eye}${ROLES[lens.role]}`);
}

function marks({ ordered, read, spotted, eye }: LensScene, { x, y }: Plane): Markup {
  return together(
    ordered ? orderedMark(x(ordered.right), y(ordered.up), eye) : null,
    read ? readMark(x(read.right), y(read.up), eye) : null,
    spotted ? spottedMark(x(spotted.right), y(spotted.up), eye) : null,
  );
}

const POINTS = {
  'optical-centre': 'optical centre',
  'prism-point': 'point of the ordered prism',
  'distance-centre': 'distance centre',
  'fitting-point': 'fitting point',
} as const;

/** What the marks stand for, in the words of this job. */
export const pointInWords = ({ kind }: LensScene): string => POINTS[kind];

/** Where the points stand, in words, for those who cannot see the picture. */
export function frontViewInWords({ frame, lenses, missing }: Scene): string {
  const seen = 'The wearer is seen from the front, so that the right eye is on the left.';
  const size = frame ? `Boxed lens ${frame.a} by ${frame.b} mm, ${frame.dbl} mm between the lenses.` : '';
  return [seen, size, ...EYES.map((eye) => lensInWords(lenses[eye], eye)), ...missing].filter(Boolean).join(' ');
}

function lensInWords(one: LensScene, eye: Eye): string {
  const { ordered, read, segment: part, blank } = one;
  if (!ordered) return one.lens.role === 'absent' ? `${eye}: not ordered.` : '';
  const parts = [
    `${pointInWords(one)} ordered ${spotInWords(ordered)}`,
    read ? `read ${spotInWords(read)}` : 'not read',
    part ? `top of the segment ordered ${spotInWords(part.ordered)}` : '',
    part?.read ? `read ${spotInWords(part.read)}` : '',
    blank ? `smallest blank ${amountInWords(blank.diameter, 'mm')}` : '',
  ];
  return `${eye}: ${parts.filter(Boolean).join(', ')}.`;
}

const spotInWords = ({ right, up }: Spot): string => {
  const level = up === 0 ? 'on the centre line' : `${amountInWords(up, 'mm')} ${up > 0 ? 'above' : 'below'} it`;
  return `${amountInWords(right, 'mm')} from the middle of the bridge, ${level}`;
};
