/** Public door of what is noted and looked back at. */
export { CLOCK_SIGNS, type ClockSign } from './clockBetween.ts';
export { measuresOf, type InjectMeasures } from './measures.ts';
export { MOMENT_KINDS, type ReviewMoment } from './moments.ts';
export {
  ACTION_STATES,
  DEBRIEF_STEPS,
  LOAD_RANGE,
  LOAD_SIDES,
  LONGEST_NOTE,
  LONGEST_WORD,
  MEASURE_KINDS,
  OPEN_STEPS,
  RATINGS,
  SIGNS_OF_WORK,
  TOPICS,
  type Action,
  type DebriefStep,
  type Load,
  type LoadSide,
  type MeasureKind,
  type Rating,
  type Topic,
} from './review.ts';
export { SUGGESTION_REASONS, type Suggestion } from './suggest.ts';
export type { ReviewView } from './viewReview.ts';
