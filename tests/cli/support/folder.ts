import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A new folder with these files in it, gone when the test has ended. */
export function folderWith(files: Readonly<Record<string, string | Buffer>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'lentil-files-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), content);
  }
  return folder;
}

const HEAD = 'standard z80.1-2015\n\n';

/** A pair of lenses with everything read; the right axis as given decides whether it passes. */
export const pair = (name: string, axis = '011'): string => `${HEAD}order ${name}
  R       +1.00 -1.50 x 010
  L       +0.75 -1.25 x 170
  pd      64
  design  single-vision
  lens    resin-1.50
  frame   A 51  B 35  DBL 18  ED 53
  supply  glazed

  reading 2026-11-23 09:40 by MT
    R      +1.02 -1.48 x ${axis}
    L      +0.74 -1.26 x 171
    pd     64.5
    prism  R 0  L 0
`;

/** All read and inside: nothing to tell. */
export const GOOD = pair('TT-1');
/** The right axis is 4° off where 3° are allowed: one error. */
export const BAD = pair('TT-2', '014');
/** Inside, but a point is missing: one warning and no error. */
export const DOUBTFUL = pair('TT-3').replace('R       +1.00', 'R       +100');
