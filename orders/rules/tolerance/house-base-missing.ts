import { commentStart } from '../../../grammar';
import { toleranceSets } from '../../../tables';
import type { Rule } from '../rule';

export const houseBaseMissing: Rule = {
  code: 'house-base-missing',
  family: 'tolerance',
  level: 'error',
  page: {
    checks: 'A house set does not say which published set it is built on.',
    why: 'A house set holds only what the house asks beyond a standard. The verdict is that of the standard; without one nothing is judged.',
    example: { wrong: 'tolerance house', right: 'tolerance house from z80.1-2015' },
    fix: 'Names one of the built-in sets. Which one holds is for the lab to say.',
    source: 'Common practice, no source.',
  },
  message: ({ name }) => `The house set “${name}” is built on no published set, so nothing is judged by it.`,
  fixes: ({ finding: { line }, lines }) => {
    const text = lines[line] ?? '';
    const end = text.slice(0, commentStart(text)).trimEnd().length;
    return toleranceSets.map(({ id, title }) => ({
      title: `Build it on ${title}`,
      safe: false,
      edits: [{ line, start: end, end, text: ` from ${id}` }],
    }));
  },
};
