import { assert } from '../assert.ts';
import type { Table } from '../table/table.ts';
import type { Member } from '../table/tableState.ts';
import { acknowledge } from './alerts.ts';
import { confirm, readBack, send } from './callout.ts';
import type { TalkCommand } from './commands.ts';
import { answerPoll, callPoll, decide } from './poll.ts';
import type { Speaker } from './talk.ts';

/** What was judged is said. */
export function carryOutTalk(table: Table, { seat, id }: Member, command: TalkCommand): void {
  assert(seat !== undefined, 'whoever talks sits');
  const by: Speaker = { seat, member: id };
  switch (command.kind) {
    case 'callOut':
    case 'say':
      return send(table, by, command);
    case 'readBack':
      return readBack(table, by, command.callout);
    case 'confirm':
      return confirm(table, by, command.callout);
    case 'callPoll':
      return callPoll(table, by, command.question);
    case 'answerPoll':
      return answerPoll(table, by, command);
    case 'decide':
      return decide(table, by, command.decision);
    case 'acknowledge':
      return acknowledge(table, by, command.alert);
  }
  command satisfies never;
}
