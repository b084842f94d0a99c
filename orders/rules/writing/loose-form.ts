import type { Edit, Fix } from '../../finding';
import { type FixSite, type Rule, typed } from '../rule';
import { MINUS, textAfter, textBefore } from './line-edits';

export const looseForm: Rule = {
  code: 'loose-form',
  family: 'writing',
  level: 'hint',
  page: {
    checks: 'Brackets, commas or labels stand between the parts of a power or of a design.',
    why: 'The habit is read without doubt, but every house has another one. In one form for all the parts cannot be mixed up.',
    example: { wrong: 'R -3.00 (+1.00 x 110)', right: 'R -3.00 +1.00 x 110' },
    fix: 'Takes the marks or labels away; what the line says stays the same.',
    source: 'A French note on reading spectacle corrections (2022) shows the brackets.',
  },
  message: () => 'Understood. No such mark is needed.',
  fixes: withoutMarks,
};

function withoutMarks(site: FixSite): readonly Fix[] {
  // Without the mark a lone dash would become the sign of the figure behind it.
  if (MINUS.test(textBefore(site).trimEnd().slice(-1))) return [];
  const { line, start, end } = site.finding;
  const edits: Edit[] = [{ line, start, end, text: gap(textBefore(site), textAfter(site)) }];
  const after = textAfter(site);
  const other = otherMark(site);
  if (other && after.slice(0, other.start).trim() === '') return [];
  if (other) {
    const text = gap(after.slice(0, other.start), after.slice(other.end));
    edits.push({ line, start: end + other.start, end: end + other.end, text });
  }
  return [{ title: TITLES[kindOf(site)], safe: true, edits }];
}

type Kind = 'mark' | 'bracket' | 'label';

const TITLES: Readonly<Record<Kind, string>> = {
  mark: 'Take the mark away',
  bracket: 'Take the brackets away',
  label: 'Take the labels away',
};

const kindOf = (site: FixSite): Kind =>
  /^\p{L}/u.test(typed(site)) ? 'label' : typed(site) === '(' && textAfter(site).includes(')') ? 'bracket' : 'mark';

const CYLINDER_LABEL = /^(\s*[^\p{L}\s]+\s*)(?:cylinder|cyl)(?!\p{L})/iu;

/** The mark further on that goes with this one: the closing bracket, or the label of the cylinder. */
function otherMark(site: FixSite): { readonly start: number; readonly end: number } | null {
  const after = textAfter(site);
  const kind = kindOf(site);
  if (kind === 'bracket') return { start: after.indexOf(')'), end: after.indexOf(')') + 1 };
  const [label, sphere] = (kind === 'label' && CYLINDER_LABEL.exec(after)) || [];
  return label === undefined || sphere === undefined ? null : { start: sphere.length, end: label.length };
}

/** A blank, when what stood on either side of the mark would run together. */
const gap = (left: string, right: string): string => (/\S$/.test(left) && /^\S/.test(right) ? ' ' : '');
