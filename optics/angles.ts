/** Returns an angle in radians from one in degrees. */
export function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** Returns an angle in degrees from one in radians. */
export function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}
