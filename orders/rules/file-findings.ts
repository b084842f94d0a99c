/** Findings about lines that hold for the whole file, told in the block that holds the line. */
import type { Block } from '../../grammar';
import { type Context, setNamed } from '../context';
import type { Finding } from '../finding';

export function fileFindings(block: Block, { standard }: Context): Finding[] {
  if (standard?.block !== block || setNamed(standard.name)) return [];
  return [
    {
      code: 'standard-unknown',
      level: 'error',
      data: { name: standard.name, named: true },
      eye: null,
      ...standard.place,
    },
  ];
}
