import starts from './starts.json' with { type: 'json' };

/** Where a descent begins, whatever the site and the lander. SI. */
export interface Start {
  /** Lower-case identifier, such as 'high'. */
  readonly id: string;
  readonly name: string;
  /** Of the feet above the highest ground under the lander [m]. */
  readonly height: number;
  /** Horizontal velocity, positive to the right [m/s]. */
  readonly drift: number;
  /** Positive downwards [m/s]. */
  readonly descentRate: number;
  /** Usable propellant lasts so long at full weight in a hover [s]: of a descent of half a minute to a minute, or of two to three by careful orders. */
  readonly hoverSeconds: number;
}

/** The starts that come with the program, from the longest descent to the shortest. */
export const STARTS: readonly Start[] = starts;

export function findStart(id: string): Start | undefined {
  return STARTS.find((start) => start.id === id);
}
