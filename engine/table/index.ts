export { ALIGNING_TICKS } from './alignment.ts';
export { applyEntry } from './applyEntry.ts';
export { compareWorlds, type WorldTouchdown } from './compareWorlds.ts';
export { CEILING_RANGE, CUT_OFF_STATES, mostPercent, ONE_LINE_PERCENT, type EngineSettings } from './engineSettings.ts';
export type { Entry, EntryContent } from './entry.ts';
export {
  CHANGE_KINDS,
  STANCE_RANGE_PERCENT,
  wantedFork,
  type Change,
  type FlownPath,
  type Fork,
  type WantedFork,
} from './fork.ts';
export {
  judgeChoosing,
  judgeCommand,
  judgeEntry,
  judgeJoin,
  MOST_MEMBERS,
  noteLine,
  THRUST_RANGE,
  TILT_RANGE_DEG,
} from './judge.ts';
export { LONGEST_NAME, parseMemberName } from './memberName.ts';
export {
  FLIGHT_MODES,
  PACES,
  PLAN_FORMAT,
  SENSOR_TROUBLES,
  type FlightMode,
  type Pace,
  type PlanChoice,
  type SensorTrouble,
} from './planChoice.ts';
export { playedModel } from './playedModel.ts';
export { bandOf, calloutOf } from './marginBand.ts';
export { PERMISSIONS, type Who } from './permissions.ts';
export type { LeadReadings, PropellantReadings, SiteReadings } from './seatReadings.ts';
export {
  GROUND_NOTES,
  FACING_RANGE,
  LIMIT_RANGE,
  SPOT_APPROACHES,
  type GroundNote,
  type MarkedSpot,
  type SiteNotes,
  type SpotApproach,
} from './siteNotes.ts';
export { spare } from './runEvents.ts';
export { createTable, judgeDescent, scorecardOf, stepTable, type Table } from './table.ts';
export { STAND_IN_AFTER_TICKS } from './attendance.ts';
export { formatTableCode, parseTableCode, TABLE_CODE_ALPHABET, TABLE_CODE_LENGTH } from './tableCode.ts';
export { hashInstruments } from './instruments.ts';
export type { TableModel } from './tableModel.ts';
export {
  CALLOUTS,
  CARD_OUTCOMES,
  MARGIN_BANDS,
  NO_MARGINS,
  type ArrivalLimit,
  type BelievedArrival,
  type SourceFailure,
  type Callout,
  type CardOutcome,
  type CrewEntry,
  type Defect,
  type JudgedContact,
  type JudgedDescent,
  type LiveMargin,
  type MarginBand,
  type NoMargin,
  type PredictedMargin,
  type Scorecard,
} from './scorecardTypes.ts';
export {
  DRAWN_IN,
  type BeliefSpread,
  type BriefView,
  type CommonView,
  type DealtCard,
  type LaidView,
  type RowView,
  type DrawnIn,
  type MapView,
  type SourceReading,
  type HeldControls,
  type OtherView,
  type OwnView,
  type SeatView,
  type TableView,
} from './viewTypes.ts';
export {
  CONDUCTS,
  DELAY_RANGE_S,
  GIVEN_ROLES,
  NAMED_CAUSES,
  ROLES,
  SEATS,
  STAGES,
  type InstrumentPlan,
  type Command,
  type MemberId,
  type NamedCause,
  type NamedSource,
  type Conduct,
  type Refusal,
  type Role,
  type Seat,
  type TablePlan,
} from './tableTypes.ts';
export { ORDERS } from './turns.ts';
export { marginNow } from './flightKnown.ts';
export { askForDrill } from './viewDrill.ts';
export { viewAt, viewCommon, viewOwn, viewTable, viewTruth } from './viewTable.ts';
export { DESCENT_RATE_RANGE_TENTHS, DRIFT_RANGE_TENTHS } from './orders.ts';
export { paceNow } from './pace.ts';
export { closedFormAt, pivotAtTouchdown } from './closedForm.ts';
export { leastLimit, type ContactRange, type LimitTable } from './limitTable.ts';
export { entriesOf, evenArrival, limitMaker, type LimitEntry, type LimitTableRequest } from './makeLimitTable.ts';
export { turned } from './believedFacing.ts';
export { arrivalCase, simulateArrival } from './simulateArrival.ts';
