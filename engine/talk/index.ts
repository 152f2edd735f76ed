export { ALERT_LEVELS, type AlertLevel } from '../drill/drill.ts';
export { tell } from './alerts.ts';
export { CALL_RATE, LONGEST_LINE, MOST_CALLS } from './callout.ts';
export { ADDRESSEES, ANSWERS_TO, POLL_ANSWERS, POLL_QUESTIONS, type Addressee, type PollAnswer } from './commands.ts';
export { LONGEST_REASON } from './poll.ts';
export { fillSentence, namesSource, SENTENCES, SENTENCES_OF, type Sentence } from './sentences.ts';
export { ALERT_CAUSES, LOGGED_KINDS, STAND_IN_REASONS, type StandInReason } from './talk.ts';
export {
  wholeTalk,
  type AlertView,
  type AnswerView,
  type CallView,
  type LogLineView,
  type PollView,
  type TalkView,
} from './viewTalk.ts';
