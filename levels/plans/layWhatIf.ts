import { withStance } from '../../engine/structure/index.ts';
import type { Change, TablePlan } from '../../engine/table/index.ts';
import { findWorld } from '../../engine/worlds.ts';
import { layOut } from './layOut.ts';

/** What is flown in a fork whose change holds from the start: the same in another world, or on legs that stand wider or closer. Undefined where it cannot be. */
export function layWhatIf(plan: TablePlan, { world, percent }: Change): TablePlan | undefined {
  if (world !== undefined && findWorld(world) !== undefined) {
    const laid = layOut({ ...plan.choice, world }, plan.drill);
    return laid.ok ? laid.value : undefined;
  }
  if (percent === undefined) return undefined;
  // the table of limits is for the lander as built
  const { limits: _asBuilt, ...rest } = plan;
  return { ...rest, setup: { ...plan.setup, lander: withStance(plan.setup.lander, percent / 100) } };
}
