/**
 * Answers about one screenful of an open file over stdio, from the question to the answer, in a small file and in a large
 * one. The goal for the large one is 10 ms each.
 */
import { join } from 'node:path';
import { inMs, middle } from './measure';
import { openServer } from './server-under-test';
import { jobs, lentilText } from './work';

const SIZES = [50, 5_000];
/** Lines of a window. */
const SCREENFUL = 60;
const RUNS = 41;
/** The first answers warm the server up and do not count. */
const WARM = 5;

export async function benchAnswers(): Promise<void> {
  const taken: Map<string, number>[] = [];
  for (const size of SIZES) taken.push(await answers(lentilText(jobs(size))));
  console.log(`\nAnswers about a screenful of ${SCREENFUL} lines, right after a keystroke`);
  console.table(
    [...(taken[0]?.keys() ?? [])].map((what) => ({
      what,
      ...Object.fromEntries(SIZES.map((size, at) => [`${size} orders`, inMs(taken[at]?.get(what) ?? Number.NaN)])),
    })),
  );
}

async function answers(text: string): Promise<Map<string, number>> {
  const command = [join(process.cwd(), 'dist/lentil.mjs'), 'serve', '--stdio'];
  const open = await openServer({ command, language: 'lentil', name: 'bench.lentil', text });
  const lines = text.split('\n');
  const line = lines.findIndex((one, at) => at > lines.length / 2 && /^ {4}R {8}[-+]\d/.test(one));
  const digit = /\d/.exec(lines[line] as string)?.index as number;
  // An outline needs every order, so that from here on none is left to be worked out for the first time.
  await open.ask('textDocument/documentSymbol', { textDocument: { uri: open.uri } });
  const taken = new Map<string, number>();
  for (const [what, [method, params]] of Object.entries(questions(open.uri, line, digit))) {
    const times: number[] = [];
    for (let run = 0; run < RUNS + WARM; run++) {
      // What was worked out for the block of the cursor is gone after a keystroke.
      await open.type(line, digit, run % 2 === 0 ? '9' : '1');
      const time = await open.ask(method, params);
      if (run >= WARM) times.push(time);
    }
    taken.set(what, middle(times));
  }
  open.close();
  return taken;
}

function questions(uri: string, line: number, digit: number): Readonly<Record<string, readonly [string, object]>> {
  const textDocument = { uri };
  const position = { line, character: digit };
  const [first, last] = [Math.max(0, line - SCREENFUL / 2), line + SCREENFUL / 2];
  const range = { start: { line: first, character: 0 }, end: { line: last, character: 0 } };
  const context = { diagnostics: [] };
  return {
    'completion at the head of a line': ['textDocument/completion', { textDocument, position: { line, character: 5 } }],
    'hover over a power that was read': ['textDocument/hover', { textDocument, position }],
    'inlay hints': ['textDocument/inlayHint', { textDocument, range }],
    'semantic tokens': ['textDocument/semanticTokens/range', { textDocument, range }],
    'code actions at a place': [
      'textDocument/codeAction',
      { textDocument, range: { start: position, end: position }, context },
    ],
    'selection ranges': ['textDocument/selectionRange', { textDocument, positions: [position] }],
  };
}
