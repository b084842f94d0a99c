import { addErrorFromBack, type Known } from '../../computed';
import { isLess, roundTo } from '../../exact';
import { surfaceDecides, surfaceOf } from '../../measures/add-surface';
import { EYES } from '../../model';
import { amountInWords, figure, signed } from '../../words';
import { type Rule, typed } from '../rule';
import { whileItCounts } from './counting';

export const addWrongSurface: Rule = {
  code: 'add-wrong-surface',
  family: 'bench',
  level: ({ decides }) => (decides ? 'warning' : 'info'),
  page: {
    checks:
      'The add of a segment was read off the drum with the back surface on the stop, or nobody says with which, and for this lens that makes a difference. Where the surface is not said it is told only when the difference exceeds half of what the add may be off. A warning where it decides; the add is then not judged if the back surface is said.',
    why: 'The segment stands on the front. Read from behind, its add passes through the thickness of the lens and comes out too strong, the more so the steeper the front and the thicker the lens. A good lens is refused that way, or a weak add accepted.',
    example: { wrong: 'add R -4.50 -> -2.50 back-vertex', right: 'add R -4.50 -> -2.50 front-vertex' },
    fix: 'Says that the front stood on the stop, for a reading that does not say it.',
    source:
      'National Federation of Opticianry Schools, OPT11, practice answers 11a: the difference of the vertex powers. That the add belongs to the side of the segment from memory of Brooks & Borish.',
  },
  message: (data) => {
    const { error, read, said, decides, ground } = data as unknown as Told;
    const more = `${amountInWords(roundTo(error, 2), 'D')} more than from the front`;
    const by = `Reckoned for ${ground}.`;
    if (!said)
      return `Which surface was on the stop? From the back this lens shows ${more}: then this add is ${signed(roundTo(read - error, 2))}. ${by}`;
    const left = decides ? ' That decides it, so it is not judged; read it from the front.' : '';
    return `With the back surface on the stop this lens shows ${more}: its add is about ${signed(roundTo(read - error, 2))}.${left} ${by}`;
  },
  fixes: (site) => {
    const { said } = site.finding.data;
    const text = typed(site);
    if (said || text === '') return [];
    const { line, end } = site.finding;
    return [
      { title: 'The front was on the stop', safe: false, edits: [{ line, start: end, end, text: ' front-vertex' }] },
    ];
  },
  check: ({ order, evaluation }, report) => {
    for (const eye of EYES) {
      const read = evaluation.values.add[eye];
      const surface = read && surfaceOf(read);
      const error = surface === 'back-vertex' || surface === 'unsaid' ? addErrorFromBack(order, eye) : null;
      if (!read || !error || isLess(error.value, LEAST)) continue;
      const measure = evaluation.measures.find((one) => one.quantity === 'add' && one.eye === eye);
      const half = (measure?.limit?.amount ?? USUAL_LIMIT) / 2;
      const decides = measure !== undefined && surfaceDecides(order, measure);
      const said = surface === 'back-vertex';
      if (!said && !decides && !isLess(half, error.value)) continue;
      const data: Told = { error: error.value, read: read.value, said, decides, ground: groundInWords(error) };
      const level = decides ? whileItCounts(evaluation, read.reading, 'warning') : 'info';
      report(read.place, { ...data }, { eye, level });
    }
  },
};

/** Dioptres. Less than a hundredth cannot be read anywhere. */
const LEAST = 0.01;
/** Of an add up to 4.00 D in most sets, dioptres; for where nothing is judged. */
const USUAL_LIMIT = 0.12;

interface Told {
  readonly error: number;
  readonly read: number;
  readonly said: boolean;
  readonly decides: boolean;
  readonly ground: string;
}

/** What the error rests on: `front surface +7.52 D, thickness 4.1 mm, index 1.498, add 2.00 D`, and what was assumed. */
function groundInWords({ inputs, assumed }: Known<number>): string {
  const of = (name: string): number => Number(inputs[name]?.value ?? 0);
  const front = `front surface ${signed(roundTo(of('front surface'), 2))} D`;
  const body = `thickness ${Number(of('centre thickness').toFixed(1))} mm, index ${figure(of('index'), 3)}, add ${signed(of('add'))}`;
  return `${front}, ${body}; taken as usual: ${assumed.join('; ')}`;
}
