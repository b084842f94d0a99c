import type { Context } from '../../context';
import type { Place } from '../../finding';
import { instrumentOfLine } from '../../instrument';
import type { Instrument, Measurement, Reading } from '../../model';

/** A declared instrument of a reading, where it is named, and what was read on it. */
export interface Used {
  readonly instrument: Instrument;
  readonly place: Place;
  readonly lines: readonly Measurement[];
}

/** Each declared instrument of a reading once, with its lines. */
export function instrumentsUsed(reading: Reading, { instruments }: Context): readonly Used[] {
  if (instruments.size === 0) return NONE;
  const used = new Map<string, { instrument: Instrument; place: Place; lines: Measurement[] }>();
  for (const line of reading.measurements) {
    const instrument = instrumentOfLine(line, reading, instruments);
    if (!instrument) continue;
    const known = used.get(instrument.name);
    if (known) known.lines.push(line);
    else
      used.set(instrument.name, {
        instrument,
        place: line.withPlace ?? reading.withPlace ?? reading.place,
        lines: [line],
      });
  }
  return [...used.values()];
}

const NONE: readonly Used[] = [];
