import { TICK_RATE } from '../world/constants.ts';
import type { Table } from '../table/table.ts';
import type { Member } from '../table/tableState.ts';
import type { MemberId, Seat } from '../table/tableTypes.ts';
import { momentOf } from '../talk/crewLog.ts';
import type { Moment } from '../talk/talk.ts';
import { changeOf, type ReviewCommand } from './commands.ts';
import type { ReviewState } from './review.ts';

/** What was judged is noted. */
export function carryOutReview(table: Table, { id, name, seat }: Member, command: ReviewCommand): void {
  const { state } = table;
  state.review = after(state.review, command, { id, by: name, seat, moment: momentOf(table) });
}

function after(
  review: ReviewState,
  command: ReviewCommand,
  {
    id: member,
    by,
    seat,
    moment,
  }: { readonly id: MemberId; readonly by: string; readonly seat: Seat | undefined; readonly moment: Moment },
): ReviewState {
  const id = review.numbered + 1;
  switch (command.kind) {
    case 'observe': {
      const { kind: _kind, ...said } = command;
      return { ...review, numbered: id, observations: [...review.observations, { id, by, ...moment, ...said }] };
    }
    case 'bookmark': {
      const { text, seconds } = command;
      const descentTick = seconds === undefined ? moment.descentTick : Math.round(seconds * TICK_RATE);
      return { ...review, numbered: id, bookmarks: [...review.bookmarks, { id, by, ...moment, descentTick, text }] };
    }
    case 'rate': {
      const { objective, rating, evidence } = command;
      return { ...review, ratings: { ...review.ratings, [objective]: { rating, evidence, by } } };
    }
    case 'correctMeasure': {
      const { inject, measure, seconds, reason } = command;
      const correction = { reason, by, ...(seconds !== undefined && { seconds }) };
      const corrections = { ...review.corrections[inject], [measure]: correction };
      return { ...review, corrections: { ...review.corrections, [inject]: corrections } };
    }
    case 'washHot': {
      const { word, thing } = command;
      const others = review.hotWash.filter((one) => one.member !== member);
      return { ...review, hotWash: [...others, { member, name: by, word, thing }] };
    }
    case 'sayLoad': {
      const { kind: _kind, ...said } = command;
      const others = review.loads.filter((one) => one.member !== member);
      return seat === undefined ? review : { ...review, loads: [...others, { ...said, member, name: by, seat }] };
    }
    case 'setDebriefStep':
      return { ...review, step: command.step, clip: undefined };
    case 'setTopic':
      return { ...review, topic: command.topic };
    case 'showClip': {
      const { from, to, seat } = command;
      return { ...review, clip: { from, to, startedTick: moment.tick, ...(seat !== undefined && { seat }) } };
    }
    case 'hideClip':
      return { ...review, clip: undefined };
    case 'noteTopic':
      return { ...review, notes: { ...review.notes, [command.topic]: command.text } };
    case 'setGoal':
      return { ...review, goal: command.text };
    case 'setAction': {
      const { kind: _kind, id: known, ...action } = command;
      if (known === undefined) return { ...review, numbered: id, actions: [...review.actions, { id, ...action }] };
      return { ...review, actions: review.actions.map((one) => (one.id === known ? { id: known, ...action } : one)) };
    }
    case 'dropAction':
      return { ...review, actions: review.actions.filter((action) => action.id !== command.id) };
    case 'askWhatIf':
      return { ...review, whatIfs: [...review.whatIfs, changeOf(command)] };
    case 'closeDebrief':
      return { ...review, step: 'closed', clip: undefined };
    case 'declineDebrief':
      return { ...review, step: 'closed', clip: undefined, declined: command.reason };
  }
  return command satisfies never;
}
