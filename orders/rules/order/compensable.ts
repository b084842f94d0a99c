/** How far a lens may be from its prescription because it was converted for the way it is worn. */
import { type Power, principalMeridians, toVector } from '../../../optics';
import { attempt } from '../../attempt';
import { isLess } from '../../exact';
import type { Order } from '../../model';

/** Tilt and wrap where the order says none, degrees, and the change of the vertex distance, millimetres: generous. */
const UNSAID = { tilt: 12, vertex: 4 } as const;
/** What rounding, the near object and the aberration of an oblique ray may add, dioptres. Ours. */
const SLACK = { mean: 0.25, astigmatic: 0.12 } as const;
/** A mean power or a cylinder that came out as its own mirror image, to this part of itself. */
const MIRROR = 0.1;
/** Smaller ones than an eighth, and a quarter of cylinder, may change their sign by a conversion. */
const LEAST = 0.12;

/**
 * Whether conversion for vertex distance, tilt and wrap can make one power of the other. A tilt by θ adds F tan²θ of
 * cylinder and less than that of sphere; a move by d millimetres changes a power by F² d / 1000. Both are taken at the
 * strongest meridian, with the stated tilt and distances or else generous ones. True where it cannot be worked out.
 *
 * Source: Martin’s tilt formula and the vergence formula, as in optics/martin.ts and optics/vertex.ts; the slack is ours.
 */
export function isCompensable({ asWorn, tested }: Order, written: Power, converted: Power): boolean {
  return (
    attempt(() => {
      const [from, to] = [toVector(written), toVector(converted)];
      const strongest = Math.max(...principalMeridians(written).map(({ power }) => Math.abs(power)));
      const tilt = tan2(asWorn.panto?.value) + tan2(asWorn.wrap?.value);
      const moved = tested && asWorn.vertex ? Math.abs(tested.value - asWorn.vertex.value) : UNSAID.vertex;
      const byTilt = strongest * tilt;
      const byVertex = (strongest * strongest * moved) / 1000;
      const turned = Math.abs(from.m + to.m);
      if (isLess(LEAST - 0.01, Math.abs(from.m)) && turned <= MIRROR * Math.abs(from.m)) return false;
      const cylinder = Math.hypot(from.j0, from.j45);
      if (isLess(LEAST, cylinder) && Math.hypot(from.j0 + to.j0, from.j45 + to.j45) <= MIRROR * cylinder) return false;
      return (
        !isLess(SLACK.mean + byTilt + byVertex, Math.abs(from.m - to.m)) &&
        !isLess(SLACK.astigmatic + byTilt / 2 + byVertex, Math.hypot(from.j0 - to.j0, from.j45 - to.j45))
      );
    }) ?? true
  );
}

const tan2 = (degrees: number | undefined): number => Math.tan(((degrees ?? UNSAID.tilt) * Math.PI) / 180) ** 2;
