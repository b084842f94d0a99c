/** One keystroke in an open file: from the change to the diagnostics, over stdio, beside a YAML server with a schema. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { inMs, print, times } from './measure';
import { openServer, type ServerUnderTest } from './server-under-test';
import { jobs, lentilText, YAML_SCHEMA, yamlText } from './work';

const SIZES = [50, 5_000];
const KEYSTROKES = { lentil: 61, yaml: 5 };

export async function benchEdit(): Promise<void> {
  const rows = [];
  for (const size of SIZES) {
    const work = jobs(size);
    const ours = await lentil(lentilText(work));
    const peer = await yaml(yamlText(work));
    rows.push(
      {
        what: `first diagnostics, ${size} orders`,
        ours: inMs(ours.first),
        peer: inMs(peer.first),
        ratio: times(peer.first, ours.first),
      },
      {
        what: `after a keystroke, ${size} orders`,
        ours: inMs(ours.edit),
        peer: inMs(peer.edit),
        ratio: times(peer.edit, ours.edit),
      },
    );
  }
  print('Edit to diagnostics over stdio; the peer is yaml-language-server with a JSON schema, default settings', rows);
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
  const server = join(
    createRequire(join(process.cwd(), 'package.json')).resolve('yaml-language-server/package.json'),
    '..',
    'bin/yaml-language-server',
  );
  const settings = {
    yaml: {
      schemas: { [pathToFileURL(join(folder, 'schema.json')).href]: '*.yaml' },
      validate: true,
      schemaStore: { enable: false },
    },
  };
  return time({ command: [server, '--stdio'], language: 'yaml', name: 'bench.yaml', text, settings }, KEYSTROKES.yaml);
}

interface Timing {
  readonly first: number;
  readonly edit: number;
}

async function time(server: ServerUnderTest, keystrokes: number): Promise<Timing> {
  const open = await openServer(server);
  const lines = server.text.split('\n');
  const middle = lines.findIndex((line, at) => at > lines.length / 2 && /sphere: -?\d|^ {4}R {8}[-+]\d/.test(line));
  const digit = /\d/.exec(lines[middle] as string)?.index as number;
  const taken: number[] = [];
  // The first keystrokes warm the server up and do not count.
  for (let at = 0; at < keystrokes + 2; at++) {
    const milliseconds = await open.type(middle, digit, at % 2 === 0 ? '9' : '1');
    if (at >= 2) taken.push(milliseconds);
  }
  open.close();
  taken.sort((a, b) => a - b);
  return { first: open.first, edit: taken[taken.length >> 1] as number };
}
