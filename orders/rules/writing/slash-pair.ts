import { type Figure, meaningsOf, type PdNode, parseLine } from '../../../grammar';
import type { Fix } from '../../finding';
import { type FixSite, type Rule, replace, typed } from '../rule';
import { isChained } from './line-edits';

export const slashPair: Rule = {
  code: 'slash-pair',
  family: 'writing',
  level: 'warning',
  page: {
    checks: 'Two figures stand for two eyes or two distances and no word says which.',
    why: 'In a PD both above 40.5 are distance and near and both up to 40.5 right and left; in heights and adds the first is right. But a pair 62/59 was entered as right and left, and 30/31 is right and left although the first is the smaller. The next reader may guess the other way.',
    example: { wrong: 'pd 63/60', right: 'pd 63 near 60' },
    fix: 'Writes the words out.',
    source: 'Two question pages about PDs, and a master’s paper on a pair of unequal lenses (1998) with “PD 64/61”.',
  },
  message: ({ meaning }) =>
    meaning === 'distance-near' ? 'Taken as distance and near. Say so.' : 'Taken as right and left. Say so.',
  fixes: writtenOut,
};

function writtenOut(site: FixSite): readonly Fix[] {
  const second = startOfSecond(site);
  if (second === null || isChained(site)) return [];
  const text = typed(site);
  const first = text.slice(0, second).replace(/[\s/,;]+$/, '');
  const rest = text.slice(second);
  // An eye word in between belongs to the second figure, and the pair is none.
  if (meaningsOf(/\p{L}+$/u.exec(first)?.[0] ?? '').some(({ role }) => role === 'eye')) return [];
  const written = site.finding.data.meaning === 'distance-near' ? `${first} near ${rest}` : `R ${first} L ${rest}`;
  return [replace(site, `Write ${written}`, written, false)];
}

/** Where in the covered text the second value begins. A value may be more than one word, so the tree is asked. */
function startOfSecond({ finding, lines }: FixSite): number | null {
  const { node } = parseLine(lines[finding.line] ?? '');
  const values =
    node.kind === 'pd'
      ? [...figuresOf(node.distance), ...figuresOf(node.near)]
      : node.kind === 'centres'
        ? figuresOf(node.distance)
        : node.kind === 'add' || node.kind === 'eye-figure'
          ? node.entries.map(({ value }) => value)
          : [];
  const second = values.find((value) => value && value.start > finding.start && value.start < finding.end);
  return second ? second.start - finding.start : null;
}

const figuresOf = ({ binocular, right, left }: PdNode): readonly (Figure | null)[] => [binocular, right, left];
