/**
 * One keystroke in an open file: from the change to the diagnostics, over stdio, beside a YAML and a JSON server with the
 * same schema. The JSON server lets half a second pass before it looks, so its bare service is timed as well.
 */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import jsonLanguage from 'vscode-json-languageservice';
import { inMs, median, print, times } from './measure';
import { openServer, type ServerUnderTest } from './server-under-test';
import { jobs, jsonText, lentilText, YAML_SCHEMA, yamlText } from './work';

const SIZES = [50, 1_000, 5_000];
const KEYSTROKES = { lentil: 101, yaml: 3, json: 7, service: 15 };

export async function benchEdit(): Promise<void> {
  for (const size of SIZES) {
    const work = jobs(size);
    const ours = await lentil(lentilText(work));
    const peers = [
      ['yaml-language-server', await yaml(yamlText(work))],
      ['vscode-json-language-server', await json(jsonText(work))],
      ['vscode-json-languageservice, not over stdio', await jsonService(jsonText(work))],
    ] as const;
    const row = (what: string, of: keyof Timing) =>
      peers.map(([name, peer]) => ({
        what: `${what}: ${name}`,
        ours: inMs(ours[of]),
        peer: inMs(peer[of]),
        ratio: times(peer[of], ours[of]),
      }));
    print(
      `${size} orders; the same orders as YAML and as JSON with a schema, default settings; typing begins when the server has come to rest`,
      [...row('opened to first diagnostics', 'first'), ...row('a keystroke to its diagnostics', 'edit')],
    );
  }
}

const lentil = (text: string): Promise<Timing> =>
  time(
    {
      command: [join(process.cwd(), 'dist/lentil.mjs'), 'serve', '--stdio'],
      language: 'lentil',
      name: 'bench.lentil',
      text,
    },
    KEYSTROKES.lentil,
  );

/** Median over the keystrokes: a digit of a right sphere in the middle of the file is typed to and fro. */
async function yaml(text: string): Promise<Timing> {
  const folder = mkdtempSync(join(tmpdir(), 'lentil-bench-'));
  writeFileSync(join(folder, 'schema.json'), JSON.stringify(YAML_SCHEMA));
  const server = join(peerFolder('yaml-language-server'), 'bin/yaml-language-server');
  const settings = {
    yaml: {
      schemas: { [pathToFileURL(join(folder, 'schema.json')).href]: '*.yaml' },
      validate: true,
      schemaStore: { enable: false },
    },
  };
  return time({ command: [server, '--stdio'], language: 'yaml', name: 'bench.yaml', text, settings }, KEYSTROKES.yaml);
}

/** The schema comes over the wire, as an editor sends it. */
const json = (text: string): Promise<Timing> =>
  time(
    {
      command: [join(peerFolder('vscode-langservers-extracted'), 'bin/vscode-json-language-server'), '--stdio'],
      language: 'json',
      name: 'bench.json',
      text,
      settings: {
        json: {
          validate: { enable: true },
          schemas: [{ fileMatch: ['*.json'], url: SCHEMA_URL, schema: YAML_SCHEMA }],
        },
      },
    },
    KEYSTROKES.json,
  );

const SCHEMA_URL = 'lentil-bench://schema';

/** What the JSON server does between the change and its answer, without the pause and the wire. */
async function jsonService(text: string): Promise<Timing> {
  const service = jsonLanguage.getLanguageService({});
  service.configure({
    validate: true,
    schemas: [{ fileMatch: ['*.json'], uri: SCHEMA_URL, schema: YAML_SCHEMA as never }],
  });
  let document = jsonLanguage.TextDocument.create('file:///bench/bench.json', 'json', 1, text);
  const check = (): Promise<unknown> =>
    Promise.resolve(service.doValidation(document, service.parseJSONDocument(document)));
  const start = performance.now();
  await check();
  const first = performance.now() - start;
  const { line, digit } = middleFigure(text);
  let version = 1;
  const edit = await median(KEYSTROKES.service, async () => {
    const range = { start: { line, character: digit }, end: { line, character: digit + 1 } };
    document = jsonLanguage.TextDocument.update(document, [{ range, text: version % 2 === 0 ? '9' : '1' }], ++version);
    await check();
  });
  return { first, edit };
}

const peerFolder = (name: string): string =>
  join(createRequire(join(process.cwd(), 'package.json')).resolve(`${name}/package.json`), '..');

interface Timing {
  readonly first: number;
  readonly edit: number;
}

async function time(server: ServerUnderTest, keystrokes: number): Promise<Timing> {
  const open = await openServer(server);
  const { line, digit } = middleFigure(server.text);
  await open.rest();
  const taken: number[] = [];
  // The first keystrokes warm the server up and do not count.
  for (let at = 0; at < keystrokes + 2; at++) {
    const milliseconds = await open.type(line, digit, at % 2 === 0 ? '9' : '1');
    if (at >= 2) taken.push(milliseconds);
  }
  open.close();
  taken.sort((a, b) => a - b);
  return { first: open.first, edit: taken[taken.length >> 1] as number };
}

/** A digit of a right sphere in the middle of a text. */
function middleFigure(text: string): { readonly line: number; readonly digit: number } {
  const lines = text.split('\n');
  const line = lines.findIndex((one, at) => at > lines.length / 2 && /sphere"?: -?\d|^ {4}R {8}[-+]\d/.test(one));
  return { line, digit: /\d/.exec(lines[line] as string)?.index as number };
}
