/** What a bench would do next with a pair that is refused. Common practice; the rules of the laboratory come first. */
import type { Eye } from '../grammar';
import type { Evaluation } from './evaluate';
import type { Finding } from './finding';
import type { Measure, Quantity } from './measures/measure';
import type { Order } from './model';
import { ruleOf } from './rules/catalogue';
import { isDecided } from './rules/decided';

/** Said with every list of steps. */
export const STEPS_CAUTION = 'Common practice, no source; the rules of the laboratory come first.';

/**
 * Returns the steps in the order in which they are taken, as sentences: first what settles a likely cause, then what is
 * done about the measures that no cause explains. Empty for a pair that is not refused, or when a person has decided.
 * Source: common practice, no source.
 * @param findings those of the same order; its causes are among them
 */
export function nextSteps(order: Order, evaluation: Evaluation, findings: readonly Finding[]): readonly string[] {
  if (evaluation.verdict !== 'reject') return [];
  const open = evaluation.measures.filter((one) => one.outcome === 'fail' && !isDecided(order, one));
  if (open.length === 0) return [];
  const causes = findings.filter(({ code }) => ruleOf(code)?.family === 'cause');
  const left = open.filter((one) => !causes.some((cause) => isExplained(one, cause)));
  return [...new Set([...causes.flatMap(stepOfCause), ...WORST_FIRST.flatMap((kind) => stepsOf(kind, left))])];
}

/** A cause holds the places of what it explains. */
const isExplained = ({ place, quantity }: Measure, { line, start, related = [] }: Finding): boolean =>
  place !== null &&
  !SAFETY.includes(quantity) &&
  [{ line, start }, ...related].some((one) => one.line === place.line && one.start === place.start);

const stepOfCause = ({ code, eye }: Finding): readonly string[] => {
  const step = OF_CAUSE[code];
  return step ? [step(eye ? `the ${eye} lens` : 'both lenses')] : [];
};

/** What settles each cause, and what is then remade. */
const OF_CAUSE: Readonly<Record<string, (lenses: string) => string>> = {
  'add-misread': (lenses) => `Read the add of ${lenses} again, distance and near with the same lines.`,
  'axis-crossed': (lenses) =>
    `Read ${lenses} again, thin lines first. If the axis stays across, remake ${lenses} at the ordered axis.`,
  'base-curve-index': () => 'Compare clock with clock, for one index. If the converted curve fits, nothing is remade.',
  'base-reversed': (lenses) =>
    `See again to which side the target stands. If the base is turned, lay out and remake ${lenses}.`,
  'both-centres-off': () => 'Find the PD that was used. Then edge or glaze both lenses again from the ordered one.',
  'compensation-mixed': () =>
    'Ask the maker which power the lens is to read, and write it into the order before anything is remade.',
  'cut-off-axis': (lenses) => `Remake ${lenses} at the ordered axis; this shape does not turn in the rim.`,
  'edged-off-axis': () => 'Check the edger or the focimeter with a lens of known axis. Then edge the pair again.',
  'eyes-swapped': () =>
    'See which lens is in the right rim. If the reading is right, glaze the pair again, or remake both where the shapes do not allow it.',
  'form-misread': (lenses) => `Read ${lenses} again, thin lines first, before anything is remade.`,
  'heights-shifted': () =>
    'Measure both heights again from the lower tangent of the boxed lens, and try the nose pads. Then edge again.',
  'heights-swapped': () =>
    'See which lens is higher in the frame. If the reading is right, edge or glaze the pair again.',
  'lens-reversed': (lenses) =>
    `Turn ${lenses} over on the stop and read again. If the axis stays mirrored, remake ${lenses}.`,
  'lens-turned': (lenses) => `Loosen the rim, turn ${lenses} back to the axis, and read again.`,
  'lines-swapped': (lenses) => `Read both lines of ${lenses} again, thin lines first, before anything is remade.`,
  'near-distance-swapped': () =>
    'See which PD the layout was made for. Then edge or glaze the pair again from the ordered one.',
  'near-for-distance': (lenses) =>
    `Read ${lenses} again at the ordered point. If the add is still off, remake ${lenses} for the ordered distance.`,
  'one-centre-off': (lenses) => `Edge or glaze ${lenses} again and leave the other one.`,
  'other-add-blank': (lenses) =>
    `Look at the blank that was taken, and remake ${lenses} with the ordered add. To read it again changes nothing.`,
  'other-segment': (lenses) => `Look at the blank that was taken, and remake ${lenses} from the right one.`,
  'prism-from-place': () => 'Edge or glaze again at the right place; the prism goes with it.',
  'sign-flipped': (lenses) =>
    `Read ${lenses} again and compare the order with its source. If the sign is turned, remake ${lenses}.`,
  'surfaced-off-axis': (lenses) => `Remake ${lenses}; turning it in the rim would tilt the segment.`,
  'thinning-as-error': () => 'Ask the maker how much thinning prism was ground, and write it into the order.',
  'warped-in-mounting': (lenses) => `Open the rim, let ${lenses} settle, and clock the front again.`,
};

