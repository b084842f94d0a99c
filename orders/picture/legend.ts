/** What the marks and lines of the front view stand for; only those that are drawn. */
import { EYES } from '../model';
import { amountInWords } from '../words';
import { type Drawing, label, line, orderedMark, readMark, SCALE, spottedMark } from './drawing';
import { pointInWords } from './front-view';
import { element, type Markup, together } from './markup';
import type { Scene } from './scene';

interface Entry {
  readonly sample: (x: number, y: number) => Markup;
  readonly words: string;
}

const ROW = 30;
/** Room for a sample, for one letter, and between entries, units. */
const SAMPLE = 44;
const LETTER = 7.8;
const APART = 26;

export function legend(scene: Scene, width: number): Drawing {
  let [x, y] = [12, ROW / 2];
  const drawn = entriesOf(scene).map(({ sample, words }) => {
    const needed = SAMPLE + words.length * LETTER + APART;
    if (x > 12 && x + needed > width) [x, y] = [12, y + ROW];
    const entry = together(sample(x + 18, y), label(x + SAMPLE, y + 5, 'start', 'words', words));
    x += needed;
    return entry;
  });
  return { width, height: y + ROW / 2, content: element('g', { class: 'legend' }, drawn) };
}

function entriesOf(scene: Scene): readonly Entry[] {
  const lenses = EYES.map((eye) => scene.lenses[eye]);
  const points = [...new Set(lenses.filter(({ ordered }) => ordered).map(pointInWords))].join(' or ');
  const blanks = lenses.flatMap(({ blank, eye }) => (blank ? [`${eye} ${amountInWords(blank.diameter, 'mm')}`] : []));
  const parts = lenses.flatMap(({ segment }) => segment ?? []);
  return [
    points && entry(orderedMark, `${points}, ordered`),
    lenses.some(({ read }) => read) && entry(readMark, 'the same, read'),
    lenses.some(({ spotted }) => spotted) && entry(spottedMark, 'optical centre, spotted'),
    parts.length > 0 && entry(stroke('segment ordered'), 'segment, ordered'),
    parts.some(({ read }) => read) && entry(stroke('segment read'), 'segment, read'),
    scene.frame && entry(stroke('box'), 'boxed lens'),
    scene.frame && entry(plus, 'boxed centre'),
    blanks.length > 0 && entry(stroke('blank'), `smallest blank: ${blanks.join(', ')}`),
    entry(bar, '5 mm'),
  ].filter((one): one is Entry => typeof one === 'object' && one !== null);
}

const entry = (sample: Entry['sample'], words: string): Entry => ({ sample, words });
const stroke =
  (className: string): Entry['sample'] =>
  (x, y) =>
    element('path', { class: `${className} sample`, d: `M${x - 18} ${y}H${x + 18}` });
const plus: Entry['sample'] = (x, y) =>
  together(line(x - 7, y, x + 7, y, 'boxed-middle'), line(x, y - 7, x, y + 7, 'boxed-middle'));
const bar: Entry['sample'] = (x, y) => {
  const half = (5 * SCALE) / 2;
  return element(
    'g',
    { class: 'length plain' },
    line(x - half, y, x + half, y, 'run'),
    line(x - half, y - 5, x - half, y + 5, 'end'),
    line(x + half, y - 5, x + half, y + 5, 'end'),
  );
};
