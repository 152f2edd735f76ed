import type { TablePlan, TableView } from '../engine/table/index.ts';
import type { DescentSetup } from '../engine/world/index.ts';
import { findWorld, type World } from '../engine/worlds.ts';
import { findSite, layOut } from '../levels/index.ts';
import type { TableLink } from './net/index.ts';

/** What is played at a table, worked out from the few words that its view carries. */
export interface PlayedPlan {
  readonly setup: DescentSetup;
  readonly siteId: string;
  readonly siteName: string;
  /** Fixes the ground. */
  readonly seed: number;
  readonly world: World;
  /** As a table lays it out. Of a drill without what it hides, until that may be known here. */
  readonly laid: TablePlan;
}

/**
 * The plan of each view of one table. While a descent is believed and not known its seed is hidden and the ground laid out here is not the true one; with
 * the true seed it is laid out anew. The true ground of a drill stands in its file, which the table gives to whoever may know it.
 */
export function createPlanReader(link: Pick<TableLink, 'drillText'>): (plan: TableView['plan']) => PlayedPlan {
  let read: { readonly seed: number; readonly played: PlayedPlan } | undefined;
  return (plan) => {
    if (read?.seed !== plan.seed) {
      const begun = { seed: plan.seed, played: playedPlan(plan, layOut(plan.choice)) };
      read = begun;
      const isKnown = plan.choice.drill !== undefined && plan.seed !== HIDDEN_SEED;
      if (isKnown)
        void layDrillTruly(link, plan.choice).then((laid) => {
          if (laid !== undefined && read === begun) read = { ...begun, played: playedPlan(plan, laid) };
        });
    }
    return read.played;
  };
}

/** Stands where a viewer may not know the seed. */
const HIDDEN_SEED = 0;

/** The plan with what its drill hides; nothing where the table does not tell, and at the next view with this seed it stays as it was. */
async function layDrillTruly(
  link: Pick<TableLink, 'drillText'>,
  choice: TablePlan['choice'],
): Promise<ReturnType<typeof layOut> | undefined> {
  const [text, shelf] = await Promise.all([link.drillText(), import('./drillShelf.ts')]);
  return text.ok ? shelf.layPlan(choice, JSON.parse(text.value)) : undefined;
}

/** A table names its choice; lander, ground and start follow from it and are the same in every browser. */
function playedPlan({ siteId, worldId, seed }: TableView['plan'], laid: ReturnType<typeof layOut>): PlayedPlan {
  const site = findSite(siteId);
  const world = findWorld(worldId);
  if (!laid.ok || site === undefined || world === undefined)
    throw new Error(`This page does not know what is played at the table: ${siteId} on ${worldId}`);
  return { setup: laid.value.setup, siteId: site.id, siteName: site.name, seed, world, laid: laid.value };
}
