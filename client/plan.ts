import type { TableView } from '../engine/table/index.ts';
import type { DescentSetup } from '../engine/world/index.ts';
import { findWorld, type World } from '../engine/worlds.ts';
import { findSite, layPlan } from '../levels/index.ts';

/** What is played at a table, worked out from the few words that its view carries. */
export interface PlayedPlan {
  readonly setup: DescentSetup;
  readonly siteId: string;
  readonly siteName: string;
  /** Fixes the ground. */
  readonly seed: number;
  readonly world: World;
}

/**
 * The plan of each view of one table. While a descent is believed and not known its seed is hidden and the ground laid out here is not the true one; with
 * the true seed it is laid out anew.
 */
export function createPlanReader(): (plan: TableView['plan']) => PlayedPlan {
  let read: { readonly seed: number; readonly played: PlayedPlan } | undefined;
  return (plan) => {
    if (read?.seed !== plan.seed) read = { seed: plan.seed, played: playedPlan(plan) };
    return read.played;
  };
}

/** A table names its choice; lander, ground and start follow from it and are the same in every browser. */
function playedPlan({ choice, siteId, worldId, seed }: TableView['plan']): PlayedPlan {
  const plan = choice === undefined ? undefined : layPlan(choice);
  const site = findSite(siteId);
  const world = findWorld(worldId);
  if (plan?.ok !== true || site === undefined || world === undefined)
    throw new Error(`This page does not know what is played at the table: ${siteId} on ${worldId}`);
  return { setup: plan.value.setup, siteId: site.id, siteName: site.name, seed, world };
}
