import type { Member, TableState } from '../table/tableState.ts';
import type { Refusal } from '../table/tableTypes.ts';
import { faultOfAcknowledge } from './alerts.ts';
import { faultOfConfirm, faultOfReadBack, faultOfSending } from './callout.ts';
import type { TalkCommand } from './commands.ts';
import { faultOfAnswer, faultOfDecision, faultOfPoll } from './poll.ts';
import { refusal } from './refusal.ts';

/** What is wrong with something that this member, who may, wants to say. */
export function faultOfTalk(state: TableState, { seat }: Member, command: TalkCommand): Refusal | undefined {
  if (seat === undefined) return refusal('not-seated', 'Take a seat first.');
  switch (command.kind) {
    case 'callOut':
    case 'say':
      return faultOfSending(state, seat, command);
    case 'readBack':
      return faultOfReadBack(state, seat, command.callout);
    case 'confirm':
      return faultOfConfirm(state, seat, command.callout);
    case 'callPoll':
      return faultOfPoll(state, command.question);
    case 'answerPoll':
      return faultOfAnswer(state, seat, command);
    case 'decide':
      return faultOfDecision(state, command.decision);
    case 'acknowledge':
      return faultOfAcknowledge(state, seat, command.alert);
  }
  return command satisfies never;
}
