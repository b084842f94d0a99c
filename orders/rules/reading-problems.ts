/** What is wrong with a line because it stands in a reading: words in the place of figures, prisms that have no direction. */
import type { EyeWord, Line, LineNode, PrismComponent, Problem, Span } from '../../grammar';
import { prismUnclear } from '../order-lines';
import { contradiction, contradicts } from '../test-results';

/**
 * The problems of a line of a reading. Where text that has no place is an answer such as `ok`, `same` or a tick, it is
 * told as that, and so is an answer that stands for the result of a test or under a keyword. A prism that cannot be taken
 * is told as in an order, where its rules look at the whole order.
 */
export function readingProblems({ text }: Line, node: LineNode, problems: readonly Problem[]): readonly Problem[] {
  const own = ofNode(text, node);
  if (problems.length === 0) return own;
  // A decision waits for no figure: `ok` is told with the words that decide.
  if (node.kind === 'decided') return problems;
  return [...problems.map((problem) => (MISPLACED.has(problem.code) ? asAnswer(text, problem) : problem)), ...own];
}

function ofNode(text: string, node: LineNode): readonly Problem[] {
  if (node.kind === 'results') return ofResults(text, node);
  if (node.kind === 'settings') return underKeyword(text, node);
  return node.kind === 'prism' || node.kind === 'power' ? unclearPrisms(node) : NONE;
}

const NONE: readonly Problem[] = [];

type Of<K extends LineNode['kind']> = Extract<LineNode, { kind: K }>;

const MISPLACED = new Set(['unexpected-text', 'unknown-choice', 'value-missing']);

const ANSWER = /^(?:ok|okay|same|good|fine|yes|correct|idem|ditto|[✓✔√☑])(?![\p{L}\d])/iu;

function asAnswer(text: string, problem: Problem): Problem {
  const word = ANSWER.exec(text.slice(problem.start, problem.end))?.[0];
  return word === undefined ? problem : answer(text, problem.start, problem.start + word.length, 'figure');
}

const RESULTS: Readonly<Record<string, readonly string[]>> = {
  impact: ['passed', 'failed', 'batch'],
  cosmetic: ['passed', 'failed'],
  marking: ['passed', 'failed'],
};

/** A test that has neither passed nor failed says nothing, whatever the word; one that has done both says too much. */
function ofResults(text: string, node: Of<'results'>): readonly Problem[] {
  const known = RESULTS[node.which] as readonly string[];
  const [first] = node.results;
  if (!node.head) return NONE;
  // A word that is missing altogether has no place of its own.
  if (!first) return [{ ...node.head, code: 'value-missing', data: { word: node.head.word } }];
  const unknown = node.results.filter(({ word }) => !known.includes(word));
  if (unknown.length > 0) return unknown.map(({ start, end }) => answer(text, start, end, 'result'));
  const unclear =
    contradiction(node.results) ?? (node.detail && contradicts(node.results, node.detail.text) ? node.detail : null);
  return unclear
    ? [{ code: 'result-unclear', start: unclear.start, end: unclear.end, data: { both: unclear !== node.detail } }]
    : NONE;
}

function underKeyword(text: string, { entries }: Of<'settings'>): readonly Problem[] {
  return entries.flatMap(({ value }) =>
    value.flatMap(({ key: { word, start, end }, figure }) =>
      figure === null && ANSWER.test(word) ? [answer(text, start, end, 'figure')] : [],
    ),
  );
}

const UNCLEAR = {
  relative: 'prism-relative',
  'base-missing': 'prism-base-missing',
  'angle-for-both': 'prism-angle-for-both',
} as const;

function unclearPrisms(node: Of<'prism'> | Of<'power'>): readonly Problem[] {
  const told: Problem[] = [];
  const tell = (eye: EyeWord | null, components: readonly PrismComponent[], { start, end }: Span): void => {
    const unclear = prismUnclear(components, eye);
    if (unclear) told.push({ code: UNCLEAR[unclear], start, end });
  };
  if (node.kind === 'prism') for (const entry of node.entries) tell(entry.eye, entry.value, entry);
  else
    for (const { eye, prism } of node.entries) {
      const [first, last] = [prism[0], prism.at(-1)];
      if (first && last) tell(eye, prism, { start: first.start, end: last.end });
    }
  return told;
}

const answer = (text: string, start: number, end: number, wanted: 'figure' | 'result'): Problem => ({
  code: 'measured-word',
  start,
  end,
  data: { word: text.slice(start, end), wanted },
});
