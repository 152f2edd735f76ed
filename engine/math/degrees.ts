/** People write degrees, the engine counts in radians: the one place where what a person asks or is told is turned. */
export function toRadians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

export function toDegrees(radians: number): number {
  return (radians * 180) / Math.PI;
}

/** An azimuth from 0 to below 360 deg, free of the last digits that turning radians into degrees leaves behind. */
export function toAzimuthDeg(radians: number): number {
  const rounded = Number(toDegrees(radians).toFixed(9));
  return ((rounded % 360) + 360) % 360;
}
