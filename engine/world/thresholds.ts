/** Where phases begin and verdicts fall: value, unit, why. */

/** Height at which the approach becomes the terminal descent [m]. Fits starts of 60 to 120 m. */
export const APPROACH_ENDS = 50;

/** Engine off below this height is the final drop [m]. A fall of 3 m on the Moon ends at 3.1 m/s. */
export const FINAL_DROP_BELOW = 3;

/** A lander whose lowest foot is this far up after a contact is flying again [m]. */
export const FLYING_AGAIN_ABOVE = 1;

/** How long the phase 'contact' lasts at most before settling [ticks]. Half a second. */
export const CONTACT_TICKS = 30;

/** A foot must have been clear this long to count as coming down anew [ticks]. A tenth of a second: chatter is no contact. */
export const FOOT_CLEAR_TICKS = 6;

/** Most contacts that are kept: the first and the hardest stay [-]. */
export const MAX_ARRIVALS = 16;

/** Still: slower than this [m/s], [rad/s]. A body a hundredth of a radian off balance on the Moon is faster in a second. */
export const STILL_SPEED = 0.01;
export const STILL_RATE = 0.002;

/** At rest after lying still this long [ticks]. One and a half seconds. */
export const REST_TICKS = 90;

/** A lander that still moves this long after it last flew is called as it lies [ticks]. One minute. */
export const SETTLE_LIMIT_TICKS = 3600;

/**
 * A crash brings so many times the energy that all its legs take up [-], and is judged this long after its contact if it used a leg up
 * [ticks]. Two seconds. At 1 times, 9 of 2000 arrivals of Trivet at up to 5 m/s would be called before they tip.
 */
export const CRASH_ENERGY = 4;
export const CRASH_TICKS = 120;

/** A lander that leans farther than this [rad] is called tipped once it has lain on its hull so long [ticks]; it does not rise again. */
export const LYING_LEAN = Math.PI / 3;
export const LYING_TICKS = 90;
