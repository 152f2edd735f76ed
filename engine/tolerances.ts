/** Numerical tolerances: value, unit, why this size, and what breaks when it is changed. */

/**
 * How near findRoot comes to a root, relative to the larger end of its bracket [-]. Four units in the last place: two
 * are lost in rounding the bracket's middle, and a finer one would have the search step between neighboring doubles.
 */
export const ROOT_RELATIVE_TOLERANCE = 4 * Number.EPSILON;
