import { describe, expect, it } from 'vitest';
import type { Fault } from '../../../engine/faults/index.ts';
import { createTable, playedModel, stepTable, viewTable, type Table } from '../../../engine/table/index.ts';
import { createTankSwing } from '../../../engine/table/tankSwing.ts';
import { commandTable, joinTable } from '../../support/askTable.ts';
import { runTable } from '../../support/crewTable.ts';
import { laid } from '../../support/planChoice.ts';
import { plainLander } from '../../support/plainLander.ts';
import { plainTank } from '../../support/plainTank.ts';

const HIGH = { start: 'high', seed: 2 } as const;

/** Somebody at Flying and somebody at Propellant, who does nothing. */
function open(choice: Parameters<typeof laid>[0], faults: readonly Fault[] = []): Table {
  const plan = laid(choice);
  const table = createTable({ plan: { ...plan, setup: { ...plan.setup, faults } }, model: playedModel });
  for (const [at, seat] of (['flying', 'propellant'] as const).entries()) {
    joinTable(table, { name: seat });
    commandTable(table, `m${at + 1}`, { kind: 'takeSeat', seat });
  }
  commandTable(table, 'm1', { kind: 'begin' });
  return table;
}

const swingOf = (table: Table) => viewTable(table, 'm2').propellantReadings?.swing;

/** The rise before a lean, three seconds into it, when the turn is over, and once it was held for so many more [m]. */
function risesAfterLean(table: Table, heldSeconds: number): readonly number[] {
  runTable(table, 30);
  const before = swingOf(table)?.rise ?? Number.NaN;
  commandTable(table, 'm1', { kind: 'setTilt', degrees: 10 });
  runTable(table, 180);
  const soon = swingOf(table)?.rise ?? Number.NaN;
  runTable(table, 60 * heldSeconds);
  return [before, soon, swingOf(table)?.rise ?? Number.NaN];
}

describe('the swing of the liquid that Propellant is shown', () => {
  it.each(['none', 'seeded'] as const)(
    '[TA51] is small at first, stirred up by a lean, and dies out while that is held; with sensor trouble %s',
    (sensorTrouble) => {
      const [before, soon, later] = risesAfterLean(open({ start: 'far', seed: 2, sensorTrouble }), 15);
      expect(before).toBeLessThan(0.005);
      expect(soon).toBeGreaterThan(0.01);
      // e^(−ζ ω t) at ζ 0.03, a period of 2.3 s: 0.29
      expect(later! / soon!).toBeGreaterThan(0.2);
      expect(later! / soon!).toBeLessThan(0.4);
    },
  );

  it('[TA51] has the period of the first lateral mode under the push of the engine', () => {
    const table = open(HIGH);
    runTable(table, 30);
    const { flight, swing } = table.run;
    const [kind] = swing!.kinds;
    // tanks of 0.36 m, filled to 0.27 of 1 m and a little less: L = R / (ξ tanh(ξ h/R))
    const length = 0.36 / (1.8411838 * Math.tanh((1.8411838 * 0.27) / 0.36));
    expect(kind?.length).toBeGreaterThan(length);
    expect(kind?.length).toBeLessThan(1.02 * length);
    const expected = 2 * Math.PI * Math.sqrt(((kind?.length ?? 0) * flight.mass) / flight.thrust);
    expect(swingOf(table)?.period).toBeCloseTo(expected, 6);
  });

  it('[TA51] is known to no other seat', () => {
    const table = open(HIGH);
    runTable(table, 10);
    expect(swingOf(table)).toBeDefined();
    expect(viewTable(table, 'm1')).not.toHaveProperty('propellantReadings');
  });

  it('[TA51] is not told without a figure of the motion, while nothing pushes, on the ground, and of tanks that lie', () => {
    const silent = open({ ...HIGH, sensorTrouble: 'seeded' }, [
      { source: 'inertialUnit', kind: 'noData', fromTick: 5, parameters: {} },
    ]);
    runTable(silent, 200);
    expect(viewTable(silent, 'm2').propellantReadings).toBeDefined();
    expect(swingOf(silent)).toBeUndefined();

    const falling = open(HIGH);
    runTable(falling, 30);
    commandTable(falling, 'm1', { kind: 'setThrust', percent: 0 });
    runTable(falling, 90);
    expect(swingOf(falling)).toBeUndefined();

    const down = open({ start: 'low', seed: 2, mode: 'by orders' });
    commandTable(down, 'm1', { kind: 'orderDescentRate', tenths: 15 });
    while (down.run.flight.touchdown === undefined) stepTable(down);
    stepTable(down);
    expect(swingOf(down)).toBeUndefined();

    const lying = open({ ...HIGH, lander: 'bolster' });
    runTable(lying, 30);
    expect(swingOf(lying)).toBeUndefined();
  });

  it('[TA51] changes nothing that is played: shown, not felt', () => {
    const table = open(HIGH);
    runTable(table, 120);
    const one = table.run.descent.mark();
    const other = open(HIGH);
    for (const kind of other.run.swing?.kinds ?? []) kind.swing = { angle: 0.3, rate: 1 };
    runTable(other, 120);
    expect(other.run.descent.mark()).toEqual(one);
  });

  it.each([{ fill: 0.5 }, { length: 1.5 }, { radius: 0.6 }, { bottomHeight: 3 }])(
    '[TA51] is one for tanks that are alike in all that decides it, and another where one has %o',
    (change) => {
      const tank = plainTank({ orientation: 'upright', fill: 0.4 });
      const tanks = [tank, { ...tank, name: 'other', offset: [1, 0] as const }, { ...tank, ...change }];
      const swing = createTankSwing({ ...plainLander(), tanks });
      expect(swing?.kinds.map((kind) => kind.tanks)).toEqual([[0, 1], [2]]);
    },
  );
});
