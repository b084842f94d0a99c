import type { WriteStream } from 'node:tty';
import { styleText } from 'node:util';
import type { Ink } from '../exchange';

type Style = Parameters<typeof styleText>[0];

const STYLES: Readonly<Record<keyof Ink, Style>> = {
  error: ['bold', 'red'],
  warning: ['bold', 'yellow'],
  info: 'blue',
  hint: 'cyan',
  accept: ['bold', 'green'],
  reject: ['bold', 'red'],
  incomplete: ['bold', 'yellow'],
  unread: 'cyan',
  path: 'bold',
  code: 'gray',
  caret: 'green',
  caution: 'gray',
};

/** Whether a stream is a terminal that has colours, and NO_COLOR is not set. */
export const hasColours = (stream: NodeJS.WriteStream): boolean => stream.isTTY && (stream as WriteStream).hasColors();

export function inkFor(isColoured: boolean): Ink {
  const paint = (style: Style) => (text: string) =>
    isColoured ? styleText(style, text, { validateStream: false }) : text;
  return Object.fromEntries(Object.entries(STYLES).map(([part, style]) => [part, paint(style)])) as Ink;
}
