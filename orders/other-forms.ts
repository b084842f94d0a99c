/** A typed power or prism in another form of the same lens, as it would be typed. */
import type { Eye, PowerNode, PrismComponent } from '../grammar';
import { type Power, prismBeforeEye, resultant, transpose } from '../optics';
import { attempt } from './attempt';
import { isSame, roundTo } from './exact';
import type { CylinderForm } from './model';
import { asPower, prismOf, typedPower } from './values';
import { axisFigures, figure, powerInWords, prismAsTyped, signed } from './words';

export type PowerForm = Exclude<CylinderForm, 'sphere'>;

/** Two decimals of an eighth: .12 and .13 both stand for .125. */
const CUT = 0.0051;

/**
 * Returns the other forms of a typed power with a cylinder, dioptres and degrees as they are typed: with a plus and with
 * a minus cylinder, and as two meridians at right angles. None for a sphere, for drum positions, which are the record of
 * what was read, and for a power that is incomplete or out of any range.
 * Figures cut from eighths are added up as eighths: -4.62 and -0.62 are -5.25. Source: that of `transpose`.
 */
export function powerInOtherForms(node: PowerNode): readonly { readonly form: PowerForm; readonly text: string }[] {
  const typed = typedPower(node);
  if (!typed || typed.form === 'lines' || typed.cylinder === 0) return [];
  const power = asPower(typed);
  const turned = attempt(() => ({ ...transpose(power), sphere: acrossAxis(power) }));
  if (!turned) return [];
  const [minus, plus] = power.cylinder < 0 ? [power, turned] : [turned, power];
  const meridians = `${signed(power.sphere)} @ ${axisFigures(power.axis)} / ${signed(turned.sphere)} @ ${axisFigures(turned.axis)}`;
  const all = { plus: powerInWords(plus), minus: powerInWords(minus), meridians };
  return FORMS.filter((form) => form !== typed.form).map((form) => ({ form, text: all[form] }));
}

const FORMS: readonly PowerForm[] = ['plus', 'minus', 'meridians'];

/** The power of the other meridian. Only where both figures are cut does their plain sum miss the eighth. */
function acrossAxis({ sphere, cylinder }: Power): number {
  const sum = sphere + cylinder;
  return isCut(sphere) && isCut(cylinder) ? Math.round(sum * 4) / 4 : sum;
}

const isCut = (value: number): boolean => {
  const eighth = Math.round(value * 8) / 8;
  return !isSame(value, eighth) && Math.abs(value - eighth) <= CUT;
};

/**
 * Returns the prism before one eye with one base in whole degrees where it is typed by base words, and by base words
 * where it is typed by an angle; prism dioptres to two decimals. Null for no prism, and for one that cannot be taken.
 * Sources: those of `resultant` and `prismBeforeEye`.
 */
export function prismInOtherForm(components: readonly PrismComponent[], eye: Eye): string | null {
  const prism = prismOf(components, eye);
  const whole = prism && attempt(() => ({ ...resultant(prism), before: prismBeforeEye(prism, eye) }));
  if (!whole || whole.amount === 0) return null;
  const { amount, base, before } = whole;
  if (components.some(({ degrees }) => degrees !== null))
    return prismAsTyped({ in: roundTo(before.in, 2), up: roundTo(before.up, 2) });
  return `${figure(roundTo(amount, 2))} base ${axisFigures(roundTo(base, 0) % 360)}`;
}
