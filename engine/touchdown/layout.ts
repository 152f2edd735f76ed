/**
 * Where each number stands in the flat arrays of a kernel. One Float64Array each for the body, the feet, the hull points,
 * the parameters of the run and what a batch of steps found: plain doubles side by side, nothing allocated per step. Each name begins
 * with that of its array; tests/boundary/offsets.test.ts holds that none is used on another.
 */

// body: state of the rigid body, ground frame unless said
export const BODY_PX = 0; // center of mass [m]
export const BODY_VX = 3; // its velocity [m/s]
export const BODY_QW = 6; // attitude, principal frame to ground frame, w first
export const BODY_LX = 10; // angular momentum, principal frame [N·m·s]
export const BODY_AX = 13; // acceleration, gravity included [m/s²]
export const BODY_MX = 16; // moment, principal frame [N·m]
export const BODY_R11 = 19; // rotation matrix of the attitude, row by row
export const BODY_SIZE = 28;

// feet: one record a leg that the lander has
export const FOOT_X = 0; // unloaded footpad, principal frame, moved by permanent deformation [m]
export const FOOT_STRUT = 3; // unit vector from footpad to hip, principal frame
export const FOOT_KN = 6; // elastic stiffness of leg and soil along the normal and across [N/m]
export const FOOT_KT = 7;
export const FOOT_CN = 8; // damping coefficient over step, along and across [N/m]
export const FOOT_CT = 9;
export const FOOT_CRUSH = 10; // crush force now, Infinity when bottomed or when nothing can yield [N]
export const FOOT_STROKE = 11; // permanent shortening so far [m]
export const FOOT_STAGE_END = 12; // stroke at which the current stage is used up [m]
export const FOOT_STAGE = 13; // index of the current stage
export const FOOT_SECONDARY = 14; // lateral crush force now [N]
export const FOOT_LATERAL = 15; // lateral set so far, as path length [m]
export const FOOT_LATERAL_END = 16; // lateral stroke there is [m]
export const FOOT_BEARING = 17; // soil force at which the pad sinks further [N]
export const FOOT_SINKAGE = 18; // permanent [m]
export const FOOT_LEVEL = 19; // height of the sunk surface above the ground under this pad [m]
export const FOOT_TOUCHING = 20; // 1 in contact, 0 not
export const FOOT_ANCHOR1 = 21; // where the foot would stand without tangential force, surface coordinates [m]
export const FOOT_ANCHOR2 = 22;
export const FOOT_UN = 23; // elastic approach at the last step: along the normal (negative: gap) and across [m]
export const FOOT_U1 = 24;
export const FOOT_U2 = 25;
export const FOOT_LOAD = 26; // axial load now, and its peak [N]
export const FOOT_PEAK_LOAD = 27;
export const FOOT_SLIDE = 28; // path slid along the ground [m]
export const FOOT_AREA = 29; // of the footpad [m²]
export const FOOT_SEGMENT = 30; // of the profile on which the foot stands
export const FOOT_LEG = 31; // index of the leg in the lander
export const FOOT_BOTTOMED_STIFFNESS = 32; // [N/m]
export const FOOT_LEG_STIFFNESS = 33; // now, along and across [N/m]
export const FOOT_LATERAL_STIFFNESS = 34;
export const FOOT_BOTTOMED = 35; // 1 when all stages are used up
// 36 is free: the hash of a state runs over every number, so that closing the gap would move every golden hash
export const FOOT_SOIL_COEFFICIENT = 37; // force per sinkage^exponent [N/m^exponent]; unused when the strength is constant
export const FOOT_LAST_SET = 38; // lateral set of the last step that had one, a first guess [m]
export const FOOT_NORMAL_X = 39; // of the profile at the last step
export const FOOT_NORMAL_Z = 40;
export const FOOT_FOLDS = 41; // 1 when the leg is not latched: gone once folded over its own length
export const FOOT_SIZE = 42;

// hull: one record a point, which begins with its place in the principal frame [m]
export const HULL_TOUCHING = 3;
export const HULL_ANCHOR1 = 4;
export const HULL_ANCHOR2 = 5;
export const HULL_UN = 6;
export const HULL_U1 = 7;
export const HULL_U2 = 8;
export const HULL_SEGMENT = 9;
export const HULL_NORMAL_X = 10; // of the profile at the last step
export const HULL_NORMAL_Z = 11;
export const HULL_SIZE = 12;

