import { nearestWord } from '../../../grammar';
import type { Fix, Place } from '../../finding';
import type { Order } from '../../model';
import { type Rule, replace } from '../rule';

export const instrumentUnknown: Rule = {
  code: 'instrument-unknown',
  family: 'bench',
  level: 'warning',
  page: {
    checks: 'A reading names an instrument that no `instrument` block of this file or of the bench file describes.',
    why: 'The smallest step, the zero and the calibration of an unknown instrument are not known, so its figures are taken as typed and nothing is said about their worth.',
    example: { wrong: 'reading 2026-11-24 with FOC-B', right: 'reading 2026-11-24 with FOC-A' },
    fix: 'Writes the nearest declared name, or opens an instrument block above the order. Its smallest step and its calibration are still to be filled in.',
    source: 'Common practice, no source.',
  },
  message: ({ name }) => `No instrument “${name}” is declared. Its step, zero and calibration are not known.`,
  fixes: (site) => {
    const { name, near } = site.finding.data;
    const written = /[\s"#]/.test(String(name)) ? `"${String(name).replaceAll('"', '""')}"` : String(name);
    const declare: Fix = {
      title: `Declare the instrument ${name}`,
      safe: false,
      edits: [{ line: 0, start: 0, end: 0, text: `instrument ${written}\n\n` }],
    };
    return typeof near === 'string' ? [replace(site, `Write ${near}`, near, false), declare] : [declare];
  },
  check: ({ order, context }, report) => {
    // It may be declared in the bench file that is not at hand.
    if (context.missing.length > 0) return;
    const names = [...context.instruments.keys()];
    for (const [name, place] of firstNamed(order)) {
      if (context.instruments.has(name)) continue;
      const near = nearestWord(name, names);
      report(place, { name, ...(near === null ? {} : { near }) });
    }
  },
};

/** Each instrument that the order’s readings name, with the first place it is named at. */
function firstNamed({ readings }: Order): ReadonlyMap<string, Place> {
  const places = new Map<string, Place>();
  for (const reading of readings) {
    for (const { with: name, withPlace } of [reading, ...reading.measurements]) {
      if (name !== null && withPlace && !places.has(name)) places.set(name, withPlace);
    }
  }
  return places;
}
