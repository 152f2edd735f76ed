import { describe, expect, it } from 'vitest';
import { LANDERS, SITES, STARTS } from '../../../levels/index.ts';
import { laid } from '../../support/planChoice.ts';
import { flyPlan, steadily } from './flyPlan.ts';

/** Where Steeple falls on some or most seeds, whoever flies it: levels/plans/README.md has the shares. */
const TOO_STEEP_FOR_STEEPLE = ['coombe-ledge', 'ravel-bank'];

describe.each(LANDERS.map(({ id }) => id))('the steady pilot with %s on the Moon', (lander) => {
  it('[DE4] lands it gently on each site from each start, with propellant to spare', () => {
    const flown: unknown[] = [];
    for (const site of SITES) {
      if (lander === 'steeple' && TOO_STEEP_FOR_STEEPLE.includes(site.id)) continue;
      for (const start of STARTS) {
        const plan = laid({ lander, site: site.id, start: start.id, seed: 100 + flown.length });
        const { outcome, contacts, propellant } = flyPlan(plan, steadily(plan));
        const [first] = contacts;
        flown.push(outcome);
        expect(outcome, `${site.id}, ${start.id}`).toBe('upright');
        expect(Math.abs(first?.vx ?? Infinity)).toBeLessThan(0.2);
        expect(first?.descentRate).toBeLessThan(1.4);
        expect(propellant / plan.setup.propellant).toBeGreaterThan(0.5);
      }
    }
    expect(flown).toHaveLength(lander === 'steeple' ? 12 : 20);
  }, 60_000);
});
