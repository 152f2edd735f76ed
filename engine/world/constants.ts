/**
 * Of everything that decides the bits of a descent. Raised by hand with every change that moves a golden hash; a record of another revision is
 * refused, since there is no way to play it back truly.
 */
export const PHYSICS_REVISION = 3;

/** Ticks a second: one tick is one input and one step of the table [1/s]. */
export const TICK_RATE = 60;

/** Physics steps a tick. At 240 a second the error of a tipping block is a quarter of that at 60. */
export const STEPS_PER_TICK = 4;

/** Length of a physics step, the only one there is [s]. */
export const PHYSICS_DT = 1 / (TICK_RATE * STEPS_PER_TICK);

/** Length of a tick [s]. */
export const TICK_DT = 1 / TICK_RATE;

/** Iterations of the contact solver; more change nothing in a tipping block. */
export const VELOCITY_ITERATIONS = 8;
export const POSITION_ITERATIONS = 3;

/** The world refuses to step a body faster than this [m/s], [rad/s]. No descent of ours comes near. */
export const MAX_SPEED = 2000;
export const MAX_RATE = 300;
