import { flightKnown } from '../table/flightKnown.ts';
import type { Table } from '../table/table.ts';
import type { Phase } from '../world/descent.ts';
import { ALERT_LOOK, watchAlerts } from './alerts.ts';
import { LOOKOUT, lookOut } from './lookouts.ts';
import { leadAsStandIn } from './leadStandIn.ts';
import { answerAsStandIns } from './standIns.ts';

const DOWN: readonly Phase[] = ['contact', 'settling', 'at rest'];

/** What talking does by itself in one tick of the table: stand-ins answer, also on hold; while the clock runs they look out, and alerts come and go. */
export function goOnTalking(table: Table): void {
  const { state, run } = table;
  answerAsStandIns(table);
  if (state.tick % ALERT_LOOK !== 0 || state.stage === 'gathering') return;
  const known = flightKnown(run, state);
  const isDown = DOWN.includes(known.phase);
  if (isDown !== state.talk.isDown) state.talk = { ...state.talk, isDown };
  if (state.held) return;
  watchAlerts(table, known);
  if (state.tick % LOOKOUT !== 0) return;
  if (state.stage === 'descending') lookOut(table, known);
  leadAsStandIn(table, known);
}
