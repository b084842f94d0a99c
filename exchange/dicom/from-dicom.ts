/** Lensometry Measurements of DICOM in, as text of the notation. */
import type { Reading } from '../../orders';
import { writeOrder } from '../../orders/write';
import { type Import, type Loss, type Refusal, refuse } from '../conversion';
import { groupBy } from '../parts/group';
import { orderFrom, readingFrom } from '../parts/to-order';
import { isList, isObject, type Json, parseJson } from '../safe-json';
import { type ReadInstance, readInstance } from './read-instance';
import { NotTaken } from './read-set';

/**
 * Returns every measurement of a data set, or of a list of them, in the DICOM JSON model (JSON text) as a reading. The
 * Patient ID is taken as the number of the order; data sets of one order with the same date, time, operator and instrument
 * are repeats. A set that is no measurement of lenses is refused, and the others are taken. Never throws on any text.
 * Source: DICOM PS3.3 A.60.1 and C.8.25.6 to C.8.25.8, PS3.18 Annex F.
 */
export function fromDicomJson(text: string): Import {
  const parsed = parseJson(text);
  if ('error' in parsed) return refuse(parsed.error);
  const sets: readonly Json[] = isList(parsed.value) ? parsed.value : [parsed.value];
  const instances: ReadInstance[] = [];
  const losses: Loss[] = [];
  const refused: Refusal[] = [];
  for (const [at, set] of sets.entries()) {
    try {
      if (!isObject(set)) throw new NotTaken('it is not a data set of DICOM');
      const read = readInstance(set);
      instances.push(read);
      losses.push(...read.losses);
    } catch (error) {
      if (!(error instanceof NotTaken)) throw error;
      refused.push({ message: error.message, where: isList(parsed.value) ? `[${at}]` : null });
    }
  }
  if (sets.length === 0) return refuse('it holds no data set of DICOM');
  return { result: ordersIn(instances).join('\n'), losses, refused };
}

function ordersIn(instances: readonly ReadInstance[]): readonly string[] {
  return [...groupBy(instances, ({ order }) => order)].map(([name, own]) => {
    const lines = new Set(own.flatMap((one) => one.lines));
    return writeOrder(orderFrom(name, [], readingsIn(own)), [...lines]);
  });
}

function readingsIn(instances: readonly ReadInstance[]): readonly Reading[] {
  return [...groupBy(instances, ({ head }) => JSON.stringify(head)).values()].map((group) => {
    const seen = new Set<string | null>();
    const lenses = group.flatMap((one) =>
      one.lenses.map((lens) => {
        const again = seen.has(lens.eye);
        seen.add(lens.eye);
        return { ...lens, again };
      }),
    );
    return readingFrom((group[0] as ReadInstance).head, lenses);
  });
}
