import type { Eye } from '../../../grammar';
import { imbalance, insetByThreeQuarterRule, prentice } from '../../../optics';
import { attempt } from '../../attempt';
import { WORKING_DISTANCE } from '../../computed/assumptions';
import { roundTo, tidy } from '../../exact';
import type { Distances, Order, OrderedLens } from '../../model';
import { EYES } from '../../model';
import { usePower } from '../../power-to-make';
import { amountInWords } from '../../words';
import type { Rule } from '../rule';

export const nearPdUnsaid: Rule = {
  code: 'near-pd-unsaid',
  family: 'order',
  level: 'warning',
  page: {
    checks:
      'Every lens of the pair is single vision for near, and the PD is given without saying that it is the near one. The prism is that of centres as wide as the distance PD before eyes that read, their pupils narrower by 0.75 mm for each dioptre of working distance in each eye; at 40 cm, where nothing else is said.',
    why: 'Eyes that read turn in, and at 40 cm the lines of sight pass the lenses about 4 mm closer together than the distance PD. A pair for near centred for far makes the reader turn the eyes against its prism, the more the stronger it is. The bench cannot see which PD was meant.',
    example: { wrong: 'pd 62', right: 'pd near 58' },
    fix: 'Says that it is the near PD.',
    source:
      'The three-quarter rule (Gerstman): from memory of Brooks & Borish, System for Ophthalmic Dispensing. The working distance of 40 cm: common practice, no source.',
  },
  message: (data) => {
    const { pd, cm, narrower, prism, base } = data as unknown as Data;
    const near = pd === null ? `${narrower} mm closer together` : `about ${roundTo(pd - narrower, 1)} mm apart`;
    const made =
      prism === null || prism < LEAST
        ? ''
        : ` Centred for distance, the pair makes ${amountInWords(prism, 'prism')} base ${base} at ${cm} cm.`;
    const given = pd === null ? 'One PD is' : `PD ${pd} is`;
    return `A pair for near: ${given} ordered, and not said to be the near one. Pupils that read at ${cm} cm stand ${near} (three-quarter rule).${made} Write “pd near …”.`;
  },
  fixes: ({ finding: { line }, lines }) => {
    const start = /^\s*\S+[\s:=]*/.exec(lines[line] ?? '')?.[0].length ?? 0;
    return [{ title: 'It is the near PD', safe: false, edits: [{ line, start, end: start, text: 'near ' }] }];
  },
  needs: 'single-vision',
  check: ({ order }, report) => {
    const { pd, nearPd, lenses } = order;
    const place = (pd.binocular ?? pd.R ?? pd.L)?.place;
    if (!place || nearPd.binocular || nearPd.R || nearPd.L) return;
    const worn = EYES.map((eye) => lenses[eye]).filter(({ role }) => role === 'made' || role === 'balance');
    if (worn.length === 0 || !worn.every(isForReading)) return;
    const cm = Math.min(...worn.map(({ design }) => design?.value.working ?? WORKING_DISTANCE / 10));
    const each = attempt(() => insetByThreeQuarterRule(cm * 10));
    if (each === null) return;
    const prism = attempt(() => tidy(prismOf(order, each)));
    const data: Data = {
      pd: wholePd(pd),
      cm,
      narrower: roundTo(2 * each, 1),
      prism: prism === null ? null : Math.abs(prism),
      base: prism !== null && prism > 0 ? 'in' : 'out',
    };
    report(place, { ...data });
  },
};

interface Data {
  readonly pd: number | null;
  readonly cm: number;
  /** Millimetres, both eyes together. */
  readonly narrower: number;
  /** Prism dioptres of the pair. */
  readonly prism: number | null;
  readonly base: 'in' | 'out';
}

/** Less is not worth a figure, prism dioptres. Common practice, no source. */
const LEAST = 0.05;

const isForReading = ({ design }: OrderedLens): boolean =>
  design?.value.type === 'single-vision' && design.value.use === 'near';

const wholePd = ({ binocular, R, L }: Distances): number | null =>
  binocular?.value ?? (R && L ? tidy(R.value + L.value) : null);

/** Of both lenses where the eyes look `each` millimetres inwards of the centres, base in positive. */
function prismOf({ lenses }: Order, each: number): number {
  const of = (eye: Eye) => {
    const made = lenses[eye].role === 'made' ? usePower(lenses[eye]) : null;
    // The centre stands outwards of where the eye looks: to the examiner’s left before the right eye.
    return made ? prentice(made.power, { right: eye === 'R' ? -each : each, up: 0 }) : { right: 0, up: 0 };
  };
  return imbalance(of('R'), of('L')).horizontal;
}
