import {
  ACTION_STATES,
  CLOCK_SIGNS,
  DEBRIEF_STEPS,
  MOMENT_KINDS,
  RATINGS,
  SIGNS_OF_WORK,
  SUGGESTION_REASONS,
  TOPICS,
} from '../../engine/review/index.ts';
import { SEATS } from '../../engine/table/index.ts';
import { change, fork } from './cardShape.ts';
import { group, list, number, optional, text, truth, words } from './shapes.ts';

/** What was noted and is looked back at, as it travels: the part of `TableView` that is called review. */

const quantity = number('float64');
const count = number('uint32');
const seat = words(SEATS);
const topic = words(TOPICS);

const measured = group({
  seconds: optional(quantity),
  line: optional(count),
  over: list(words(CLOCK_SIGNS)),
  corrected: optional(group({ seconds: optional(quantity), reason: text, by: text })),
});

export const review = group({
  step: words(DEBRIEF_STEPS),
  topic,
  clip: optional(group({ from: quantity, to: quantity, seat: optional(seat), playedFor: quantity })),
  hotWash: list(group({ name: text, word: text, thing: text })),
  loads: list(
    group({
      name: text,
      seat,
      thought: count,
      hands: count,
      haste: count,
      success: count,
      effort: count,
      strain: count,
      text,
    }),
  ),
  moments: list(
    group({
      kind: words(MOMENT_KINDS),
      after: quantity,
      inject: optional(text),
      seat: optional(seat),
      text: optional(text),
    }),
  ),
  measures: list(
    group({
      inject: text,
      sentAfter: quantity,
      measures: group({ detect: measured, isolate: measured, recover: measured }),
      responses: list(group({ id: text, seat, within: quantity, isSeen: truth, seconds: optional(quantity) })),
    }),
  ),
  notes: list(group({ topic, text })),
  goal: text,
  actions: list(group({ id: count, text, owner: text, due: text, state: words(ACTION_STATES), isRule: truth })),
  declined: optional(text),
  observations: list(
    group({ id: count, seat: optional(seat), sign: words(SIGNS_OF_WORK), topic, text, after: quantity, by: text }),
  ),
  ratings: list(group({ objective: text, rating: words(RATINGS), evidence: text, by: text })),
  whatIfs: list(group({ change, fork: optional(fork), refused: optional(text) })),
  suggestions: list(group({ objective: text, rating: words(RATINGS), reasons: list(words(SUGGESTION_REASONS)) })),
});
