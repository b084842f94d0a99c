import type { Eye } from '../../../grammar';
import type { Power } from '../../../optics';
import { isLess, isSame, roundTo } from '../../exact';
import { carriedToWear, usePower } from '../../power-to-make';
import { powerInWords } from '../../words';
import type { Rule } from '../rule';
import { madeLenses } from './lenses';
import { lineBelow } from './line-below';

/** Half an eighth: less than that no bench would make another lens for. */
const MATTERS = 0.06;

interface Converted {
  readonly eye: Eye;
  readonly written: Power;
  readonly converted: Power;
}

export const compensationUnsaid: Rule = {
  code: 'compensation-unsaid',
  family: 'order',
  level: 'error',
  page: {
    checks:
      'Both vertex distances are given, that of the refraction and that of wear, they change the power by 0.06 D or more, and nothing says whether the written power has been converted already.',
    why: 'Converted twice or not at all, the lens is wrong by the same amount, and every reading will agree with the slip.',
    example: { wrong: 'tested vertex 12', right: 'compensation vertex' },
    fix: 'Says that the power still has to be converted, or that this was done.',
    source:
      '20/20, “the real details of vertex, tilt and wrap”, part two. The power by the vergence formula; the bound of 0.06 D is ours.',
  },
  message: ({ tested, worn, powers }) =>
    `Tested at ${tested} mm, worn at ${worn} mm: is the power converted already? ${(powers as readonly Converted[])
      .map(({ eye, written, converted }) => `${eye} ${powerInWords(written)} would become ${powerInWords(converted)}`)
      .join('; ')}.`,
  fixes: (site) => [
    lineBelow(site, 'It still has to be converted', 'compensation vertex'),
    lineBelow(site, 'It is converted already', 'compensation done'),
  ],
  needs: 'vertex',
  check: ({ order }, report) => {
    const { tested, asWorn, compensation } = order;
    const worn = asWorn.vertex;
    if (!tested || !worn || compensation || isSame(tested.value, worn.value)) return;
    const powers = madeLenses(order).flatMap((lens): Converted[] => {
      const byUse = lens.verification ? null : usePower(lens);
      const [written, converted] = [byUse?.power, byUse && carriedToWear(order, lens, byUse)];
      return written && converted && differs(written, converted)
        ? [{ eye: lens.eye, written, converted: rounded(converted) }]
        : [];
    });
    if (powers.length > 0)
      report(tested.place, { tested: tested.value, worn: worn.value, powers }, { related: [worn.place] });
  },
};

/** Whether either principal power changes by what matters. */
const differs = (written: Power, converted: Power): boolean =>
  !isLess(
    Math.max(
      Math.abs(written.sphere - converted.sphere),
      Math.abs(written.sphere + written.cylinder - converted.sphere - converted.cylinder),
    ),
    MATTERS,
  );

const rounded = ({ sphere, cylinder, axis }: Power): Power => ({
  sphere: roundTo(sphere, 2),
  cylinder: roundTo(cylinder, 2),
  axis,
});
