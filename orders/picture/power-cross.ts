/** The power of one lens as a cross of its two meridians: ordered in full lines, read in broken ones. */
import { type MeridianPower, type Power, principalMeridians } from '../../optics';
import { attempt } from '../attempt';
import { axisFigures, powerInWords, signed } from '../words';
import { type Drawing, label, line } from './drawing';
import { element, type Markup, together } from './markup';
import type { LensScene, Scene } from './scene';

const WIDTH = 480;
const HEIGHT = 250;
const RADIUS = 76;
const [X, Y] = [WIDTH / 2, HEIGHT / 2];

export function powerCross(one: LensScene, { values }: Scene): Drawing {
  const [ordered, read] = [orderedPower(one), values.power[one.eye]?.value ?? null];
  const content = together(
    element('circle', { class: 'dial', cx: X, cy: Y, r: RADIUS }),
    Array.from({ length: 12 }, (_, step) => tick(step * 30)),
    label(24, 24, 'start', 'eye', one.eye),
    ordered ? meridians(ordered, 'ordered', []) : label(X, Y + 5, 'middle', 'said', 'no power to show'),
    read ? meridians(read, 'read', labelled(ordered)) : label(X, HEIGHT - 6, 'middle', 'said', 'not read'),
  );
  return { width: WIDTH, height: HEIGHT, content };
}

/** The power that the finished lens is held against. */
export function orderedPower({ worked }: LensScene): Power | null {
  const value = worked.find(({ what }) => what === 'power-to-make')?.values.power?.value;
  return value !== undefined && typeof value === 'object' && 'sphere' in value ? value : null;
}

function tick(degrees: number): Markup {
  const [inner, outer] = [at(degrees, RADIUS - 5), at(degrees, RADIUS)];
  return line(inner.x, inner.y, outer.x, outer.y, 'tick');
}

function at(degrees: number, radius: number): { readonly x: number; readonly y: number } {
  const angle = (degrees * Math.PI) / 180;
  return { x: X + radius * Math.cos(angle), y: Y - radius * Math.sin(angle) };
}

/** Where the lines of a power are labelled: at their upper ends. */
const labelled = (power: Power | null): readonly number[] => {
  const both = power && power.cylinder !== 0 ? attempt(() => principalMeridians(power)) : null;
  return both ? both.map(({ meridian }) => meridian) : [90];
};

/** @param taken directions at which other labels stand already; none for the power that is drawn first */
function meridians(power: Power, kind: 'ordered' | 'read', taken: readonly number[]): Markup | null {
  const both = attempt(() => principalMeridians(power));
  if (!both) return null;
  if (power.cylinder === 0) {
    const [ends, y] = kind === 'ordered' ? [[90, 180], Y - RADIUS - 12] : [[45, 135], Y + RADIUS + 20];
    const words = `${kind === 'read' ? 'read ' : ''}${signed(power.sphere)} in every meridian`;
    return element(
      'g',
      { class: `meridian ${kind}` },
      (ends as readonly number[]).map(spoke),
      label(X, y as number, 'middle', 'figure', words),
    );
  }
  return element(
    'g',
    { class: `meridian ${kind}` },
    both.map((one) => named(one, kind, taken)),
  );
}

function spoke(degrees: number): Markup {
  const [from, to] = [at(degrees, RADIUS), at(degrees + 180, RADIUS)];
  return line(from.x, from.y, to.x, to.y, 'spoke');
}

function named({ power, meridian }: MeridianPower, kind: 'ordered' | 'read', taken: readonly number[]): Markup {
  const end = at(freer([meridian, meridian + 180], taken), RADIUS + 12);
  const anchor = Math.abs(end.x - X) < 20 ? 'middle' : end.x > X ? 'start' : 'end';
  // Towards the top and the bottom of the dial the text stands clear of it.
  const drop = 5 - ((Y - end.y) / RADIUS) * 6;
  const words = `${kind === 'read' ? 'read ' : ''}${signed(power)} @ ${axisFigures(meridian)}`;
  return together(spoke(meridian), label(end.x, end.y + drop, anchor, 'figure', words));
}

/** Of the two ends of a line the one that is farther from every other label. */
function freer([first, second]: readonly [number, number], taken: readonly number[]): number {
  const room = (end: number): number => Math.min(180, ...taken.map((other) => turn(end, other)));
  return room(second) > room(first) ? second : first;
}

/** Between two directions, the short way round. */
const turn = (one: number, other: number): number => 180 - Math.abs(180 - (Math.abs(one - other) % 360));

export function crossInWords(one: LensScene, { values }: Scene): string {
  const [ordered, read] = [orderedPower(one), values.power[one.eye]?.value];
  return [
    ordered ? `Ordered ${powerInWords(ordered)}.` : 'No power ordered that could be shown.',
    read ? `Read ${powerInWords(read)}.` : 'Not read.',
  ].join(' ');
}
