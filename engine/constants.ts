/**
 * Standard acceleration of free fall [m/s²]. Exact by definition [CGPM1901].
 * It is the gravity of `earth` in WORLDS, and turns a specific impulse in seconds into an exhaust speed on every world.
 */
export const STANDARD_GRAVITY = 9.80665;

/** Stands on every screen, print and export, word for word. */
export const CAUTION = 'Exercise. Not for operational decisions. Follow your own qualified authority and local rules.';
