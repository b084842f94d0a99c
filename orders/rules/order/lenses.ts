/** What several rules of an order ask about its lenses, and how they tell one thing that is said for both at once. */
import type { FindingData, Level, Place } from '../../finding';
import type { Order, OrderedLens } from '../../model';
import type { Report } from '../rule';

export const lensesOf = ({ lenses: { R, L } }: Order): readonly OrderedLens[] => [R, L];

/** Lenses to be made to a power. One of which the order says nothing at all is told as missing, and not a second time. */
export function madeLenses({ lenses: { R, L } }: Order): readonly OrderedLens[] {
  const made = isMade(R) ? [R] : [];
  if (isMade(L)) made.push(L);
  return made;
}

const isMade = ({ role, named, written }: OrderedLens): boolean =>
  role === 'made' && (named !== null || written !== null);

/** A finding about a lens, at a place that both lenses may share. */
export interface AboutLens {
  readonly lens: OrderedLens;
  readonly place: Place;
  readonly data?: FindingData;
  readonly related?: readonly Place[];
  readonly level?: Level;
}

/** Tells each place once: `add +2.00` without an eye says one thing, though it holds for both lenses. */
export function tellPerPlace(report: Report, found: readonly AboutLens[]): void {
  if (found.length === 0) return;
  const told = new Map<string, readonly [AboutLens, ...AboutLens[]]>();
  for (const one of found) {
    const key = `${one.place.line}.${one.place.start}`;
    const known = told.get(key);
    told.set(key, known ? [...known, one] : [one]);
  }
  for (const [first, ...others] of told.values()) {
    const { lens, place, data = {}, related, level } = first;
    report(place, data, {
      ...(others.every((one) => one.lens.eye === lens.eye) ? { eye: lens.eye } : {}),
      ...(related ? { related } : {}),
      ...(level ? { level } : {}),
    });
  }
}
