import { LIMIT_RANGE, type SiteReadings } from '../../engine/table/index.ts';
import { SITE_CARD } from '../text/en.ts';
import { degrees, distance, inDegrees } from '../text/numbers.ts';

/** Slopes below this are level, as they are read [deg]. */
const LEVEL_DEG = 0.05;

/** The limit that may be stated: the least to either side, rounded down to hundredths of a meter a second; undefined where neither is known. */
export function offeredLimit({ limitLeft, limitRight }: SiteReadings): number | undefined {
  const least = Math.min(limitLeft ?? Infinity, limitRight ?? Infinity);
  if (least === Infinity) return undefined;
  // a limit of exactly 0.29 must not be offered as 0.28
  return Math.max(LIMIT_RANGE.least, Math.min(LIMIT_RANGE.most, Math.floor(100 * least + 1e-6)));
}

/** A slope with the way in which it rises. */
export function slopeWords(slope: number | undefined): string {
  if (slope === undefined) return SITE_CARD.nothing;
  if (Math.abs(inDegrees(slope)) < LEVEL_DEG) return SITE_CARD.level;
  return SITE_CARD.rises(degrees(Math.abs(slope)), slope > 0 ? 'right' : 'left');
}

/** Between which slopes it may be. */
export function slopeRangeWords({ slopeLeast, slopeMost }: SiteReadings): string {
  if (slopeLeast === undefined || slopeMost === undefined) return '';
  return SITE_CARD.between(slopeWords(slopeLeast), slopeWords(slopeMost));
}

/** Whether all legs are shown locked, or which are not, by their numbers. */
export function legWords(locked: readonly boolean[]): string {
  if (locked.length === 0) return SITE_CARD.nothing;
  const open = locked.flatMap((isLocked, index) => (isLocked ? [] : [index + 1]));
  return open.length === 0 ? SITE_CARD.allLocked : SITE_CARD.notLocked(open);
}

/** A place ahead by how far it is from where the lander is, which is what a pilot can use. */
export function aheadWords(meters: number, x: number): string {
  const ahead = meters - x;
  return Math.abs(ahead) < 0.5
    ? SITE_CARD.below
    : SITE_CARD.ahead(distance(Math.abs(ahead), 0), ahead > 0 ? 'right' : 'left');
}
