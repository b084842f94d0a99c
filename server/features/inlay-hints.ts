import type { InlayHint, InlayHintParams } from 'vscode-languageserver';
import { type LineNode, sectionsOf } from '../../grammar';
import {
  againstLimit,
  arithmetic,
  type BlockAnalysis,
  type Context,
  computeLens,
  type Evaluation,
  type Eye,
  type Measure,
  type Order,
  type Place,
  powerToMake,
  quantityInWords,
  subjectInWords,
} from '../../orders';
import type { HintSettings } from '../settings';
import type { Snapshot } from '../snapshot';
import { hintPower } from './hint-figures';
import { inheritedLines } from './inherited-lines';
import { contentEnd } from './lines';
import { inShort } from './measures-in-short';
import type { Options } from './options';
import { reducedValues } from './reduced-values';
import { verdictInWords } from './verdict-words';

/** Editors cut off what is longer, and show the whole when asked. */
const SHORT = 40;

interface Hint {
  readonly line: number;
  readonly character: number;
  readonly label: string;
  /** How it comes about, shown when the editor is pointed at it. */
  readonly how?: string;
}

/**
 * What is worked out, beside the line it is worked out from: the verdict at an order’s name and what it takes from the defaults, the other form and the near
 * power at an ordered power, the reduced value and the deviation against the limit at a reading. Only for the asked lines.
 */
export function inlayHints(snapshot: Snapshot, { range }: InlayHintParams, { settings }: Options): InlayHint[] {
  const [from, to] = [snapshot.site(range.start), snapshot.site(range.end)];
  const hints: InlayHint[] = [];
  for (let index = from.block; index <= to.block; index++) {
    const analysis = snapshot.block(index);
    if (!analysis.order) continue;
    const first = index === from.block ? from.line : 0;
    const last = index === to.block ? to.line : analysis.block.lines.length - 1;
    const own = blockHints(analysis, analysis.order, [first, last], settings.hints);
    const taken = first === 0 && settings.hints.show.has('defaults') ? fromDefaults(analysis, snapshot.context) : [];
    for (const { line, character, label, how } of [...own, ...taken]) {
      const position = snapshot.range(index, { line, start: character, end: character }).start;
      const tooltip = [label.length > SHORT ? label : '', how ?? ''].filter(Boolean).join('\n\n');
      hints.push({ position, label, paddingLeft: true, ...(tooltip ? { tooltip } : {}) });
    }
  }
  return hints;
}

function blockHints(
  analysis: BlockAnalysis,
  order: Order,
  [first, last]: readonly [number, number],
  settings: HintSettings,
): Hint[] {
  const { block } = analysis;
  const { show } = settings;
  const sections = sectionsOf(block);
  const hints: Hint[] = [];
  for (let line = first; line <= last; line++) {
    const { text } = block.lines[line] as BlockAnalysis['block']['lines'][number];
    const { node } = (block.lines[line] as BlockAnalysis['block']['lines'][number]).parsed(block.kind);
    const end = contentEnd(text);
    const at = (label: string, character = end, how = ''): void => {
      if (label !== '') hints.push({ line, character, label, how });
    };
    const section = sections[line]?.kind;
    if (section === 'header' && analysis.evaluation && show.has('verdict'))
      at(verdictInWords(order, analysis.evaluation), end, verdictRestsOn(analysis.evaluation));
    else if (section === 'body' && node.kind === 'power' && show.has('ordered'))
      orderedPowers(order, node, line, settings, at);
    else if (section === 'reading' && show.has('read'))
      at(readLine(analysis, line, settings), end, howRead(analysis, line));
  }
  return hints;
}

/** What the order leaves unsaid and the file’s defaults say, beside the order’s name. */
function fromDefaults(analysis: BlockAnalysis, context: Context): Hint[] {
  const lines = inheritedLines(analysis, context);
  if (lines.length === 0) return [];
  const label = `${lines.join(', ')} from defaults`;
  const how = 'The order says nothing of its own here, so the defaults of the file hold.';
  return [{ line: 0, character: contentEnd(analysis.block.lines[0]?.text ?? ''), label, how }];
}

