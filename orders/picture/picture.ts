/** The whole picture of a job as one drawing that stands alone, for filing and for other documents. */
import type { Evaluation } from '../evaluate';
import { againstLimit, subjectInWords } from '../measure-words';
import type { Measure } from '../measures/measure';
import { EYES, type Order } from '../model';
import { verdictInWords } from '../verdict-line';
import { asSvg, type Drawing, label } from './drawing';
import { frontView, frontViewInWords } from './front-view';
import { legend } from './legend';
import { lensSection } from './lens-section';
import { limitBar, OUTCOMES, signOf } from './limit-bar';
import { coordinate, element, type Markup, together } from './markup';
import { PICTURE_STYLE } from './picture-style';
import { powerCross } from './power-cross';
import { isDrawable, type Scene, sceneOf } from './scene';

const MARGIN = 24;
const ROW = 30;
/** The width of a letter beside the height of its line. */
const LETTER = 0.34;

/** Returns an SVG document; the same order gives the same bytes everywhere. All text of the order is escaped. */
export function jobPicture(order: Order, evaluation: Evaluation | null): string {
  const scene = sceneOf(order, evaluation);
  const { width, height, content } = composed(scene, evaluation);
  const paper = element('rect', { class: 'paper', x: 0, y: 0, width, height });
  const style = element('style', {}, PICTURE_STYLE);
  const drawing = { width, height, content: together(style, paper, content) };
  const title = `Job ${order.name ?? 'without a name'}`;
  return `${asSvg(drawing, 'job', title, describe(scene, order, evaluation)).text}\n`;
}

const describe = (scene: Scene, order: Order, evaluation: Evaluation | null): string =>
  [frontViewInWords(scene), evaluation ? `Verdict: ${verdictInWords(order, evaluation)}.` : '']
    .filter(Boolean)
    .join(' ');

function composed(scene: Scene, evaluation: Evaluation | null): Drawing {
  const { order } = scene;
  const front = frontView(scene, 'job-front');
  const crosses = EYES.map((eye) => powerCross(scene.lenses[eye], scene));
  const sections = EYES.flatMap((eye) => lensSection(scene.lenses[eye], order) ?? []);
  const widest = Math.max(front.width, rowWidth(crosses), rowWidth(sections), 2 * 480);
  const stack = new Stack(widest + 2 * MARGIN);
  stack.text(`Job ${order.name ?? 'without a name'}`, 'heading', 40);
  if (evaluation) stack.text(verdictInWords(order, evaluation), 'words', 28);
  if (isDrawable(scene)) {
    stack.text('Seen from the front, as the wearer faces you: R is on the left.', 'small', 26);
    stack.row([front]);
    stack.row([legend(scene, widest)]);
  }
  for (const words of scene.missing) stack.text(words, 'said', 24);
  stack.row(crosses);
  stack.row(sections);
  for (const measure of evaluation?.measures ?? []) stack.place(measureRow(measure), ROW);
  return stack.drawing();
}

const rowWidth = (drawings: readonly Drawing[]): number => drawings.reduce((sum, { width }) => sum + width, 0);

/** Puts drawings and lines of text below each other, rows in the middle. */
class Stack {
  readonly #width: number;
  readonly #parts: Markup[] = [];
  #y = MARGIN;

  constructor(width: number) {
    this.#width = width;
  }

  text(words: string, className: string, height: number): void {
    for (const part of broken(words, (this.#width - 2 * MARGIN) / (height * LETTER))) {
      this.#parts.push(label(MARGIN, this.#y + height - 10, 'start', className, part));
      this.#y += height;
    }
  }

  row(drawings: readonly Drawing[]): void {
    if (drawings.length === 0) return;
    const height = Math.max(...drawings.map((one) => one.height));
    let x = (this.#width - rowWidth(drawings)) / 2;
    for (const one of drawings) {
      this.#parts.push(moved(x, this.#y, one.content));
      x += one.width;
    }
    this.#y += height + 12;
  }

  place(content: Markup, height: number): void {
    this.#parts.push(moved(MARGIN, this.#y, content));
    this.#y += height;
  }

  drawing(): Drawing {
    return { width: this.#width, height: this.#y + MARGIN, content: together(this.#parts) };
  }
}

/** Words in lines of at most so many letters; a longer word keeps a line of its own. */
function broken(words: string, most: number): readonly string[] {
  const lines: string[] = [];
  for (const word of words.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= most) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

const moved = (x: number, y: number, content: Markup): Markup =>
  element('g', { transform: `translate(${coordinate(x)} ${coordinate(y)})` }, content);

function measureRow(measure: Measure): Markup {
  const bar = limitBar(measure);
  const against = againstLimit(measure);
  return together(
    signOf(measure.outcome, 9, 13),
    label(28, 18, 'start', 'words', `${subjectInWords(measure)}: ${OUTCOMES[measure.outcome]}`),
    bar ? moved(320, 0, bar.content) : null,
    against ? label(576, 18, 'start', 'words', against) : null,
  );
}
