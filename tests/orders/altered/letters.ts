/** One letter of a word dropped, doubled or exchanged. */

/** One alteration of one line. */
export interface Alteration {
  /** Index of the line in the text. */
  readonly line: number;
  readonly before: string;
  readonly after: string;
  /** The word or figure that was altered, as it stood, and its column. */
  readonly part: string;
  readonly start: number;
  readonly how: 'dropped' | 'doubled' | 'exchanged' | 'moved' | 'left out' | 'said again' | 'cut';
}

/** The content of a line, without its remark. */
export const content = (line: string): string => line.replace(/(^|\s)#(?=([^"]*"[^"]*")*[^"]*$).*$/, '');

const WORD = /[^\s]*\p{L}[^\s]*/gu;
const LETTER = /\p{L}/u;

/** The one that stands beside it on the keyboard, or the other one of two that a line can name. */
const BESIDE = new Map(
  [...'qwertzuiopasdfghjklyxcvbnm'].map((letter, at, all) => [letter, all[at + 1] ?? 'n'] as const),
);
const OTHER = new Map([
  ['R', 'L'],
  ['L', 'R'],
  ['A', 'B'],
  ['B', 'A'],
  ['BI', 'BO'],
]);

const besides = (letter: string): string => {
  const found = BESIDE.get(letter.toLowerCase()) ?? 'x';
  return letter === letter.toLowerCase() ? found : found.toUpperCase();
};

/** Every way in which one letter of a line may be dropped, doubled, exchanged with its neighbour or with another one. */
export function lettersAltered(before: string, line: number): Alteration[] {
  const found: Alteration[] = [];
  const seen = new Set<string>([before]);
  for (const { 0: part, index: start } of content(before).matchAll(WORD)) {
    const add = (how: Alteration['how'], word: string): void => {
      const after = before.slice(0, start) + word + before.slice(start + part.length);
      if (!seen.has(after)) found.push({ line, before, after, part, start, how });
      seen.add(after);
    };
    for (let at = 0; at < part.length; at++) {
      const [head, letter, next, rest] = [part.slice(0, at), part[at] ?? '', part[at + 1] ?? '', part.slice(at + 1)];
      if (!LETTER.test(letter)) continue;
      add('dropped', head + rest);
      add('doubled', head + letter + letter + rest);
      if (LETTER.test(next)) add('exchanged', head + next + letter + part.slice(at + 2));
      add('exchanged', head + besides(letter) + rest);
    }
    const other = OTHER.get(part);
    if (other) add('exchanged', other);
  }
  return found;
}
