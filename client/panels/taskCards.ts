import type { TableView } from '../../engine/table/index.ts';
import type { PlayedPlan } from '../plan.ts';
import { figureOf } from '../views/lander/figure.ts';
import { createLeadCard } from './leadCard.ts';
import { createPropellantCard } from './propellantCard.ts';
import type { ActsOf, Ask } from './seatCard.ts';
import { createSiteCard } from './siteCard.ts';
import { createSourceList } from './sourceList.ts';

/** The cards of the seats that hold no controls, of which a member sees the own one. */
export function createTaskCards(options: { readonly ask: Ask; readonly plan: () => PlayedPlan }): {
  readonly cards: readonly HTMLElement[];
  readonly acts: ActsOf<'sensors' | 'propellant' | 'site'>['acts'];
  /** Whether one of them is shown. */
  refresh(view: TableView): boolean;
} {
  const { ask, plan } = options;
  const { setup } = plan();
  const ground = (view: TableView) => view.map ?? plan().setup.terrain;
  const sources = createSourceList(ask, ground);
  const propellant = createPropellantCard(ask, {
    fullPropellant: setup.propellant,
    hasUprightTanks: setup.lander.tanks.some(({ orientation }) => orientation === 'upright'),
  });
  const site = createSiteCard(ask, { ground, halfStance: figureOf(setup.lander).halfStance, setup });
  const all = [sources, propellant, site, createLeadCard(ask)];
  return {
    cards: all.map(({ card }) => card),
    acts: { ...sources.acts, ...propellant.acts, ...site.acts },
    refresh(view) {
      for (const one of all) one.refresh(view);
      return all.some(({ card }) => !card.hidden);
    },
  };
}
