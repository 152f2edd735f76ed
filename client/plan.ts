import type { TableView } from '../engine/table/index.ts';
import type { DescentSetup } from '../engine/world/index.ts';
import { findWorld, type World } from '../engine/worlds.ts';
import { findSite, firstLanding } from '../levels/index.ts';

/** What is played at a table, worked out from the few words that its view carries. */
export interface PlayedPlan {
  readonly setup: DescentSetup;
  readonly siteId: string;
  readonly siteName: string;
  /** Fixes the ground. */
  readonly seed: number;
  readonly world: World;
}

/** A table names its plan; lander, ground and start follow from it and are the same in every browser. */
export function playedPlan(plan: TableView['plan']): PlayedPlan {
  const { setup } = firstLanding(plan.seed);
  const site = findSite(plan.siteId);
  const world = findWorld(plan.worldId);
  if (site === undefined || world === undefined) throw new Error(`No site ${plan.siteId} or world ${plan.worldId}`);
  return { setup, siteId: site.id, siteName: site.name, seed: plan.seed, world };
}
