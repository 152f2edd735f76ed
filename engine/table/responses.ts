import type { Drill, Sign } from '../drill/index.ts';
import type { Table } from './table.ts';

/** Whether what was expected after an inject has been done, as far as the table can tell. */
export function isCarriedOut(table: Table, drill: Drill, response: string): boolean {
  const row = drill.events.find(({ responses }) => responses.some(({ id }) => id === response));
  const wanted = row?.responses.find(({ id }) => id === response);
  const since = row && table.state.events?.rows[row.id]?.sentTicks[0];
  return wanted !== undefined && since !== undefined && seenAt(table, wanted.seen, since) !== undefined;
}

/** The tick of the descent at which a sign was first seen, from one on; undefined where it was not, or only people can tell. */
export function seenAt({ state }: Table, sign: Sign, since: number): number | undefined {
  const from = (ticks: readonly number[] | undefined) => ticks?.find((tick) => tick >= since);
  switch (sign.by) {
    case 'judgment':
      return from(state.doubts[sign.source]);
    case 'cause':
      return sign.cause === undefined ? undefined : from(state.namings[sign.source]?.[sign.cause]);
    case 'cutOff':
      return from(state.answered.cutOff === undefined ? [] : [state.answered.cutOff]);
    case 'lineShut':
      return from(state.answered.lineShut === undefined ? [] : [state.answered.lineShut]);
    case 'evaluator':
    case 'callout':
    case 'poll':
    case 'decision':
    case 'abort':
    case 'limit':
    case 'spot':
      return undefined;
  }
  return sign satisfies never;
}
