import type { Measure, Reading } from '../../../orders';

/** Name of the instrument that a measure was read on: that of its own line, or of the whole reading. */
export function instrumentNameOf({ reading, place }: Measure, readings: readonly Reading[]): string | null {
  const source = reading === null ? undefined : readings[reading];
  if (!source) return null;
  const line = source.measurements.find((one) => one.place.line === place?.line);
  return line?.with ?? source.with;
}
