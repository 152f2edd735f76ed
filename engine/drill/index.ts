/** Public door of the drills. */
export {
  ALERT_LEVELS,
  DISPLAYS,
  DRILL_FORMAT,
  EVENT_KINDS,
  STATE_QUANTITIES,
  type Drill,
  type Effect,
  type EventRow,
  type NamedFault,
  type Sign,
  type StateQuantity,
  type TargetedResponse,
  type Trigger,
} from './drill.ts';
