import type { Edit, Fix } from '../../finding';
import { type FixSite, type Rule, typed } from '../rule';
import { MINUS, textAfter, textBefore } from './line-edits';

export const looseForm: Rule = {
  code: 'loose-form',
  family: 'writing',
  level: 'hint',
  page: {
    checks: 'Brackets or commas stand between the parts of a power.',
    why: 'The habit is read without doubt, but every house has another one. In one form for all the parts cannot be mixed up.',
    example: { wrong: 'R -3.00 (+1.00 x 110)', right: 'R -3.00 +1.00 x 110' },
    fix: 'Takes the marks away; the power stays the same.',
    source: 'A French note on reading spectacle corrections (2022) shows the brackets.',
  },
  message: () => 'Understood. The power needs no such mark.',
  fixes: withoutMarks,
};

function withoutMarks(site: FixSite): readonly Fix[] {
  // Without the mark a lone dash would become the sign of the figure behind it.
  if (MINUS.test(textBefore(site).trimEnd().slice(-1))) return [];
  const { line, start, end } = site.finding;
  const edits: Edit[] = [{ line, start, end, text: gap(textBefore(site), textAfter(site)) }];
  const after = textAfter(site);
  const close = typed(site) === '(' ? after.indexOf(')') : -1;
  if (close >= 0 && after.slice(0, close).trim() === '') return [];
  if (close >= 0)
    edits.push({
      line,
      start: end + close,
      end: end + close + 1,
      text: gap(after.slice(0, close), after.slice(close + 1)),
    });
  return [{ title: close < 0 ? 'Take the mark away' : 'Take the brackets away', safe: true, edits }];
}

/** A blank, when what stood on either side of the mark would run together. */
const gap = (left: string, right: string): string => (/\S$/.test(left) && /^\S/.test(right) ? ' ' : '');
