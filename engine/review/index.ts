/** Public door of what is noted and looked back at. */
export { MOMENT_KINDS } from './moments.ts';
export {
  ACTION_STATES,
  DEBRIEF_STEPS,
  LONGEST_NOTE,
  LONGEST_WORD,
  MEASURE_KINDS,
  OPEN_STEPS,
  RATINGS,
  SIGNS_OF_WORK,
  TOPICS,
} from './review.ts';
export { SUGGESTION_REASONS } from './suggest.ts';
