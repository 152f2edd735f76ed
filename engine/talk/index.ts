export { ALERT_LEVELS } from '../drill/drill.ts';
export { tell } from './alerts.ts';
export { CALL_RATE, LONGEST_LINE, MOST_CALLS } from './callout.ts';
export { ADDRESSEES, POLL_ANSWERS, POLL_QUESTIONS, type Addressee, type PollAnswer } from './commands.ts';
export { LONGEST_REASON } from './poll.ts';
export { fillSentence, SENTENCES, SENTENCES_OF } from './sentences.ts';
export { ALERT_CAUSES, LOGGED_KINDS, STAND_IN_REASONS } from './talk.ts';
