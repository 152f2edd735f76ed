/** Public door of the drills. */
export {
  ALERT_LEVELS,
  DISPLAYS,
  DRILL_FORMAT,
  EVENT_KINDS,
  STATE_QUANTITIES,
  type AbortSign,
  type AlertLevel,
  type Display,
  type Drill,
  type Effect,
  type EventRow,
  type NamedFault,
  type Objective,
  type Rule,
  type Sign,
  type StateQuantity,
  type TargetedResponse,
  type Trigger,
} from './drill.ts';
export {
  delayed,
  dueRows,
  firstEvents,
  ROW_STATES,
  sent,
  skipped,
  ticksOf,
  type EventFacts,
  type EventListState,
  type RowState,
} from './eventList.ts';
export { failuresAfter, firstFailures, type Failure } from './failures.ts';
