/** Lines that are none, and that somebody may have meant for every order of the file. */
import { type Block, lineWord, nearestWord } from '../grammar';

const FOR_ALL: readonly string[] = ['standard', 'defaults'];
const HEAD = /^[A-Za-z]+(?:-[A-Za-z]+)*/;

/**
 * The first line of a block that holds for the whole file where one letter is put right: `standrd z80.1-2015` at the
 * margin, or a block that `defualts` opens. Lines above the first block that only an order can have count as well.
 * @returns the line as typed, without the blanks around it; null where there is none
 */
export function strayIn(block: Block): string | null {
  const { kind, lines } = block;
  for (let at = kind === 'order' ? 1 : 0; at < lines.length; at++) {
    const { text } = lines[at] as Block['lines'][number];
    if (kind === 'preamble' ? isForOrders(text) : isMistyped(text)) return text.trim();
    // Lines below an opening that could not be read are left alone.
    if (kind === 'unnamed') return null;
  }
  return null;
}

const isForOrders = (text: string): boolean => {
  const head = HEAD.exec(text.trimStart())?.[0];
  if (head === undefined) return false;
  const word = lineWord(head);
  return word ? word.word !== 'standard' && word.word !== 'note' : isNear(head);
};

const isMistyped = (text: string): boolean => {
  const code = text.charCodeAt(0) | 32;
  if (!(code >= 97 && code <= 122)) return false;
  const head = HEAD.exec(text)?.[0];
  return head !== undefined && !lineWord(head) && isNear(head);
};

const isNear = (head: string): boolean => nearestWord(head, FOR_ALL) !== null;
