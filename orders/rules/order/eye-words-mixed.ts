import { type EyeOrBoth, type EyeWord, type LineNode, sectionsOf } from '../../../grammar';
import type { Place } from '../../finding';
import type { Rule } from '../rule';
import type { Subject } from '../subject';

export const eyeWordsMixed: Rule = {
  code: 'eye-words-mixed',
  family: 'order',
  level: 'hint',
  page: {
    checks: 'One order names the eyes in two ways, such as OD and L.',
    why: 'OD is the right eye and OS the left. Who reads quickly takes OS for right after a line that began with R.',
    example: { wrong: 'OS -4.25 -1.00 x 168', right: 'L -4.25 -1.00 x 168' },
    fix: 'Writes all of them in the way that was used first.',
    source: 'Common practice, no source.',
  },
  message: ({ used, first }) => `“${used}” here, and “${first}” before. One way of naming the eyes reads more safely.`,
  fixes: ({ finding }) => {
    const words = finding.data.words as readonly (Place & { readonly text: string })[];
    return [{ title: 'Name the eyes in the way that was used first', safe: true, edits: words }];
  },
  check: (subject, report) => {
    const [first, ...others] = eyeWords(subject);
    if (!first) return;
    const strange = others.filter(({ way }) => way !== first.way);
    const [next] = strange;
    if (!next) return;
    const words = strange.map(({ place, eye }) => ({ ...place, text: WAYS[first.way][eye] }));
    report(next.place, { used: next.text, first: first.text, words }, { related: [first.place] });
  },
};

type Way = 'english' | 'latin' | 'english-eye';

const WAYS: Readonly<Record<Way, Readonly<Record<EyeOrBoth, string>>>> = {
  english: { R: 'R', L: 'L', both: 'both' },
  latin: { R: 'OD', L: 'OS', both: 'OU' },
  'english-eye': { R: 'RE', L: 'LE', both: 'BE' },
};

const WAY_OF: Readonly<Record<string, Way>> = {
  r: 'english',
  l: 'english',
  right: 'english',
  left: 'english',
  od: 'latin',
  os: 'latin',
  ou: 'latin',
  re: 'english-eye',
  le: 'english-eye',
  be: 'english-eye',
  'b/e': 'english-eye',
};

const OTHER_WORD = /\b(?:OD|OS|OU|RE|LE|B\/?E)\b/i;

interface Found {
  readonly place: Place;
  readonly text: string;
  readonly eye: EyeOrBoth;
  readonly way: Way;
}

/** The eye words of the order’s own lines, in their order; `both` belongs to every way of writing. */
function eyeWords({ block }: Subject): readonly Found[] {
  // Nearly all orders keep to R and L; a look at the letters is far cheaper than one at the trees.
  if (!block.lines.some(({ text }) => OTHER_WORD.test(text))) return [];
  const sections = sectionsOf(block);
  return block.lines.flatMap((line, number) => {
    if (sections[number]?.kind !== 'body') return [];
    return eyesIn(line.parsed(block.kind).node).flatMap(({ eye, start, end }) => {
      const text = line.text.slice(start, end);
      const way = WAY_OF[text.toLowerCase()];
      return way ? [{ place: { line: number, start, end }, text, eye, way }] : [];
    });
  });
}

function eyesIn(node: LineNode): readonly EyeWord[] {
  if (node.kind === 'eyes' || node.kind === 'decided') return node.eyes;
  return 'entries' in node ? node.entries.flatMap(({ eye }) => eye ?? []) : [];
}
