import type { Drill, Sign } from '../drill/index.ts';
import type { LogLine } from '../talk/talk.ts';
import type { Table } from './table.ts';

/** Whether what was expected after an inject has been done, as far as the table can tell. */
export function isCarriedOut(table: Table, drill: Drill, response: string): boolean {
  const row = drill.events.find(({ responses }) => responses.some(({ id }) => id === response));
  const wanted = row?.responses.find(({ id }) => id === response);
  const since = row && table.state.events?.rows[row.id]?.sentTicks[0];
  return wanted !== undefined && since !== undefined && lineOf(table.state.talk.log, wanted.seen, since) >= 0;
}

/**
 * The line of the log in which a sign was first seen, from a tick of the descent on; an earlier one where a judgment or a mark stood at that tick: a source
 * that is rejected already need not be rejected again, nor a spot be marked twice. -1 where it was not seen, or only people can tell.
 */
export function lineOf(log: readonly LogLine[], sign: Sign, since: number): number {
  if (sign.by === 'evaluator') return -1;
  const standing = log.findLastIndex(({ descentTick, what }) => descentTick < since && settles(sign, what));
  const found = log[standing];
  if (found !== undefined && shows(sign, found.what)) return standing;
  return log.findIndex(({ descentTick, what }) => descentTick >= since && shows(sign, what));
}

/** How long after an inject the line of a sign was written [tick]; 0 for what stood before. */
export function ticksAfter(line: LogLine, since: number): number {
  return Math.max(0, line.descentTick - since);
}

/** Whether it judges, one way or the other, the source that is to be judged, or marks or clears the spot that is to be marked. */
function settles(sign: Sign, what: LogLine['what']): boolean {
  if (sign.by === 'judgment') return what.kind === 'judgeSource' && what.source === sign.source;
  return sign.by === 'spot' && (what.kind === 'markSpot' || what.kind === 'clearSpot');
}

function shows(sign: Exclude<Sign, { readonly by: 'evaluator' }>, what: LogLine['what']): boolean {
  switch (sign.by) {
    case 'callout':
      if (what.kind !== 'callOut') return false;
      return (
        (sign.source === undefined || what.source === sign.source) &&
        (sign.sentence === undefined || what.sentence === sign.sentence)
      );
    case 'judgment':
      return what.kind === 'judgeSource' && what.source === sign.source && sign.judgments.includes(what.judgment);
    case 'cause':
      return what.kind === 'nameCause' && what.source === sign.source && what.cause === sign.cause;
    case 'poll':
      return what.kind === 'callPoll';
    case 'decision':
      return what.kind === 'decide';
    case 'abort':
      return what.kind === 'abort';
    case 'cutOff':
      return what.kind === 'fireCutOff';
    case 'lineShut':
      return what.kind === 'shutLine' && what.shut;
    case 'limit':
      return what.kind === 'stateLimit';
    case 'spot':
      return what.kind === 'markSpot';
    case 'facing':
      return what.kind === 'orderFacing';
  }
  return sign satisfies never;
}
