/** How a power is carried from the vertex distance of the refraction to that of wear, in words. */
import type { OrderedLens } from '../model';
import { objectDistance, type PowerByUse } from '../power-to-make';
import { ASSUMED } from './assumptions';
import { type Inputs, mm } from './figure';
import { SOURCES } from './sources';

interface Way {
  readonly formula: string;
  readonly inputs: Inputs;
  readonly source: string;
  readonly assumed: readonly string[];
}

/** Of a far object, or of one at the working distance of a lens for near. */
export function vertexWay(lens: OrderedLens, byUse: PowerByUse): Way {
  const away = objectDistance(lens, byUse);
  if (!away)
    return { formula: 'power / (1 − (tested − worn) / 1000 × power)', inputs: {}, source: SOURCES.vertex, assumed: [] };
  return {
    formula:
      'L = power − 1000 / (working distance − tested); L / (1 − (tested − worn) / 1000 × L) + 1000 / (working distance − worn)',
    inputs: { 'working distance': { ...mm(away.mm), from: away.origin } },
    source: SOURCES.nearVertex,
    assumed: away.origin === 'assumed' ? [ASSUMED.workingDistance] : [],
  };
}
