/** Power, cylinder and axis of each lens: what an oracle says of them. */
import { EYES, type Toric } from './lens';
import { axisLimit, powerLimits, printedSet } from './limits';
import { type Check, classOf } from './oracle';
import type { Pair } from './pair';

/**
 * The meridian of highest absolute power is judged, and where the set limits each meridian the other one too. The read
 * meridian is the one of the same part of the minus form, so that a turned lens fails on its axis alone. Of equal ones the
 * more plus is the strongest; no account says which, and both have the same limit.
 */
export function powerChecks(pair: Pair): Check[] {
  const printed = printedSet(pair.set);
  const of = classOf(pair);
  return EYES.flatMap((eye): Check[] => {
    const [ordered, made] = [pair.ordered[eye].power, pair.made[eye].power];
    const limits = powerLimits(printed, of, ordered);
    if (!limits) return [];
    const crossed = (lens: Toric): number => lens.sphere + lens.cylinder;
    const isSphereFirst = Math.abs(ordered.sphere) >= Math.abs(crossed(ordered)) - 1e-9;
    const sphere = { what: `sphere ${eye}`, ordered: ordered.sphere, off: made.sphere - ordered.sphere };
    const other = { what: `crossed ${eye}`, ordered: crossed(ordered), off: crossed(made) - crossed(ordered) };
    const judged = limits.each ? [sphere, other] : [isSphereFirst ? sphere : other];
    const checks: Check[] = judged.map((one) => ({
      of: 'power',
      what: one.what,
      off: Math.abs(one.off),
      limit: limits.meridian(one.ordered),
    }));
    if (limits.cylinder !== undefined)
      checks.push({
        of: 'power',
        what: `cylinder ${eye}`,
        off: Math.abs(made.cylinder - ordered.cylinder),
        limit: limits.cylinder,
      });
    if (ordered.cylinder !== 0 && made.cylinder !== 0)
      checks.push({
        of: 'axis',
        what: `axis ${eye}`,
        off: turned(made.axis, ordered.axis),
        limit: axisLimit(printed, of, ordered.cylinder),
      });
    return checks;
  });
}

/** The short way round. */
function turned(one: number, other: number): number {
  const way = Math.abs(one - other) % 180;
  return Math.min(way, 180 - way);
}
