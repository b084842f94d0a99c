import { type Rule, replace, typed } from '../rule';
import { standsAlone } from './line-edits';

export const wideCharacters: Rule = {
  code: 'wide-characters',
  family: 'writing',
  level: 'hint',
  page: {
    checks: 'A figure is typed in wide characters, as East Asian keyboards give them.',
    why: 'It looks like a figure, but other programs and machines may not take it for one.',
    example: { wrong: 'R －４．５０ -0.75 x 022', right: 'R -4.50 -0.75 x 022' },
    fix: 'Writes the figure in plain characters.',
    source: 'Common practice, no source. The plain forms are those of Unicode normalisation form KC.',
  },
  message: () => 'The wide figure is understood. Plain characters are safer.',
  fixes: (site) => {
    const text = typed(site).normalize('NFKC').replace(',', '.');
    return [replace(site, `Write ${text}`, text, standsAlone(site))];
  },
};
