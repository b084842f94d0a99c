/** The job sheet: pictures, tables, verdict and cautions of one order on one page. */
import type { Evaluation, Verdict } from '../evaluate';
import { EYES, type Order, type Reading } from '../model';
import { verdictInWords } from '../verdict-line';
import { amountInWords } from '../words';
import { asSvg, type Drawing } from './drawing';
import { frontView, frontViewInWords } from './front-view';
import { legend } from './legend';
import { lensSection } from './lens-section';
import { element, escaped, type Markup, together } from './markup';
import { crossInWords, powerCross } from './power-cross';
import { isDrawable, type Scene, sceneOf } from './scene';
import { SHEET_STYLE } from './sheet-style';
import { icon, measuresTable, orderedAndRead, workedTable } from './tables';

/** What a sheet shows. */
export interface SheetOf {
  readonly order: Order;
  readonly evaluation: Evaluation | null;
  /** The lines of the order as they were typed. */
  readonly lines: readonly string[];
}

/** A sheet in parts, for whoever shows it in a page of their own. */
export interface JobSheet {
  readonly title: string;
  /** One line for people who are told of changes. */
  readonly summary: string;
  /** Well-formed markup, HTML and XML alike, without style or script. Text of the order is escaped. */
  readonly html: string;
}

/** Returns the sheet of one order; the same order gives the same bytes everywhere. */
export function jobSheet({ order, evaluation, lines }: SheetOf): JobSheet {
  const scene = sceneOf(order, evaluation);
  const title = `Job ${order.name ?? 'without a name'}`;
  const html = element(
    'main',
    { class: 'sheet' },
    header(title, evaluation),
    evaluation ? element('p', { class: 'because' }, capital(verdictInWords(order, evaluation)), '.') : null,
    restsOn(evaluation),
    readingsOf(order),
    front(scene),
    crosses(scene),
    evaluation && evaluation.measures.length > 0
      ? element(
          'div',
          { class: 'scroll', tabindex: 0, role: 'region', 'aria-label': 'Measures' },
          measuresTable(evaluation, 'bar'),
        )
      : null,
    orderedAndRead(scene),
    sections(scene),
    element('div', { class: 'two' }, workedTable(scene), asWritten(lines)),
    CAUTIONS,
  );
  const summary = evaluation ? `${title}: ${verdictInWords(order, evaluation)}` : title;
  return { title, summary, html: html.text };
}

/**
 * Returns the sheet as a page of its own, for printing and filing: one file without script, picture or address of
 * anything outside. Its content security policy allows nothing but its own style.
 */
export function sheetPage(of: SheetOf): string {
  const { title, html } = jobSheet(of);
  return [
    '<!DOCTYPE html>',
    '<html lang="en"><head><meta charset="utf-8"/>',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"/>`,
    '<meta name="viewport" content="width=device-width, initial-scale=1"/>',
    `<title>${escaped(title)}</title>`,
    `<style>${SHEET_STYLE}</style></head>`,
    `<body>${html}</body></html>`,
    '',
  ].join('\n');
}

const SIGNS = { accept: 'pass', reject: 'fail', incomplete: 'not-judged', unread: 'not-read' } as const;

const header = (title: string, evaluation: Evaluation | null): Markup =>
  element(
    'header',
    {},
    element('div', {}, element('p', { class: 'kind' }, 'Job sheet'), element('h1', {}, title)),
    evaluation ? verdictBox(evaluation.verdict) : null,
  );

const verdictBox = (verdict: Verdict): Markup =>
  element('p', { class: `verdict ${verdict}` }, icon(SIGNS[verdict]), element('span', {}, verdict));

const EVIDENCE = {
  published: 'every limit that decided was seen in the published text',
  secondary: 'a limit that decided comes from a secondary account',
  memory: 'a limit that decided comes from memory and was not seen',
} as const;

function restsOn(evaluation: Evaluation | null): Markup | null {
  const { set, house, evidence } = evaluation ?? { set: null, house: null, evidence: null };
  if (!set) return null;
  const parts = [
    house ? `${house.name}, on top of ${set.title}` : set.title,
    evidence ? EVIDENCE[evidence] : '',
  ].filter(Boolean);
  return element('p', { class: 'rests' }, `Held against ${parts.join('; ')}.`);
}