const verdictRestsOn = ({ set, measures }: Evaluation): string =>
  set ? [`By ${set.id}.`, inShort(measures)].filter(Boolean).join(' ') : '';

/** The way of each judged figure of a line, worst first as in its hint. */
const howRead = ({ evaluation }: BlockAnalysis, line: number): string =>
  [...(evaluation?.measures ?? []), ...(evaluation?.earlier ?? [])]
    .filter((measure) => isAt(line)(measure) && measure.deviation !== null)
    .sort((a, b) => share(b) - share(a))
    .map((measure) => `${subjectInWords(measure)}: ${arithmetic(measure).join('; ')}`)
    .join('\n');

/** On a line with both eyes each power has its hint behind it; otherwise the hint stands at the end of the line. */
function orderedPowers(
  order: Order,
  node: Extract<LineNode, { kind: 'power' }>,
  line: number,
  settings: HintSettings,
  at: (label: string, character?: number) => void,
): void {
  for (const { eye, power } of node.entries) {
    if (!eye || !power) continue;
    const side: Eye = eye.eye === 'L' ? 'L' : 'R';
    const place = order.lenses[side].written?.place;
    if (place?.line === line && place.start === power.start)
      at(orderedPower(order, side, settings), node.entries.length > 1 ? power.end : undefined);
  }
}

/** A power that the order leaves to be worked out; a stated verification power stands on a line of its own. */
const CONVERTED = new Set(['near', 'intermediate', 'vertex']);

function orderedPower(order: Order, eye: Eye, settings: HintSettings): string {
  const { written, design } = order.lenses[eye];
  const lens = computeLens(order, eye);
  if (!written || !lens) return '';
  const parts: string[] = [];
  const otherForm = written.form === 'minus' ? lens.plus : lens.minus;
  if (written.form !== 'sphere' && written.form !== settings.cylinder)
    parts.push(`= ${hintPower(otherForm, settings)}`);
  const isForOneUse = design?.value.type === 'single-vision' && design.value.use !== null;
  if (!isForOneUse && lens.near) parts.push(`near ${hintPower(lens.near, settings)}`);
  const target = powerToMake(order, order.lenses[eye]);
  if (target?.kind === 'known' && CONVERTED.has(target.from)) parts.push(`make ${hintPower(target.power, settings)}`);
  return parts.join('  ');
}

/** What became of the figures of a line of a reading. */
function readLine(analysis: BlockAnalysis, line: number, settings: HintSettings): string {
  const { evaluation } = analysis;
  if (!evaluation) return '';
  const parts = reducedValues(evaluation, line, settings).map((words) => `= ${words}`);
  const now = deviations(evaluation.measures.filter(isAt(line)));
  const before = deviations(evaluation.earlier.filter(isAt(line)));
  if (now) parts.push(now);
  if (before) parts.push(`replaced since: ${before}`);
  return parts.join('  ');
}

const isAt =
  (line: number) =>
  ({ place }: { readonly place: Place | null }): boolean =>
    place?.line === line;

/** The worst first. A subject is named only where there is more than one. */
function deviations(measures: readonly Measure[]): string {
  const judged = measures.filter(({ deviation }) => deviation !== null);
  const eyes = new Set(judged.map(({ eye }) => eye));
  const sorted = [...judged].sort((a, b) => share(b) - share(a));
  const words = sorted.map((measure) => {
    const subject = eyes.size > 1 ? subjectInWords(measure) : nameOf(measure);
    return `${judged.length > 1 ? `${subject} ` : ''}${againstLimit(measure)}`;
  });
  return words.join('; ');
}

const nameOf = ({ quantity, meridian }: Measure): string =>
  quantity === 'power' && meridian === 2 ? 'power of the weaker meridian' : quantityInWords(quantity);

/** How much of its limit a deviation takes up; what fails comes before what has no limit. */
const share = ({ deviation, limit, outcome }: Measure): number =>
  outcome === 'not-judged' ? -1 : Math.abs(deviation ?? 0) / (limit?.amount || 1);
