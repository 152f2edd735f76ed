/** Step where no contact is stiffer than usual [s]. Chosen in CONVERGENCE.md. */
export const DEFAULT_STEP = 1 / 512;

/**
 * Bound of (omega h)^2 + (damping rate) h of the body on its feet [-]. The scheme is unstable beyond 4 without damping and
 * beyond 1 by damping alone; at this size the error of a bounce is about a percent, see CONVERGENCE.md.
 */
export const MAX_PHASE_SQUARED = 1 / 2;

/** Share of critical damping in leg and soil when none is given [-]. Common practice, no source. */
export const DEFAULT_DAMPING = 1 / 5;

/** The hull rings more shortly: share of critical damping of a hull point [-]. No source. */
export const HULL_DAMPING = 1 / 2;

/** Hull points that are taken to carry the body at once, at the farthest arm, when their stiffness and damping are bounded [-]. */
export const HULL_SUPPORTS = 4;

/** Bound of (omega h)^2 + (damping rate) h of the body on its hull points [-]; it leaves the hulls of the examples on rigid ground as they are. */
export const HULL_PHASE_SQUARED = 3 / 4;

/** Share of its first crush force at which a leg that is not latched folds, when none is given [-]. No source. */
export const DEFAULT_FOLD_FACTOR = 1 / 20;

/** Natural frequency of the attitude hold when none is given [rad/s]. No source. */
export const DEFAULT_HOLD_BANDWIDTH = 1;

/** Damping of the unsaturated attitude hold, share of critical [-]. Textbook value for little overshoot. */
export const HOLD_DAMPING = 0.7;

/** Default time limit in units of sqrt(height of the center of mass / gravity) [-]. */
export const TIME_LIMIT_PENDULUM = 40;

/** Margin, verdict, rest and thrusters are looked at each so many steps [-]. Short against any motion of the lander, long against a step. */
export const STEPS_PER_LOOK = 8;

/** Most that the body turns in one step of free flight [rad]: the splitting error of such a step is below a millionth of a radian. */
export const MAX_FLIGHT_TURN = 1 / 64;

/** The plumb line must be outside by this share of the height of the center of mass to count as tipping [-]. */
export const TIP_SHARE = 1 / 100;

/** Thrust below this share of the weight no longer postpones a verdict [-]. */
export const IDLE_THRUST_SHARE = 1 / 100;

/** Thrusters that could right the lander postpone a verdict until gravity's moment is this many times theirs [-]. */
export const HOLD_OVERPOWERED = 1.5;

/**
 * At rest: speed below this share of sqrt(g L), rate below it of sqrt(g / L), L the height of the center of mass [-]. On the Moon, a few
 * millimeters a second. Larger ends runs early that still rock.
 */
export const REST_SPEED_SHARE = 1 / 256;

/** At rest: acceleration below this share of g, angular acceleration below it of g / L [-]. Keeps turning points of a rocking body out. */
export const REST_ACCELERATION_SHARE = 1 / 32;

/** Looks in a row that must find the lander at rest. */
export const REST_LOOKS = 6;

/** Hull points nearer to the ground than this share of the height of the center of mass are always watched [-]. */
export const HULL_WATCH_SHARE = 1 / 50;

/**
 * Settled: kinetic energy below this share of what lifts the center of mass over the nearest edge, for QUIET_PENDULUM times
 * sqrt(L / g), in which the pads together slide less than QUIET_SLIDE_SHARE of L [-]. What is left can then neither tip the lander nor crush a leg by more than millimeters; a
 * tall lander on unevenly crushed legs rocks on for a minute.
 */
export const QUIET_ENERGY_SHARE = 1 / 128;
export const QUIET_PENDULUM = 2;
export const QUIET_SLIDE_SHARE = 1 / 128;

/** A lander cannot tip when its energy is below this share of what passing over the lowest edge takes [-]. The rest is for what the bound leaves out: the turn of the edge on a slope as legs give. */
export const SURE_SHARE = 9 / 10;

/** A lander that lies on its hull when its time is up has tipped if its long axis leans by more than this cosine, 45 deg [-]. */
export const LYING_COSINE = Math.SQRT1_2;

/**
 * Most of the energy of an impact on the hull that a rebound gives back [-]: damping of HULL_DAMPING gives back a few hundredths. All of it counts where the hull
 * is nearer to the ground than a turn of NEAR_COSINE, 30 deg, for what is lost then is little, and on ground steeper than ROLL_COSINE, 15 deg,
 * where a body that rolls on gains it again.
 */
export const REBOUND_SHARE = 1 / 2;
export const NEAR_COSINE = 0.866;
export const ROLL_COSINE = 0.966;

/**
 * Still rocking: a lander that cannot tip and whose legs and pads together have given way by less than ROCKING_CHANGE_SHARE of L, and slid by less
 * than QUIET_SLIDE_SHARE of it, for ROCKING_PENDULUM times sqrt(L / g) [-]. About a swing from one edge to the other and back.
 */
export const ROCKING_PENDULUM = 6;
export const ROCKING_CHANGE_SHARE = 1 / 4096;

/** Longest that a lander is brought to rest, in units of sqrt(L / g) [-]. */
export const REST_PENDULUM = 10;

/** Most steps that a run computes when no other budget is given [-]: a hundred times a long touchdown of a stiff lander, under a second. */
export const DEFAULT_MAX_STEPS = 1_000_000;
