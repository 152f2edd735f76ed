import { faultOfChange } from '../table/fork.ts';
import { hasUnseen } from '../table/plainText.ts';
import type { TableState } from '../table/tableState.ts';
import type { Refusal } from '../table/tableTypes.ts';
import { changeOf, type ReviewCommand } from './commands.ts';
import { LOAD_RANGE, LOAD_SIDES, LONGEST_CLIP, MOST_NOTES, MOST_WHAT_IFS } from './review.ts';

/** What is wrong with something that this member may note or look at. */
export function faultOfReview({ review, events, objectives }: TableState, command: ReviewCommand): Refusal | undefined {
  const unseen = Object.values(command).some((value) => typeof value === 'string' && hasUnseen(value));
  if (unseen) return refusal('text', 'The text has characters that cannot be seen; use plain text.');
  switch (command.kind) {
    case 'observe':
      return review.observations.length < MOST_NOTES ? undefined : full('observations');
    case 'bookmark':
      return review.bookmarks.length < MOST_NOTES ? undefined : full('bookmarks');
    case 'rate':
      if (objectives.includes(command.objective)) return undefined;
      return refusal('no-objective', `There is no objective ${command.objective} in this drill.`);
    case 'correctMeasure':
      if (events?.rows[command.inject]?.state === 'sent') return undefined;
      return refusal('no-inject', `The inject ${command.inject} was not sent.`);
    case 'setDebriefStep':
      if (review.step === 'closed') return CLOSED;
      return review.step === command.step ? refusal('step', 'The debrief is at that step.') : undefined;
    case 'showClip': {
      const seconds = command.to - command.from;
      if (seconds > 0 && seconds <= LONGEST_CLIP) return undefined;
      return refusal('clip', `A clip lasts up to ${LONGEST_CLIP} s; got ${seconds} s.`);
    }
    case 'hideClip':
      return review.clip === undefined ? refusal('clip', 'No clip is shown.') : undefined;
    case 'setAction': {
      const { id } = command;
      if (id === undefined) return review.actions.length < MOST_NOTES ? undefined : full('actions');
      return review.actions.some((action) => action.id === id) ? undefined : NO_ACTION;
    }
    case 'dropAction':
      return review.actions.some(({ id }) => id === command.id) ? undefined : NO_ACTION;
    case 'askWhatIf':
      if (review.whatIfs.length >= MOST_WHAT_IFS) return full('questions', MOST_WHAT_IFS);
      return faultOfChange(changeOf(command));
    case 'closeDebrief':
      if (review.step === 'closed') return CLOSED;
      return review.step === 'summary'
        ? undefined
        : refusal('step', 'A debrief is closed after its summary; before that it can be declined, with a reason.');
    case 'declineDebrief':
      return review.step === 'closed' ? CLOSED : undefined;
    case 'sayLoad': {
      const wrong = LOAD_SIDES.find((side) => !isOnScale(command[side]));
      if (wrong === undefined) return undefined;
      const { least, most } = LOAD_RANGE;
      return refusal(
        'out-of-range',
        `The ${wrong} of a load is a whole number from ${least} to ${most}; got ${command[wrong]}.`,
      );
    }
    case 'washHot':
    case 'setTopic':
    case 'noteTopic':
    case 'setGoal':
      return undefined;
  }
  return command satisfies never;
}

function isOnScale(value: number): boolean {
  return Number.isInteger(value) && value >= LOAD_RANGE.least && value <= LOAD_RANGE.most;
}

function full(what: string, most = MOST_NOTES): Refusal {
  return refusal('full', `There are ${most} ${what}; no more are taken.`);
}

function refusal(code: string, reason: string): Refusal {
  return { code: `table/${code}`, reason };
}

const CLOSED: Refusal = { code: 'table/step', reason: 'The debrief is closed.' };
const NO_ACTION: Refusal = { code: 'table/no-action', reason: 'That action is not on the plan any more.' };
