import type { Fix } from '../../finding';
import { type FixSite, type Rule, replace, typed } from '../rule';
import { standsAlone, touchesFigure } from './line-edits';

export const barePoint: Rule = {
  code: 'bare-point',
  family: 'writing',
  level: 'hint',
  page: {
    checks: 'A decimal point has no digit before it or none behind it.',
    why: 'A point at the edge of a figure is easily overlooked: +.50 then reads as 50, and -2. runs into the next figure.',
    example: { wrong: 'R +.50 -.75 x 022', right: 'R +0.50 -0.75 x 022' },
    fix: 'Writes the zero before the point, or the decimals behind it.',
    source: 'Common practice, no source.',
  },
  message: ({ digits }) =>
    String(digits).endsWith('.') ? 'A digit is missing behind the point.' : 'A zero is missing before the point.',
  fixes: bothSides,
};

function bothSides(site: FixSite): readonly Fix[] {
  if (touchesFigure(site)) return [];
  const figure = typed(site);
  const text = figure.endsWith('.') ? withDecimals(figure) : figure.replace(/[.,](?=\d)/, '0$&');
  return [replace(site, `Write ${text}`, text, standsAlone(site))];
}

/** No dioptre of two digits goes without a sign, so an unsigned one is a length and needs no decimals. */
const withDecimals = (figure: string): string => (/^\d\d/.test(figure) ? figure.slice(0, -1) : `${figure}00`);
