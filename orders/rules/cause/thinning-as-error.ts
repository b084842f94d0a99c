import type { PrismVector } from '../../../optics';
import { type Explanation, setRight } from '../../causes/explanation';
import { mapped } from '../../causes/lenses';
import type { Scene } from '../../causes/scene';
import { isLess, isWithin, tidy } from '../../exact';
import { unwantedIn } from '../../measures/wanted-prism';
import { EYES, type PerEye } from '../../model';
import type { Read } from '../../reduce';
import { amountInWords } from '../../words';
import { cause } from './cause';

export const thinningAsError = cause(
  'thinning-as-error',
  {
    checks:
      'Both lenses have the same vertical prism beyond the ordered one, or one of them alone lacks the thinning that was ordered. Level: info.',
    why: 'Makers thin progressives and full-width segments by equal prism in both lenses. It does not part the eyes and is no error, unless it was refused; in one lens alone it parts them by its whole amount. Common practice is to ask the maker how much was ground, and for a single lens to state the thinning of the one that stays.',
    example: { wrong: 'prism R 1.50 BD L 1.50 BD', right: 'prism R 0 L 0' },
    source: 'Laboratory training page “neutralizing progressives with prism thinning” (expertoptics.com).',
  },
  ({ by, missing }) =>
    missing
      ? `The ${missing} lens reads ${amountInWords(Number(by), 'prism')} less thinning than was ordered, and the other one has it: thinned in one lens only.`
      : `Both lenses read the same ${amountInWords(Number(by), 'prism')} base ${Number(by) > 0 ? 'up' : 'down'} beyond the ordered prism: this looks like thinning.`,
  (scene) => {
    const read = { R: scene.values.prism.R, L: scene.values.prism.L };
    return read.R && read.L ? [...inBoth(scene, read as PerEye<Read<PrismVector>>), ...inOne(scene)] : [];
  },
);

/** Prism dioptres: less is the scatter of a reading, and equal is equal as a target is read. Common practice, no source. */
const LEAST = 0.5;
const ALIKE = 0.25;

function inBoth(scene: Scene, read: PerEye<Read<PrismVector>>): Explanation[] {
  const [R, L] = EYES.map((eye) => unwantedIn(read[eye].value, scene.order, eye).up) as [number, number];
  if (R * L <= 0 || !isWithin(R - L, ALIKE) || isLess(Math.min(Math.abs(R), Math.abs(L)), LEAST)) return [];
  const by = tidy(Math.abs(R) < Math.abs(L) ? R : L);
  return undone(scene, { R: -by, L: -by }).map((right) => ({ ...right, eye: null, data: { by, missing: null } }));
}

function inOne(scene: Scene): Explanation[] {
  return EYES.flatMap((eye) => {
    const by = scene.order.lenses[eye].thinning?.value ?? 0;
    if (isLess(Math.abs(by), LEAST)) return [];
    return undone(scene, { [eye]: by }).map((right) => ({ ...right, eye, data: { by, missing: eye } }));
  });
}

function undone(scene: Scene, shift: Partial<PerEye<number>>): NonNullable<ReturnType<typeof setRight>>[] {
  const prism = { ...scene.values.prism };
  for (const eye of EYES) {
    const read = prism[eye] && mapped(prism[eye], ({ right, up }) => ({ right, up: tidy(up + (shift[eye] ?? 0)) }));
    if (read) prism[eye] = read;
  }
  const right = setRight(scene, { values: { ...scene.values, prism } }, { of: ['prism', 'prism-vertical'] });
  return right ? [right] : [];
}
