/** One ingredient of a ground: its height at x [m]. */
export type Profile = (x: number) => number;
