import { JUDGMENTS } from '../../engine/estimate/index.ts';
import { SOURCES } from '../../engine/sensors/index.ts';
import { CONDUCTS, GROUND_NOTES, NAMED_CAUSES, SEATS } from '../../engine/table/index.ts';
import {
  ADDRESSEES,
  ALERT_CAUSES,
  ALERT_LEVELS,
  LOGGED_KINDS,
  POLL_ANSWERS,
  POLL_QUESTIONS,
  SENTENCES,
  STAND_IN_REASONS,
} from '../../engine/talk/index.ts';
import { group, list, number, optional, text, truth, words } from './shapes.ts';

/** What was said, as it travels: the part of `TableView` that is called talk. */

const quantity = number('float64');
const count = number('uint32');
const seat = words(SEATS);

const call = group({
  id: count,
  after: quantity,
  from: seat,
  byStandIn: truth,
  to: words(ADDRESSEES),
  sentence: optional(words(SENTENCES)),
  source: optional(words(SOURCES)),
  values: list(quantity),
  text: optional(text),
  waitsFor: list(seat),
  isConfirmed: truth,
});

const poll = group({
  id: count,
  question: words(POLL_QUESTIONS),
  by: seat,
  answers: list(
    group({
      seat,
      byStandIn: truth,
      answer: words(POLL_ANSWERS),
      reason: text,
      because: optional(words(STAND_IN_REASONS)),
    }),
  ),
  isIn: truth,
  unanswered: list(seat),
  decision: optional(words(POLL_ANSWERS)),
});

const alert = group({
  id: count,
  cause: words(ALERT_CAUSES),
  source: optional(words(SOURCES)),
  text: optional(text),
  level: words(ALERT_LEVELS),
  isAcknowledged: truth,
  isCleared: truth,
});

const line = group({
  after: quantity,
  seat: optional(seat),
  name: optional(text),
  kind: words(LOGGED_KINDS),
  call: optional(count),
  source: optional(words(SOURCES)),
  judgment: optional(words(JUDGMENTS)),
  cause: optional(words(NAMED_CAUSES)),
  ground: optional(words(GROUND_NOTES)),
  answer: optional(words(POLL_ANSWERS)),
  figure: optional(quantity),
  on: optional(truth),
  conduct: optional(words(CONDUCTS)),
});

export const talk = group({
  calls: list(call),
  openCount: count,
  open: list(group({ id: count, after: quantity, from: seat, to: words(ADDRESSEES), isReadBack: truth })),
  question: words(POLL_QUESTIONS),
  poll: optional(poll),
  alerts: list(alert),
  log: list(line),
});
