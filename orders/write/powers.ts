/** Powers, prisms, designs and materials as they stand in a line. */
import type { Eye } from '../../grammar';
import { type Power, type PrismVector, prismBeforeEye } from '../../optics';
import { materials } from '../../tables';
import { tidy } from '../exact';
import type { CylinderForm, Design, LensMaterial, PrismPart, Stated, TypedPower } from '../model';
import { decimal, dioptres, nameInText, plainly } from './figures';

const degrees = (axis: number): string => String(axis).padStart(3, '0');

/** `-4.50 -0.75 x 022`, or both meridians or drum positions where it was written so. */
export function powerInText(
  { sphere, cylinder, axis }: Power | TypedPower,
  form: CylinderForm | 'lines' = 'sphere',
): string {
  const along = axis ?? 180;
  const other = tidy(sphere + cylinder);
  if (form === 'meridians') {
    const across = along > 90 ? along - 90 : along + 90;
    return `${dioptres(sphere)} @ ${degrees(along)} / ${dioptres(other)} @ ${degrees(across)}`;
  }
  if (form === 'lines') return `lines ${dioptres(sphere)} / ${dioptres(other)} x ${degrees(along)}`;
  return tidy(cylinder) === 0 ? dioptres(sphere) : `${dioptres(sphere)} ${dioptres(cylinder)} x ${degrees(along)}`;
}

/** `2.00 BI 0.50 BU` before that eye; `0` where there is none. */
export function prismInText(prism: PrismVector, eye: Eye): string {
  const parts: readonly PrismPart[] = ['right', 'up'];
  return (
    partsInText(
      prism,
      eye,
      parts.filter((part) => tidy(prism[part]) !== 0),
    ) || '0'
  );
}

/** A measured prism, with every part that was read, also where it is 0. */
export function readPrismInText(prism: PrismVector, eye: Eye, unsaid?: PrismPart): string {
  if (unsaid) return partsInText(prism, eye, [unsaid === 'up' ? 'right' : 'up']);
  const isNone = tidy(prism.right) === 0 && tidy(prism.up) === 0;
  return isNone ? '0' : partsInText(prism, eye, ['right', 'up']);
}

function partsInText(prism: PrismVector, eye: Eye, parts: readonly PrismPart[]): string {
  const before = prismBeforeEye(prism, eye);
  const part = (amount: number, plus: string, minus: string): string =>
    `${decimal(Math.abs(amount), 2)} ${amount < 0 ? minus : plus}`;
  return parts.map((one) => (one === 'right' ? part(before.in, 'BI', 'BO') : part(before.up, 'BU', 'BD'))).join(' ');
}

/** The power, add and prism of a lens that is only stated. */
export function statedInText({ power, add, prism }: Stated, eye: Eye): string {
  const parts = [
    power && powerInText(power.value, power.form),
    add && `add ${dioptres(add.value)}`,
    prism && `prism ${prismInText(prism.value, eye)}`,
  ];
  return parts.filter(Boolean).join(' ');
}

export function designInText(design: Design): string {
  const { type, use, shape, width, depth, intermediate } = design;
  const size = width === null ? null : depth === null ? plainly(width) : `${plainly(depth)}x${plainly(width)}`;
  const middle = intermediate === null ? null : `intermediate ${dioptres(intermediate)}`;
  const figures = (['gap', 'corridor', 'degression', 'working'] as const).map((key) =>
    design[key] === null ? null : `${key} ${key === 'degression' ? decimal(design[key], 2) : plainly(design[key])}`,
  );
  return [type, use === 'intermediate' && middle ? null : use, shape, size, middle, ...figures]
    .filter(Boolean)
    .join(' ');
}

/** The name or the index, with the constants that the table does not already give for it. */
export function materialInText({ name, index, abbe, density, known }: LensMaterial): string {
  const table = materials.find(({ id }) => id === known);
  // A material may be known by the index that is written on it, which is not quite the one it has.
  const marked = name === null ? table?.spellings.find((spelling) => /^\d\.\d\d$/.test(spelling)) : undefined;
  const own = [
    index !== null && ((name ?? marked) === undefined || index !== table?.indexD.value)
      ? `index ${decimal(index, 2)}`
      : null,
    abbe !== null && abbe !== table?.abbe.value ? `abbe ${plainly(abbe)}` : null,
    density !== null && density !== table?.density.value ? `density ${plainly(density)}` : null,
  ];
  return [name === null ? marked : nameInText(name), ...own].filter(Boolean).join(' ');
}
