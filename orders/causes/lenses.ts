/** Slips that happen to one lens or in the same way to both. */
import type { Eye } from '../../grammar';
import type { Power } from '../../optics';
import { minusForm } from '../../optics';
import { attempt } from '../attempt';
import { tidy } from '../exact';
import type { FindingData } from '../finding';
import { EYES } from '../model';
import type { FigureQuantity, Read, ReadValues } from '../reduce';
import { type Demand, type Explanation, mayHold, setRight } from './explanation';
import { REFRACTION, readPower, type Scene, wantedPower } from './scene';

/** Both lenses, then each alone. */
const SIDES: readonly (readonly Eye[])[] = [EYES, ['R'], ['L']];

/**
 * The explanations of a slip that may have happened to both lenses or to one. Where both fit, one alone is not looked at:
 * it would only be half the matter.
 * Something has to have failed in each of them, unless the demand says otherwise.
 * @param values what would have been read without the slip in these lenses, or null where it cannot have happened
 */
export function inLenses(
  scene: Scene,
  values: (eyes: readonly Eye[]) => ReadValues | null,
  data: (eyes: readonly Eye[]) => FindingData,
  demand: Demand,
): Explanation[] {
  const found: Explanation[] = [];
  for (const eyes of SIDES) {
    const asked = { eyes, refractionOf: eyes, ...demand };
    const undone = mayHold(scene, asked) ? values(eyes) : null;
    const right = undone && setRight(scene, { values: undone }, asked);
    if (!right) continue;
    found.push({ ...right, eye: eyes.length === 1 ? (eyes[0] ?? null) : null, data: { eyes, ...data(eyes) } });
    if (eyes.length === 2) break;
  }
  return found;
}

/** The same for a slip that changes the power read. The message gets both powers of each lens. */
export function inPowers(
  scene: Scene,
  undo: (read: Power, eye: Eye) => Power | null,
  data: FindingData = {},
): Explanation[] {
  return inLenses(
    scene,
    (eyes) => withPowers(scene, eyes, undo),
    (eyes) => ({ lenses: eyes.map((eye) => readAndWanted(scene, eye)), ...data }),
    { of: REFRACTION },
  );
}

export interface ReadAndWanted {
  readonly eye: Eye;
  readonly read: Power;
  readonly wanted: Power;
}

export const readAndWanted = (scene: Scene, eye: Eye): ReadAndWanted => ({
  eye,
  read: readPower(scene, eye)?.value as Power,
  wanted: wantedPower(scene, eye) as Power,
});

function withPowers(
  scene: Scene,
  eyes: readonly Eye[],
  undo: (read: Power, eye: Eye) => Power | null,
): ReadValues | null {
  const { values } = scene;
  const [power, nearPower] = [{ ...values.power }, { ...values.nearPower }];
  for (const eye of eyes) {
    const read = readPower(scene, eye);
    if (!read || !wantedPower(scene, eye)) return null;
    const undone = mapped(read, (one) => {
      const other = undo(one, eye);
      return other && attempt(() => minusForm(other));
    });
    if (!undone) return null;
    if (read === values.power[eye]) power[eye] = undone;
    else nearPower[eye] = undone;
  }
  return { ...values, power, nearPower };
}

/** A read value and its repeats after a change; null where the change is not to be had. */
export function mapped<V>(read: Read<V>, change: (value: V) => V | null): Read<V> | null {
  const all = read.all.map(change);
  const value = change(read.value);
  return value === null || all.includes(null) ? null : { ...read, value, all: all as V[] };
}

/** Figures of one quantity changed in some lenses; null where one of them was not read. */
export function withFigures(
  values: ReadValues,
  quantity: FigureQuantity,
  eyes: readonly (Eye | 'pair')[],
  change: (value: number, side: Eye | 'pair') => number,
): ReadValues | null {
  const figures = { ...values.figures[quantity] };
  for (const side of eyes) {
    const read = figures[side];
    const undone = read && mapped(read, (value) => tidy(change(value, side)));
    if (!undone) return null;
    figures[side] = undone;
  }
  return { ...values, figures: { ...values.figures, [quantity]: figures } };
}
