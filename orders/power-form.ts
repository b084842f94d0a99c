import { minusForm, type Power, plusForm } from '../optics';
import { attempt } from './attempt';

/**
 * A power in one cylinder form, dioptres and degrees.
 * @returns the power as it is where no lens has such a power and no form can be given
 */
export const powerInForm = (power: Power, form: 'minus' | 'plus'): Power =>
  attempt(() => (form === 'minus' ? minusForm(power) : plusForm(power))) ?? power;
