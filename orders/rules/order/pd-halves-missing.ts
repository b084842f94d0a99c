import { isProgressive } from '../../lens-kinds';
import type { Rule } from '../rule';
import { madeLenses } from './lenses';

export const pdHalvesMissing: Rule = {
  code: 'pd-halves-missing',
  family: 'order',
  level: 'error',
  page: {
    checks: 'A progressive or an office lens is ordered with a binocular PD only.',
    why: 'The corridor is narrow, and most faces are not even. Half of the PD puts one corridor beside the line of sight.',
    example: { wrong: 'pd 63', right: 'pd R 31.5 L 31.5' },
    source: 'A poster on spectacles bought on line, as reported by Healio, 2012; training pages on progressives.',
  },
  message: () => 'A progressive is centred eye by eye: the PD of each eye is missing.',
  needs: 'progressive',
  check: ({ order }, report) => {
    const { binocular } = order.pd;
    if (order.supply !== 'glazed' || !binocular) return;
    const lacking = madeLenses(order).filter(
      (lens) =>
        isProgressive(lens) && !order.pd[lens.eye] && !(lens.design?.value.type === 'office' && order.nearPd[lens.eye]),
    );
    const [only, other] = lacking;
    if (only) report(binocular.place, {}, other ? {} : { eye: only.eye });
  },
};
