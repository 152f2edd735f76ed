import { COUNTS } from '../lander/landerRanges.ts';

/** What the numbers of a fault must lie between. Units that depend on the channel are called its unit. */
export const TICKS = { least: 0, most: 1_000_000, unit: 'tick', whole: true } as const;
export const SECONDS = { least: 0, most: 600, unit: 's' } as const;
export const OFFSET = { least: -1000, most: 1000, unit: 'unit of the channel' } as const;
export const AMOUNT = { least: 0, most: 1000, unit: 'unit of the channel' } as const;
export const SHARE = { least: 0, most: 1, unit: '-' } as const;
export const LEG = { least: 0, most: COUNTS.legs.most - 1, unit: '-', whole: true } as const;
