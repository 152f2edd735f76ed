import { CAUTION } from '../constants.ts';
import { hashValue } from '../math/hashValue.ts';
import type { RecordLine, TableRecord } from '../record/index.ts';
import { measuresOf } from '../review/index.ts';
import { scorecardOf, type Table } from '../table/index.ts';
import { TICK_RATE } from '../world/index.ts';

/** What was learned at a table, as statements of the Experience API (IEEE 9274.1.1). */
export interface Statement {
  readonly id: string;
  readonly actor: Agent | Group;
  readonly verb: { readonly id: string; readonly display: { readonly en: string } };
  readonly object: {
    readonly objectType: 'Activity';
    readonly id: string;
    readonly definition: { readonly name: { readonly en: string }; readonly type: string };
  };
  readonly result: {
    readonly completion: boolean;
    readonly duration: string;
    readonly extensions: Readonly<Record<string, unknown>>;
  };
  readonly context: {
    readonly registration: string;
    readonly language: 'en';
    readonly extensions: Readonly<Record<string, unknown>>;
  };
}

interface Agent {
  readonly objectType: 'Agent';
  readonly account: { readonly homePage: string; readonly name: string };
}
interface Group {
  readonly objectType: 'Group';
  readonly member: readonly Agent[];
}

/** Marks along the way: what comes after a descent does not change whose it was. */
function isOfDescent(line: RecordLine): boolean {
  return line.line === 'mark' && line.stage === 'descending';
}

/** A name that leads nowhere: nobody is asked about it. */
const HOME = 'https://kilter.invalid';
const VERBS = 'http://adlnet.gov/expapi/verbs';

/**
 * One statement for each person who sat when the descent came to rest, and one of the crew for each inject. Nobody is named: an actor is a number drawn from the record,
 * the same throughout it. What is rated or put right later makes another statement. Nobody passes or fails: there is no success and no score. No time of day: a record has none.
 */
export function statementsOf(record: TableRecord, table: Table): readonly Statement[] {
  const scorecard = scorecardOf(table);
  if (scorecard === undefined) return [];
  const key = hashValue([record.header, ...record.lines.filter(isOfDescent)]);
  const { plan, run, state } = table;
  const agents = scorecard.crew.map(({ seat, name }) => ({ seat, agent: agentOf(key, name) }));
  const isWhole = scorecard.outcome !== 'stopped';
  const verb = isWhole ? 'completed' : 'terminated';
  const about = { registration: uuidOf([key, 'registration']), language: 'en' as const };
  const drill = plan.drill?.id ?? 'free-descent';
  const worst = scorecard.contacts[scorecard.worst ?? 0];
  const extensions = withNames({
    outcome: scorecard.outcome,
    utilisation: worst?.utilisation,
    believedUtilisation: scorecard.belief?.utilisation,
    psmu: Object.fromEntries(Object.entries(state.review.ratings).map(([id, { rating }]) => [id, rating])),
  });
  const context = { caution: CAUTION, seed: plan.seed, physics: record.header.physics };
  const duration = durationOf(run.flight.tick / TICK_RATE);
  return [
    ...agents.map(({ seat, agent }) => ({
      id: uuidOf([key, 'seat', seat, hashValue(extensions)]),
      actor: agent,
      verb: verbOf(verb),
      object: activityOf(`drill/${drill}`, plan.drill?.title ?? plan.title, 'simulation'),
      result: { completion: isWhole, duration, extensions },
      context: { ...about, extensions: withNames({ ...context, seat }) },
    })),
    ...measuresOf(table).map(({ inject, sentAfter, measures }) => ({
      id: uuidOf([key, 'inject', inject, hashValue(measures)]),
      actor: { objectType: 'Group' as const, member: agents.map(({ agent }) => agent) },
      verb: verbOf('experienced'),
      object: activityOf(
        `drill/${drill}/inject/${inject}`,
        plan.drill?.events.find(({ id }) => id === inject)?.title ?? inject,
        'interaction',
      ),
      result: {
        completion: true,
        duration,
        extensions: withNames({
          sentAfter,
          detect: secondsOf(measures.detect),
          isolate: secondsOf(measures.isolate),
          recover: secondsOf(measures.recover),
        }),
      },
      context: { ...about, extensions: withNames(context) },
    })),
  ];
}

function agentOf(key: string, name: string): Agent {
  return { objectType: 'Agent', account: { homePage: HOME, name: `s-${hashValue([key, name]).slice(0, 8)}` } };
}

function verbOf(name: string): Statement['verb'] {
  return { id: `${VERBS}/${name}`, display: { en: name } };
}

function activityOf(id: string, name: string, type: string): Statement['object'] {
  const definition = { name: { en: name }, type: `http://adlnet.gov/expapi/activities/${type}` };
  return { objectType: 'Activity', id: `${HOME}/${id}`, definition };
}

/** What a person put right stands before what the table saw. */
function secondsOf({
  seconds,
  corrected,
}: {
  readonly seconds?: number;
  readonly corrected?: { readonly seconds?: number };
}): number | 'not observed' {
  return (corrected === undefined ? seconds : corrected.seconds) ?? 'not observed';
}

/** Names of extensions are addresses; what is not known is left out. */
function withNames(values: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  return Object.fromEntries(
    Object.entries(values).flatMap(([name, value]) => (value === undefined ? [] : [[`${HOME}/x/${name}`, value]])),
  );
}

/** As ISO 8601 has it, to the tenth of a second. */
function durationOf(seconds: number): string {
  return `PT${seconds.toFixed(1)}S`;
}

/** A number of version 8, whose bits are ours: from the record, so that the same statement always has the same one. */
function uuidOf(parts: readonly string[]): string {
  const hex = hashValue(parts) + hashValue([...parts, 'more']);
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}
