import type { Rule } from '../rule';

/** What an order rests on besides its own lines. */
export type Ground = 'defaults' | 'instrument' | 'tolerance' | 'file';

const WHERE: Readonly<Record<Ground, string>> = {
  defaults: 'The defaults hold a line that is not clear',
  instrument: 'The instrument of a reading holds a line that is not clear',
  tolerance: 'The house set holds a line that is not clear',
  file: 'The file holds a line that is not clear and may be meant for this order',
};

export const restsOnUnclear: Rule = {
  code: 'rests-on-unclear',
  family: 'writing',
  level: ({ level }) => (level === 'error' ? 'error' : 'warning'),
  page: {
    checks:
      'The order rests on lines that stand elsewhere and were not all understood: the defaults, the instruments of its readings, its house set, or a line of the file near to `standard` or `defaults`.',
    levels:
      'An error where a line is lost, or where the word `standard` or `defaults` itself is mistyped. A warning for everything that is only asked about.',
    why: 'A design or a material that is lost in the defaults is lost for every order of the file. The pair is then held against another order than the one that was meant.',
    example: { wrong: 'defaults\n  frmae A 50 B 34 DBL 18', right: 'defaults\n  frame A 50 B 34 DBL 18' },
    source: 'Common practice, no source.',
  },
  message: ({ ground, typed }) => `${WHERE[ground as Ground]}: “${String(typed)}”. Mend it there.`,
};
