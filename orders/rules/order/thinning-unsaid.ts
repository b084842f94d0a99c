import { EYES, otherEye } from '../../model';
import type { Rule } from '../rule';
import { lineBelow } from './line-below';

export const thinningUnsaid: Rule = {
  code: 'thinning-unsaid',
  family: 'order',
  level: 'warning',
  page: {
    checks:
      'One lens of a progressive or full-width pair is made and the other stays in the frame, and nothing says whether the pair has prism thinning.',
    why: 'Both lenses of such a pair are usually thinned by the same prism. A new lens without it beside an old one with 1.5 base down makes 1.5 prism dioptres between the eyes.',
    example: { wrong: 'kept L -4.25 -1.00 x 168 add +2.00', right: 'thinning 1.50 BD' },
    fix: 'Says that there is no thinning. An amount is read on the lens that stays, at its prism point.',
    source: 'Lab training page, “neutralizing progressives with prism thinning”; the amount is ours.',
  },
  message: () => 'The lens that stays may have prism thinning. How much of it, or none?',
  fixes: (site) => [lineBelow(site, 'There is no thinning', 'thinning none')],
  needs: 'other-power',
  check: ({ order: { lenses } }, report) => {
    for (const eye of EYES) {
      const [stays, made] = [lenses[eye], lenses[otherEye(eye)]];
      const { design, thinning, role } = made;
      const isThinned = design?.value.type === 'progressive' || design?.value.shape === 'full-width';
      if (stays.role !== 'kept' || role !== 'made' || !isThinned || thinning || stays.kept?.prism) continue;
      const place = stays.kept?.power?.place ?? stays.kept?.add?.place ?? design?.place;
      if (place) report(place, {}, { eye });
    }
  },
};
