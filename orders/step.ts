/** What is done to typed figures on the way to the judged one. */
import type { Unit } from './limits';

/** One step from a typed figure to the judged one. */
export type Step =
  | { readonly step: 'drum'; readonly thin: number; readonly wide: number; readonly cylinder: number }
  | {
      readonly step: 'difference';
      readonly from: number;
      readonly to: number;
      readonly result: number;
      readonly surface: string | null;
    }
  | {
      readonly step: 'clock' | 'slab';
      readonly from: number;
      readonly to: number;
      readonly plain: number;
      readonly index: number | null;
      readonly result: number;
    }
  | { readonly step: 'eighth'; readonly part: Part; readonly from: number; readonly to: number }
  | { readonly step: 'zero'; readonly zero: number; readonly from: number; readonly to: number }
  | { readonly step: 'engraved'; readonly value: number }
  | { readonly step: 'mean'; readonly of: readonly number[] }
  /** The target on a ring, towards an angle: what that is in base in and base up, prism dioptres. */
  | {
      readonly step: 'ring';
      readonly ring: number;
      readonly degrees: number;
      readonly in: number;
      readonly up: number;
    }
  /** Two lenses put together: their sum, or right less left. */
  | {
      readonly step: 'sum' | 'less';
      readonly of: 'length' | 'base-in' | 'base-up';
      readonly right: number;
      readonly left: number;
      readonly result: number;
      readonly unit: Unit;
    };

/** Which figure of a power a step worked on; adds have one figure only. */
export type Part = 'sphere' | 'cylinder' | 'add';
