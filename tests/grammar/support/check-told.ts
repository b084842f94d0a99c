import { expect } from 'vitest';
import type { BlockKind } from '../../../grammar';
import { said, told } from '../../support/lines';
import { unmark } from '../../support/marks';

/** What is told of a marked line: each span has the code of the same number, and nothing else is told. */
export function checkTold(sample: string, codes: readonly string[], block?: BlockKind): void {
  expect(told(unmark(sample).text, block)).toEqual({ codes, marked: sample });
}

/** What a line says beside its kind. */
export function read(line: string, block?: BlockKind): unknown {
  const { kind: _, ...rest } = said(line, block) as Record<string, unknown>;
  return rest;
}
