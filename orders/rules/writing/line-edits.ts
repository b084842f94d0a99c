/** What several fixes of this family do to the text of a line. */
import { opensBlock, parseLine } from '../../../grammar';
import type { Edit, Fix } from '../../finding';
import { type FixSite, replace } from '../rule';

/** A hyphen or any of the dashes that are typed for a minus. */
export const MINUS = /^[-\u2010-\u2015\u2212\uFE63\uFF0D]/;

const FIGURE_END = /[\d.,\uFF0C\uFF0E\uFF10-\uFF19]+$/;
const PART_OF_FIGURE = /[\d.,\uFF0C\uFF0E\uFF10-\uFF19]/;
const PART_OF_WORD = /[\p{L}\d]/u;

const lineOf = ({ finding, lines }: FixSite): string => lines[finding.line] ?? '';

/** The text of the line in front of the finding. */
export const textBefore = (site: FixSite): string => lineOf(site).slice(0, site.finding.start);

/** The text of the line behind the finding. */
export const textAfter = (site: FixSite): string => lineOf(site).slice(site.finding.end);

/** Whether a further figure runs into the one the finding covers, so that adding a digit would change both. */
export const touchesFigure = (site: FixSite): boolean =>
  PART_OF_FIGURE.test(textBefore(site).at(-1) ?? '') || PART_OF_FIGURE.test(textAfter(site)[0] ?? '');

/**
 * Whether the text on either side leaves the figure its meaning whatever its digits become: beside a stroke a point
 * could make a date of it, as in `1.00/2250`.
 */
export const standsAlone = (site: FixSite): boolean =>
  !touchesFigure(site) && !textBefore(site).endsWith('/') && !textAfter(site).startsWith('/');

/** Whether another stroke joins the figures, so that it cannot be told which two of them belong together. */
export const isChained = (site: FixSite): boolean =>
  textBefore(site).trimEnd().endsWith('/') || textAfter(site).trimStart().startsWith('/');

/** The typed figure with its sign as it was and other digits. */
export const withDigits = (figure: string, digits: string): string => figure.replace(FIGURE_END, digits);

/** A replacement that keeps clear of the letters and figures on either side. */
export function replaceApart(site: FixSite, title: string, text: string, safe: boolean): Fix {
  const left = PART_OF_WORD.test(textBefore(site).at(-1) ?? '') ? ' ' : '';
  const right = PART_OF_WORD.test(textAfter(site)[0] ?? '') ? ' ' : '';
  return replace(site, title, left + text + right, safe);
}

/** Whether the line, changed by the fix, is free of the finding. Fixes that rest on a likeness are held to this. */
export function mends(site: FixSite, fix: Fix): boolean {
  const block = opensBlock(site.lines[0] ?? '') === 'tolerance' ? 'tolerance' : undefined;
  const { problems } = parseLine(edited(lineOf(site), fix.edits), block);
  return !problems.some(({ code }) => code === site.finding.code);
}

function edited(line: string, edits: readonly Edit[]): string {
  let text = line;
  for (const edit of [...edits].sort((a, b) => b.start - a.start))
    text = text.slice(0, edit.start) + edit.text + text.slice(edit.end);
  return text;
}
