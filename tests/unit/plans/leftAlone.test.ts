import { describe, expect, it } from 'vitest';
import { createTable, playedModel, stepTable, viewTable } from '../../../engine/table/index.ts';
import type { DescentState } from '../../../engine/world/index.ts';
import { LANDERS, SITES, STARTS } from '../../../levels/index.ts';
import { commandTable, joinTable } from '../../support/askTable.ts';
import { NOTHING_JUDGED } from '../../support/nothingJudged.ts';
import { laid } from '../../support/planChoice.ts';

/** Sits down at Flying in a descent by orders, begins, and orders nothing. */
function leaveAlone(choice: Parameters<typeof laid>[0]): DescentState {
  const plan = laid({ ...choice, mode: 'by orders' });
  const table = createTable({ plan, model: { ...playedModel, scorecard: () => NOTHING_JUDGED } });
  const joined = joinTable(table, { name: 'Wren' });
  if (!joined.ok) throw new Error(joined.error.reason);
  commandTable(table, joined.value.id, { kind: 'takeSeat', seat: 'flying' });
  commandTable(table, joined.value.id, { kind: 'begin' });
  // what comes after the tanks are dry is a fall
  while (table.state.stage === 'descending' && table.run.flight.propellant > 0) stepTable(table);
  return viewTable(table, joined.value.id).flight;
}

const PLANS = STARTS.flatMap(({ id: start }) =>
  LANDERS.flatMap(({ id: lander }) => SITES.map(({ id: site }) => ({ start, lander, site }))),
);

describe('a descent by orders that is left alone', () => {
  it('[LE12] never comes down while it has propellant: it drifts on, off the site or until its tanks are dry', () => {
    const ends = PLANS.map((plan, i) => ({ ...plan, ...leaveAlone({ ...plan, seed: i + 1 }) }));
    expect(ends).toHaveLength(60);
    for (const { start, lander, site, contacts, outcome, propellant, height } of ends) {
      const where = `${lander} over ${site} from ${start}`;
      expect(contacts, where).toEqual([]);
      expect(outcome === 'off site' || (propellant === 0 && height > 5), `${where}: ${outcome ?? 'none'}`).toBe(true);
    }
    const high = ends.filter(({ start }) => start === 'high').map(({ outcome }) => outcome);
    expect(new Set(high)).toEqual(new Set(['off site']));
  }, 60_000);
});
