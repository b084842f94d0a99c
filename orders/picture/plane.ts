/** Turns millimetres from the middle of the bridge into units of the drawing. */
export interface Plane {
  readonly x: (right: number) => number;
  readonly y: (up: number) => number;
}