function readingsOf({ readings }: Order): Markup | null {
  if (readings.length === 0) return element('p', { class: 'rests' }, 'No reading has been taken.');
  return element('p', { class: 'rests' }, `Read ${readings.map(readingInWords).join('; ')}.`);
}

const readingInWords = ({ date, time, by, with: instrument, stage }: Reading): string =>
  [
    date ?? 'without a date',
    time,
    by && `by ${by}`,
    instrument && `with ${instrument}`,
    stage !== 'final' && `(${stage})`,
  ]
    .filter(Boolean)
    .join(' ');

function front(scene: Scene): Markup {
  if (!isDrawable(scene)) return element('p', { class: 'rests' }, scene.missing.join(' '));
  const view = frontView(scene, 'front');
  const key = legend(scene, Math.max(view.width, 700));
  const width = Math.max(view.width, key.width);
  const drawing: Drawing = {
    width,
    height: view.height + key.height,
    content: together(
      element('g', { transform: `translate(${((width - view.width) / 2).toFixed(2)} 0)` }, view.content),
      element('g', { transform: `translate(0 ${view.height.toFixed(2)})` }, key.content),
    ),
  };
  const { a, b, dbl, ed } = scene.order.frame;
  const frame = Object.entries({ A: a, B: b, DBL: dbl, ED: ed })
    .flatMap(([name, size]) => (size ? [`${name} ${amountInWords(size.value, 'mm')}`] : []))
    .join(', ');
  const notes = [
    'Seen from the front, as the wearer faces you: R is on the left. To scale.',
    frame ? `Frame ${frame}.` : '',
    ...scene.missing,
  ];
  return element(
    'figure',
    { class: 'front' },
    asSvg(drawing, 'front', 'Both lenses from the front', frontViewInWords(scene)),
    element('figcaption', {}, notes.filter(Boolean).join(' ')),
  );
}

const crosses = (scene: Scene): Markup =>
  element(
    'div',
    { class: 'pair-of' },
    EYES.filter((eye) => scene.lenses[eye].lens.role !== 'absent').map((eye) => {
      const one = scene.lenses[eye];
      const words = crossInWords(one, scene);
      return element(
        'figure',
        {},
        asSvg(powerCross(one, scene), `cross-${eye}`, `Power of the ${eye} lens`, words),
        element('figcaption', {}, `${eye}: ${words}`),
      );
    }),
  );

function sections(scene: Scene): Markup | null {
  const drawn = EYES.flatMap((eye) => {
    const found = lensSection(scene.lenses[eye], scene.order);
    return found ? [{ eye, found }] : [];
  });
  if (drawn.length === 0) return null;
  return element(
    'section',
    {},
    element('h2', {}, 'Cut level with the optical centre, to scale'),
    element(
      'div',
      { class: 'pair-of' },
      drawn.map(({ eye, found }) =>
        element(
          'figure',
          {},
          asSvg(found, `section-${eye}`, `Section of the ${eye} lens`, `Thickness: ${found.words}.`),
          element('figcaption', {}, `${eye}: ${found.words}`),
        ),
      ),
    ),
  );
}

/** Blank lines and comments at the end mostly belong to the order below. */
function asWritten(lines: readonly string[]): Markup {
  let end = lines.length;
  while (end > 1 && /^\s*(?:#|$)/.test(lines[end - 1] ?? '')) end--;
  return element('section', {}, element('h2', {}, 'As written'), element('pre', {}, lines.slice(0, end).join('\n')));
}

const CAUTIONS = element(
  'footer',
  { class: 'cautions' },
  element('p', {}, 'This sheet was made by Lentil, which is not a medical device.'),
  element(
    'p',
    {},
    'The bought text of the standard and the local code rule; each limit above says how well it is established.',
  ),
  element('p', {}, 'Whether a pair goes to the wearer is decided by licensed practice, never by a program.'),
);

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
