import type { Fault } from '../../../engine/faults/index.ts';
import {
  applyEntry,
  createTable,
  playedModel,
  stepTable,
  type InstrumentPlan,
  type TablePlan,
} from '../../../engine/table/index.ts';
import type { DescentState } from '../../../engine/world/index.ts';

/** Nobody reads a margin or a card here. */
const MODEL = {
  ...playedModel,
  createMarginGauge: () => () => ({ without: 'no table', tiltLeft: 0 }) as const,
};

/** How a descent by instruments ends that is left to the stand-ins: somebody at Lead begins it, and touches nothing. */
export function flyByInstruments(
  plan: TablePlan,
  faults: readonly Fault[],
  standIns: InstrumentPlan['standIns'],
): DescentState {
  const instruments = { seed: plan.seed, standIns };
  const table = createTable({ plan: { ...plan, setup: { ...plan.setup, faults }, instruments }, model: MODEL });
  for (const content of [
    { kind: 'joined', name: 'Wren', role: 'crew' },
    { kind: 'takeSeat', seat: 'lead' },
    { kind: 'begin' },
  ] as const)
    applyEntry(table, { tick: 0, member: 'm1', content });
  while (table.state.stage === 'descending') stepTable(table);
  return table.run.flight;
}