interface Kind {
  readonly quantities: readonly Quantity[];
  /** What a bench does about them, for one lens or for the pair. */
  readonly step: (lens: string) => string;
}

const SAFETY: readonly Quantity[] = ['impact', 'min-thickness'];

/** Once something has to be remade anyway, the rest comes with it; so what costs a lens stands first. */
const WORST_FIRST: readonly Kind[] = [
  { quantities: ['impact'], step: () => 'Do not dispense this pair. Make new lenses and test them.' },
  { quantities: ['min-thickness'], step: (lens) => `Do not dispense ${lens}; remake it to the ordered thickness.` },
  { quantities: ['power', 'cylinder'], step: (lens) => `Read ${lens} again; if the figures stay, remake it.` },
  { quantities: ['axis'], step: (lens) => `See whether ${lens} can be turned in the rim; if not, edge or remake it.` },
  {
    quantities: ['add', 'intermediate', 'degression'],
    step: (lens) =>
      `Read the add of ${lens} again with the surface of the segment on the stop; if it stays, remake it.`,
  },
  {
    quantities: ['prism', 'prism-horizontal', 'prism-vertical'],
    step: () => 'Mark the centres and measure where they stand; re-space by edging or glazing again.',
  },
  { quantities: ['pd', 'near-pd'], step: () => 'Measure the PD again; re-space by edging or glazing again.' },
  {
    quantities: ['height', 'height-difference'],
    step: () => 'Try the nose pads and measure the heights again; if they stay, edge again.',
  },
  {
    quantities: ['segment-width', 'segment-width-difference', 'base-curve', 'centre-thickness', 'edge-thickness'],
    step: (lens) => `Measure ${lens} again; if the figure stays, remake it from the right blank.`,
  },
  {
    quantities: ['segment-tilt'],
    step: (lens) =>
      `See whether ${lens} can be turned in the rim until the line is level, and read the axis again; if not, edge or remake it.`,
  },
  { quantities: ['warp'], step: (lens) => `Open the rim and clock ${lens} again; edge it smaller if the warp stays.` },
  {
    quantities: ['cosmetic', 'marking'],
    step: () => 'See whether it can be polished or marked anew; if not, remake the lens.',
  },
];

/** One sentence for both lenses where both need the same. */
function stepsOf({ quantities, step }: Kind, measures: readonly Measure[]): readonly string[] {
  const meant = measures.filter(({ quantity }) => quantities.includes(quantity));
  if (meant.length === 0) return [];
  const eyes = [...new Set(meant.map(({ eye }) => eye))].filter((eye): eye is Eye => eye !== null);
  return eyes.length > 0 ? eyes.map((eye) => step(`the ${eye} lens`)) : [step('the lens')];
}
