// The public door of the engine: explicit names, one block a folder.

// engine
export { CAUTION, STANDARD_GRAVITY } from './constants.ts';
export { accept, formatProblem, refuse, type FieldProblem, type Result } from './result.ts';
export { WORLDS, findWorld, type World } from './worlds.ts';

// engine/table
export {
  CALLOUTS,
  MARGIN_BANDS,
  SEATS,
  STAGES,
  type Callout,
  type Command,
  type HeldControls,
  type LiveMargin,
  type MarginBand,
  type MemberId,
  type Refusal,
  type Scorecard,
  type Seat,
  type SeatView,
  type Stage,
  type TablePlan,
  type TableView,
} from './table/tableTypes.ts';

// engine/world
export {
  OUTCOMES,
  PHASES,
  type ControlInput,
  type DescentEvent,
  type DescentSetup,
  type DescentState,
  type LegState,
  type Outcome,
  type Phase,
  type StartState,
  type Terrain,
  type TouchdownState,
} from './world/descent.ts';
