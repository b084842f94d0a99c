import { Help } from 'commander';

/** Lines longer than this are hard to read, however wide the terminal is. */
const WIDEST = 100;
const WITHOUT_TERMINAL = 80;

export const columnsOf = ({ columns }: NodeJS.WriteStream): number => Math.min(columns || WITHOUT_TERMINAL, WIDEST);

/** Breaks text at blanks so that no line is wider, the way the help of the command is broken. */
export const wrapped = (text: string, columns: number): string => new Help().boxWrap(text, columns);

export const indented = (text: string): string => text.replace(/^/gm, '  ');
