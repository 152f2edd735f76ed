import { lineOf, ticksAfter } from '../table/responses.ts';
import type { Table } from '../table/table.ts';
import { isSensorFault, type Fault } from '../faults/index.ts';
import type { EventRow, TargetedResponse } from '../drill/index.ts';
import type { LogLine } from '../talk/talk.ts';
import { TICK_RATE } from '../world/constants.ts';
import { clockBetween, type ClockSign } from './clockBetween.ts';
import type { Correction, MeasureKind } from './review.ts';

/**
 * Three times for each inject that was sent, from the log of the crew: noticed, named, right again. Exercise seconds after the inject, each with the line of the
 * log that it rests on; absent: not observed.
 */
export interface InjectMeasures {
  readonly inject: string;
  /** From the start of the descent [s]. */
  readonly sentAfter: number;
  readonly measures: Readonly<Record<MeasureKind, Measured>>;
  readonly responses: readonly ResponseMeasure[];
}

interface Measured {
  /** After the inject [s]; absent: not observed. */
  readonly seconds?: number;
  /** Index in the log. */
  readonly line?: number;
  /** How the clock was run between the inject and this, where that makes it no time to compare with others. */
  readonly over: readonly ClockSign[];
  /** Where a person put it right. */
  readonly corrected?: Correction;
}

interface ResponseMeasure {
  readonly id: string;
  readonly seat: TargetedResponse['seat'];
  readonly within: number;
  /** Whether the table can tell; else it is for the evaluator. */
  readonly isSeen: boolean;
  /** After the inject [s]; absent: not seen. */
  readonly seconds?: number;
}

/** Of every inject that was sent and lets something fail, or that somebody was to answer, in the order of the list. */
export function measuresOf(table: Table): readonly InjectMeasures[] {
  const { events } = table.state;
  return (table.plan.drill?.events ?? []).flatMap((row) => {
    const sent = events?.rows[row.id]?.sentTicks[0];
    return sent === undefined ? [] : [measuresOfRow(table, row, sent)];
  });
}

function measuresOfRow(table: Table, row: EventRow, sent: number): InjectMeasures {
  const { begun, review } = table.state;
  const { log } = table.state.talk;
  const asked = table.plan.drill?.plan.pace ?? begun.pace;
  const faults = row.effects.flatMap((effect): readonly Fault[] =>
    effect.do === 'fail' ? [{ ...effect.fault, fromTick: sent }] : [],
  );
  const find = (isIt: (line: LogLine) => boolean) => log.findIndex((line) => line.descentTick >= sent && isIt(line));
  const responses = row.responses.map((response) => responseOf(table, response, sent));
  const corrected = review.corrections[row.id] ?? {};
  const measured = (line: number, correction: Correction | undefined): Measured => {
    const found = log[line];
    return {
      ...(found !== undefined && { seconds: ticksAfter(found, sent) / TICK_RATE, line }),
      over:
        found === undefined || found.descentTick < sent ? [] : clockBetween(log, begun, { since: sent, line, asked }),
      ...(correction !== undefined && { corrected: correction }),
    };
  };
  return {
    inject: row.id,
    sentAfter: sent / TICK_RATE,
    measures: {
      detect: measured(
        find((line) => faults.some((fault) => notices(line, fault))),
        corrected.detect,
      ),
      isolate: measured(
        find((line) => faults.some((fault) => names(line, fault))),
        corrected.isolate,
      ),
      recover: measured(recoveredBy(log, row, sent), corrected.recover),
    },
    responses,
  };
}

/** A callout or a judgment about the source that failed; of the lander, what is said or done about that part. */
function notices({ what }: LogLine, fault: Fault): boolean {
  if (isSensorFault(fault)) {
    if (what.kind === 'callOut') return what.source === fault.source;
    if (what.kind === 'nameCause') return what.source === fault.source && what.cause !== 'nothing';
    return what.kind === 'judgeSource' && what.source === fault.source && what.judgment !== 'accepted';
  }
  const [sentences, answers] = SIGNS_OF_DEFECT[fault.source];
  return (
    (what.kind === 'callOut' && sentences.some((sentence) => sentence === what.sentence)) ||
    answers.some((kind) => kind === what.kind)
  );
}

/** What is said and done about the lander where something is wrong with it. */
const SIGNS_OF_DEFECT = {
  engine: [['engineStillOn', 'cannotHold', 'engineOut'], ['fireCutOff']],
  tanks: [['leaking'], ['shutLine']],
  legs: [['legs'], ['orderFacing']],
} as const;

/** The cause, by its name; of the lander, the sentence that says it. */
function names({ what }: LogLine, fault: Fault): boolean {
  if (isSensorFault(fault)) {
    if (what.kind === 'nameCause') return what.source === fault.source && what.cause === fault.kind;
    return what.kind === 'callOut' && what.source === fault.source && what.sentence === SAID_CAUSE[fault.kind];
  }
  return what.kind === 'callOut' && SIGNS_OF_DEFECT[fault.source][0].some((sentence) => sentence === what.sentence);
}

/** Sentences of Sensors that name a cause in so many words. */
const SAID_CAUSE: Readonly<Partial<Record<string, string>>> = { noData: 'noData', freeze: 'frozen', bias: 'differs' };

/** The line with which the last of the responses that the table can tell was carried out; -1 where one was not, or it can tell none. */
function recoveredBy(log: readonly LogLine[], { responses }: EventRow, sent: number): number {
  const lines = responses.flatMap(({ seen }) => (seen.by === 'evaluator' ? [] : [lineOf(log, seen, sent)]));
  return lines.includes(-1) ? -1 : Math.max(-1, ...lines);
}

function responseOf(table: Table, { id, seat, within, seen }: TargetedResponse, sent: number): ResponseMeasure {
  const { log } = table.state.talk;
  const line = log[lineOf(log, seen, sent)];
  return {
    id,
    seat,
    within,
    isSeen: seen.by !== 'evaluator',
    ...(line !== undefined && { seconds: ticksAfter(line, sent) / TICK_RATE }),
  };
}