// run: parameters of one run
export const RUN_STEP = 0; // [s]
export const RUN_FRICTION = 1;
export const RUN_GX = 2; // gravity in the ground frame [m/s²]
export const RUN_INVERSE_MASS = 5;
export const RUN_INVERSE_IX = 6; // principal inertias [1/(kg·m²)]
export const RUN_AXIS_X = 9; // long axis of the lander, principal frame
export const RUN_THRUST = 12; // [N], and the factor by which it falls off each step
export const RUN_THRUST_DECAY = 13;
export const RUN_HOLD_X = 14; // moment of the attitude thrusters, principal frame [N·m]
export const RUN_HULL_ON = 17; // 1 when a hull point may touch in this batch
export const RUN_HULL_K = 18; // stiffness [N/m] and damping over step [N/m] of a hull point
export const RUN_HULL_C = 19;
export const RUN_LEDGER_ON = 20;
export const RUN_SOIL_EXPONENT = 21; // 0: constant strength
export const RUN_THRUST_MOMENT = 22; // moment of a unit of thrust about the center of mass, principal frame [m]
export const RUN_SIZE = 25;

// found: what a batch of steps found
export const FOUND_CONTACTS = 0; // feet in contact at the last step
export const FOUND_SLIPPED = 1; // 1 if a foot slid since the last look
export const FOUND_PEAK_ACCELERATION = 2; // gravity not counted, squared [m²/s⁴]
export const FOUND_HIGHEST_UN = 3; // least gap of the feet, negative [m]
export const FOUND_HULL_CONTACTS = 4;
export const FOUND_UNSETTLED = 5; // returns that did not settle within their iterations
export const FOUND_CRUSH_WORK = 6; // [J]
export const FOUND_SOIL_WORK = 7;
export const FOUND_FRICTION_WORK = 8;
export const FOUND_DAMPING_WORK = 9;
export const FOUND_SIZE = 10;

// trial: the force of one foot on its way through the plastic return, surface axes (normal, along, across)
export const TRIAL_N = 0; // elastic guess, reduced by the permanent deformation found so far [N]
export const TRIAL_T1 = 1;
export const TRIAL_T2 = 2;
export const TRIAL_HELD_N = 3; // the same inside the limits of soil and friction
export const TRIAL_HELD_T1 = 4;
export const TRIAL_HELD_T2 = 5;
export const TRIAL_SANK = 6; // sinkage that goes with it [m]
export const TRIAL_STRUT_N = 7; // strut axis
export const TRIAL_STRUT_T1 = 8;
export const TRIAL_STRUT_T2 = 9;
export const TRIAL_SHIFT_N = 10; // permanent shift of the pad found so far [m]
export const TRIAL_SHIFT_T1 = 11;
export const TRIAL_SHIFT_T2 = 12;
export const TRIAL_STIFF_N = 13; // stiffness with its dashpot over the step, and the dashpot alone [N/m]
export const TRIAL_STIFF_T = 14;
export const TRIAL_DASH_N = 15;
export const TRIAL_DASH_T = 16;
export const TRIAL_DS = 17; // shortening of the strut [m]
export const TRIAL_ACROSS = 18; // trial force across the surface of a foot that slides; 0 when it sticks [N]
export const TRIAL_TOWARD = 19; // direction of the lateral set, across the strut
export const TRIAL_LOW = 22; // directions on the two sides of the lateral force, and their misses; 0 where none is known
export const TRIAL_LOW_MISS = 25;
export const TRIAL_HIGH = 26;
export const TRIAL_HIGH_MISS = 29;
export const TRIAL_SIDE = 30; // the side found last, 1 low or -1 high
export const TRIAL_TURNED = 31; // tangent of the last turn before the sides are known
export const TRIAL_SIZE = 32;

// hullForce: sums over the hull points, ground frame
export const HULL_SUM_FX = 0;
export const HULL_SUM_MX = 3;
export const HULL_FORCE_SIZE = 6;
