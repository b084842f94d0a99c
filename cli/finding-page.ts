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
export function partsOf({ page: { checks, levels, why, example, fix, source } }: Rule): readonly PagePart[] {
  return [
    words('checks', checks),
    ...(levels ? [words('levels', levels)] : []),
    words('why', why),
    typed('wrong', example.wrong),
    typed('right', example.right),
    ...(fix ? [words('fix', fix)] : []),
    words('source', source),
  ];
}

const words = (heading: string, body: string): PagePart => ({ heading, body, isTyped: false });
const typed = (heading: string, body: string): PagePart => ({ heading, body, isTyped: true });
