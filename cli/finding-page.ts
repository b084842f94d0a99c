/** The page of a finding in parts, for the terminal and for the documentation alike. */
import type { Rule } from '../orders';

export interface PagePart {
  readonly heading: string;
  readonly body: string;
  /** Lines of the notation, to be shown as they are typed. */
  readonly isTyped: boolean;
}

/** What kind of finding it is: `writing, error`. */
export function kindOf({ family, level }: Rule): string {
  return typeof level === 'string' ? `${family}, ${level}` : `${family}, level by where it stands`;
}

/** The parts of its page, in the order in which they are read. */
export function partsOf(rule: Rule): readonly PagePart[] {
  const { checks, levels, why, example, fix, source } = rule.page;
  return [
    words('checks', checks),
    ...(levels ? [words('levels', levels)] : []),
    words('acceptance', acceptanceIn(rule)),
    words('why', why),
    typed('wrong', example.wrong),
    typed('right', example.right),
    ...(fix ? [words('fix', fix)] : []),
    words('source', source),
  ];
}

/** What the finding does to an acceptance; made from the rule, so that no page can say otherwise. */
function acceptanceIn({ bars, level }: Rule): string {
  if (bars === true) return 'Kept away at any level: the order is incomplete until this is resolved.';
  if (bars) return `Left to the figures: ${bars.not}`;
  if (typeof level === 'function')
    return 'An error keeps it away: the order is incomplete until it is resolved. With a warning it is one with reservations.';
  if (level === 'error') return 'Kept away: the order is incomplete until this is resolved.';
  if (level === 'warning') return 'One with reservations.';
  return 'Left to the figures.';
}

const words = (heading: string, body: string): PagePart => ({ heading, body, isTyped: false });
const typed = (heading: string, body: string): PagePart => ({ heading, body, isTyped: true });
