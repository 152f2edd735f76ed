/** Ground flatter than this is called level [rad]. */
const LEVEL = 0.005;

export function isLevel(slope: number): boolean {
  return Math.abs(slope) < LEVEL;
}
