import { EYES } from '../../model';
import { TESTS } from '../../test-results';
import { quantityInWords } from '../../words';
import { capital } from '../read-and-ordered';
import type { Rule } from '../rule';

export const testedAgain: Rule = {
  code: 'tested-again',
  family: 'bench',
  level: 'warning',
  page: {
    checks:
      'Surface or marks of a lens failed, a later line says passed, and no line says that the lens was replaced. A failed impact test is not made good by a second one: it stays failed.',
    why: 'A scratch does not go away by being looked at again. Either the lens was polished, marked anew or replaced, which a line should say, or two persons judge differently.',
    example: { wrong: 'cosmetic failed\ncosmetic passed', right: 'cosmetic passed' },
    source: 'Common practice, no source.',
  },
  message: ({ quantity, eye }) =>
    `${capital(`${eye ? `${eye} ` : ''}${quantityInWords(quantity as 'cosmetic')}`)} failed before and passed here. Was the lens replaced? Write replaced with its eye, or say in a note what was done.`,
  check: ({ evaluation }, report) => {
    for (const quantity of TESTS) {
      const found = evaluation.values.facts[quantity];
      if (!found) continue;
      for (const side of [...EYES, 'pair'] as const) {
        const read = found[side];
        if (!read?.after) continue;
        const eye = side === 'pair' ? null : side;
        report(read.place, { quantity, eye }, { ...(eye ? { eye } : {}), related: [read.after] });
      }
    }
  },
};
