/** Numerical tolerances: value, unit, why this size, and what breaks when it is changed. */

/**
 * How near findRoot comes to a root, relative to the larger end of its bracket [-]. Four units in the last place: two
 * are lost in rounding the bracket's middle, and a finer one would have the search step between neighboring doubles.
 */
export const ROOT_RELATIVE_TOLERANCE = 4 * Number.EPSILON;

/**
 * A rocking body rests once the rate left by an impact is below this share of its balance tilt times its frequency [-].
 * The tilt it would still reach is then 5e-9 of the balance tilt: far below any wobble that matters, and what keeps the
 * endless row of ever smaller impacts finite. Larger, decay is cut short; much smaller, rounding decides.
 */
export const ROCKING_REST_SHARE = 1e-4;

/**
 * Liquid, or free space, of less depth than this share of the rise of the tilted surface over a radius counts as none:
 * its center is put into the low corner, or not moved [-]. The hoof's integrals are then mostly rounding; the error is
 * below 0.0003 radii for a film of liquid, below 1e-9 radii for the free space.
 */
export const LEAST_LIQUID = 1e-9;
