/** Sample lines with marks in them, so that nobody counts columns. */
import type { Span } from '../../grammar';

const OPEN = '‹';
const CLOSE = '›';

export interface Sample {
  /** The sample without its marks. */
  readonly text: string;
  /** What stood between marks, in the order in which the marks open. Marks may stand inside marks. */
  readonly spans: readonly Span[];
}

/** Takes the marks out of `R ‹- 4.50›` and tells where they stood. */
export function unmark(sample: string): Sample {
  let text = '';
  const spans: { start: number; end: number }[] = [];
  const open: { start: number; end: number }[] = [];
  for (const character of sample) {
    if (character === OPEN) {
      const span = { start: text.length, end: -1 };
      spans.push(span);
      open.push(span);
    } else if (character === CLOSE) {
      const span = open.pop();
      if (!span) throw new Error(`a mark closes that was never opened: ${sample}`);
      span.end = text.length;
    } else text += character;
  }
  if (open.length > 0) throw new Error(`a mark stays open: ${sample}`);
  return { text, spans };
}

/** Puts the marks back, so that a span that is wrong shows itself in the text. */
export function mark(text: string, spans: readonly Span[]): string {
  const count = (wanted: (span: Span) => boolean): number => spans.filter(wanted).length;
  let marked = '';
  for (let at = 0; at <= text.length; at++) {
    marked += CLOSE.repeat(count(({ start, end }) => end === at && start < at));
    marked += OPEN.repeat(count(({ start, end }) => start === at && end > at));
    marked += (OPEN + CLOSE).repeat(count(({ start, end }) => start === at && end === at));
    marked += text[at] ?? '';
  }
  const lost = count(({ start, end }) => start < 0 || end > text.length || start > end);
  return marked + ' (a span outside the text)'.repeat(lost);
}
