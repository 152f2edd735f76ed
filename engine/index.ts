// The public door of the engine: explicit names, one block a folder.

// engine
export { CAUTION, STANDARD_GRAVITY } from './constants.ts';
export {
  createProblemList,
  describe,
  readChoice,
  readFields,
  readList,
  readNumber,
  readText,
  report,
  type NumberRange,
  type ProblemList,
  type TextRule,
} from './fieldReader.ts';
export { accept, formatProblem, refuse, type FieldProblem, type Result } from './result.ts';
export { WORLDS, findWorld, type World } from './worlds.ts';

// engine/checks
export {
  CHECK_KINDS,
  OUTSIDE_CHECKS,
  runChecks,
  type CheckKind,
  type CheckRelation,
  type CheckResult,
  type OutsideCheck,
} from './checks/index.ts';

// engine/lander
export {
  BOUNDS,
  COUNTS,
  DEEPEST_NESTING,
  LANDER_FORMAT,
  MOST_BYTES,
  RANGES,
  TEXTS,
  applyInertia,
  formatLander,
  inertiaAbout,
  inertiaAlong,
  massProperties,
  parseLander,
  parseLanderText,
  tankLiquid,
  type BodyPoint,
  type CrushStage,
  type Engine,
  type InertiaTensor,
  type Lander,
  type Leg,
  type MassProperties,
  type Part,
  type PartShape,
  type Tank,
  type TankLiquid,
} from './lander/index.ts';

// engine/math
export { cos, exp, log, nextUniform, seedRandom, sin, tan, type RandomState } from './math/index.ts';

// engine/pivot
export {
  WIDEST,
  criticalFriction,
  requiredStance,
  tripLimit,
  type ContactCondition,
  type PivotBody,
  type RequiredStance,
  type SpeedLimit,
  type StanceDemand,
  type StancelessBody,
  type TripLimit,
} from './pivot/index.ts';

// engine/table
export {
  BAND_LIMITS,
  CALLOUTS,
  COMPARED_WORLDS,
  LONGEST_NAME,
  MARGIN_BANDS,
  MOST_MEMBERS,
  SEATS,
  SEAT_NAMES,
  STAGES,
  STAND_IN_AFTER_TICKS,
  TABLE_CODE_ALPHABET,
  TABLE_CODE_LENGTH,
  THRUST_RANGE,
  TILT_RANGE_DEG,
  bandOf,
  calloutOf,
  commandTable,
  compareWorlds,
  createTable,
  dropMember,
  forgetAbsent,
  formatTableCode,
  joinTable,
  leaveTable,
  parseMemberName,
  parseTableCode,
  playedModel,
  returnMember,
  staticTiltOf,
  stepTable,
  viewTable,
  type Callout,
  type Command,
  type ContactMargin,
  type HeldControls,
  type LiveMargin,
  type MarginBand,
  type Member,
  type MemberId,
  type PlayedDescent,
  type Refusal,
  type Scorecard,
  type Seat,
  type SeatView,
  type Stage,
  type Table,
  type TableModel,
  type TablePlan,
  type TableView,
  type WorldTouchdown,
} from './table/index.ts';

// engine/descent
export {
  burnPercent,
  commandedThrust,
  HASTY,
  leastBurnPercent,
  pilot,
  STEADY,
  type PilotedCraft,
  type PilotManner,
} from './descent/index.ts';

// engine/input
export { equalsControlInput, MAX_TILT_DEG, parseControlInput, quantizeControls } from './input/index.ts';

// engine/world
export {
  contactLimit,
  createDescent,
  groundHeight,
  groundSpan,
  hashDescent,
  OUTCOMES,
  PHASES,
  PHYSICS_DT,
  readDescent,
  STEPS_PER_TICK,
  stepDescent,
  TICK_DT,
  TICK_RATE,
  type ContactLimit,
  type ControlInput,
  type Descent,
  type DescentEvent,
  type DescentSetup,
  type DescentState,
  type LegState,
  type Outcome,
  type Phase,
  type StartState,
  type Terrain,
  type TouchdownState,
} from './world/index.ts';

// engine/touchdown
export {
  checkTouchdown,
  DEFAULT_DAMPING,
  DEFAULT_STEP,
  prepareTouchdown,
  runTouchdown,
  simulateTouchdown,
  TOUCHDOWN_LIMITS,
  TOUCHDOWN_OUTCOMES,
  type AttitudeHold,
  type ContactState,
  type EnergyLedger,
  type Ground,
  type GroundShape,
  type LegCondition,
  type LoadLimits,
  type Soil,
  type ThrustTail,
  type TouchdownCase,
  type TouchdownConditions,
  type TouchdownKernel,
  type TouchdownLimit,
  type TouchdownOptions,
  type TouchdownOutcome,
  type TouchdownResult,
  type TouchdownSample,
} from './touchdown/index.ts';
