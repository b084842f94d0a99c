/** The reference of the notation as its test reads it: tables, examples, and the parts that are made. */
import { readFileSync, writeFileSync } from 'node:fs';
import { lexer, type Token, type Tokens } from 'marked';

const PAGE = new URL('../../../grammar/README.md', import.meta.url);

export const page = (): string => readFileSync(PAGE, 'utf8');

export const write = (text: string): void => writeFileSync(PAGE, text);

export interface Example {
  readonly text: string;
  /** What stands behind `lentil`: findings it is meant to raise as `level:code`, `bench`, `with-bench`. */
  readonly marks: readonly string[];
}

/** The examples that are whole files. */
export const examples = (text: string): readonly Example[] =>
  lexer(text).flatMap((token) => {
    if (token.type !== 'code' || !/^lentil\b/.test(token.lang ?? '')) return [];
    return [{ text: token.text, marks: (token.lang as string).split(' ').slice(1) }];
  });

/** A cell as it reads, and the code in it. */
export interface Cell {
  readonly words: string;
  readonly code: readonly string[];
}

/** The rows of every table whose first headings are these. */
export const rows = (text: string, ...headings: readonly string[]): readonly (readonly Cell[])[] =>
  lexer(text)
    .filter((token): token is Tokens.Table => token.type === 'table')
    .filter(({ header }) => headings.every((heading, at) => header[at]?.text === heading))
    .flatMap((table) => table.rows.map((row) => row.map(cell)));

const cell = ({ text, tokens }: Tokens.TableCell): Cell => ({ words: text, code: codeIn(tokens) });

/** Everything that stands as code: in lines, tables, lists and examples. */
export function codeIn(tokens: readonly Token[]): readonly string[] {
  return tokens.flatMap((token) => {
    if (token.type === 'codespan') return [token.text as string];
    if (token.type === 'code') return (token.text as string).split('\n');
    if (token.type === 'table')
      return [...(token as Tokens.Table).header, ...(token as Tokens.Table).rows.flat()].flatMap((one) =>
        codeIn(one.tokens),
      );
    if (token.type === 'list') return (token as Tokens.List).items.flatMap((one) => codeIn(one.tokens));
    return 'tokens' in token && token.tokens ? codeIn(token.tokens) : [];
  });
}

/** Everything that somebody wrote, without what is made. */
export const written = (text: string): readonly string[] => codeIn(lexer(text.replaceAll(MADE, '')));

const MADE = /(<!-- made by [^\n]*: (\w+) -->\n)([\s\S]*?)(<!-- end -->)/g;

/** The made parts by their names. */
export const made = (text: string): ReadonlyMap<string, string> =>
  new Map([...text.matchAll(MADE)].map(([, , name = '', body = '']) => [name, body]));

/** The page with its made parts written anew, and its examples laid out. */
export const remade = (text: string, parts: ReadonlyMap<string, string>, layOut: (example: string) => string): string =>
  text
    .replaceAll(
      MADE,
      (_, start: string, name: string, body: string, end: string) => start + (parts.get(name) ?? body) + end,
    )
    .replaceAll(
      /(^```lentil.*\n)([\s\S]*?)(\n```$)/gm,
      (_, start: string, body: string, end: string) => start + layOut(body) + end,
    );
