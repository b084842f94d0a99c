import type { Fix } from '../../finding';
import { type FixSite, type Rule, replace, typed } from '../rule';

export const cylinderMissing: Rule = {
  code: 'cylinder-missing',
  family: 'writing',
  level: 'error',
  page: {
    checks: 'A power has an axis and only one figure before it.',
    why: 'Either the sphere is missing and the figure is the cylinder, or the axis has no cylinder to turn. On a prescription, “- / -0.75 / 27” means no sphere; on a spoiled form the cylinder itself was lost.',
    example: { wrong: 'R - 0.75 x 027', right: 'R plano -0.75 x 027' },
    fix: 'Two fixes: the figure is the cylinder and the sphere is plano, or the figure is the sphere and there is no axis.',
    source:
      'A retailer’s page on filling in a prescription, and a wearer’s weblog about a retest at an optician (2009): cylinder and axis go together.',
  },
  message: () => 'There is an axis, but only one figure before it. Is the sphere missing, or the cylinder?',
  fixes: bothReadings,
};

const PARTS = /^(?<label>\p{L}+\.?\s*)?(?<power>.*?)[\s/,;()]*(?<axis>(?:x|×|х|axis|ax|@)\s*\d.*)$/iu;
const FIGURE =
  /(?<sign>[-+\u2010-\u2015\u2212\uFE63\uFF0B\uFF0D])?\s*(?<digits>[\d.,\uFF0E\uFF10-\uFF19]+)[\s\p{L}]*$/u;

function bothReadings(site: FixSite): readonly Fix[] {
  const parts = PARTS.exec(typed(site))?.groups;
  const figure = FIGURE.exec(parts?.power ?? '')?.groups;
  if (!parts || !figure) return [];
  const power = `${figure.sign ?? ''}${figure.digits}`;
  const asSphere = replace(site, `It is the sphere, without an axis: write ${power} DS`, `${power} DS`, false);
  if (parts.label || !/[1-9\uFF11-\uFF19]/.test(power)) return [asSphere];
  const whole = `plano ${power} ${parts.axis}`;
  return [replace(site, `It is the cylinder, without a sphere: write ${whole}`, whole, false), asSphere];
}
