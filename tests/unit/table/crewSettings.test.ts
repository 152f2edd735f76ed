import { describe, expect, it } from 'vitest';
import type { Fault } from '../../../engine/faults/index.ts';
import { createTable, playedModel, SEATS, stepTable, viewTable, type Table } from '../../../engine/table/index.ts';
import { firstLanding } from '../../../levels/index.ts';
import { dropMember, joinTable, say } from '../../support/askTable.ts';
import { runTable } from '../../support/crewTable.ts';
import { laid } from '../../support/planChoice.ts';

const CREW = { lead: 'm1', flying: 'm2', sensors: 'm3', propellant: 'm4', site: 'm5' } as const;

/** A crew of five in the first landing, with instruments or without, and with what fails. */
function openCrew({ byInstruments = false, faults = [] as readonly Fault[] } = {}): Table {
  const plan = byInstruments ? laid({ seed: 3, sensorTrouble: 'seeded' }) : firstLanding(1);
  const table = createTable({ plan: { ...plan, setup: { ...plan.setup, faults } }, model: playedModel });
  for (const seat of SEATS) joinTable(table, { name: seat });
  for (const seat of SEATS) say(table, CREW[seat], { kind: 'takeSeat', seat });
  say(table, 'm1', { kind: 'begin' });
  return table;
}

/** The lever at first contact, left alone until then. */
function leverAtContact(cutAtContact: boolean): number {
  const table = openCrew();
  say(table, 'm4', { kind: 'setCutAtContact', on: cutAtContact });
  while (table.run.flight.touchdown === undefined) stepTable(table);
  return table.state.commanded.thrustPercent;
}

/** Whether the engine of a lander that is flown by orders burns two ticks after first contact. */
function burnsAfterContact(cutAtContact: boolean): boolean {
  const plan = laid({ start: 'low', mode: 'by orders' });
  const table = createTable({ plan, model: playedModel });
  for (const seat of ['flying', 'propellant'] as const) joinTable(table, { name: seat });
  say(table, 'm1', { kind: 'takeSeat', seat: 'flying' });
  say(table, 'm2', { kind: 'takeSeat', seat: 'propellant' });
  say(table, 'm1', { kind: 'begin' });
  say(table, 'm1', { kind: 'orderDescentRate', tenths: 15 });
  say(table, 'm2', { kind: 'setCutAtContact', on: cutAtContact });
  while (table.run.flight.touchdown === undefined) stepTable(table);
  runTable(table, 2);
  return table.run.flight.commanded.thrustPercent > 0;
}

/** Where the stand-in at Flying meets the ground [m]. */
function landingPlace(spot?: number): number {
  const table = openCrew();
  say(table, 'm2', { kind: 'leaveSeat' });
  if (spot !== undefined) say(table, 'm5', { kind: 'markSpot', meters: spot, approach: 'either way' });
  while (table.run.flight.touchdown === undefined) stepTable(table);
  return table.run.flight.touchdown.x;
}

describe('what Propellant sets', () => {
  it('[TA34] keeps thrust above the ceiling from the engine, and leaves the lever where it is', () => {
    const table = openCrew();
    say(table, 'm4', { kind: 'setCeiling', percent: 30 });
    say(table, 'm2', { kind: 'setThrust', percent: 70 });
    runTable(table, 60);
    const { commanded, flight } = viewTable(table, 'm2');
    expect(commanded.thrustPercent).toBe(70);
    expect(flight.commanded.thrustPercent).toBe(30);
    say(table, 'm2', { kind: 'setThrust', percent: 20 });
    runTable(table, 1);
    expect(viewTable(table, 'm2').flight.commanded.thrustPercent).toBe(20);
  });

  it('[TA34] fires a cut-off only when it is armed, and for good', () => {
    const table = openCrew();
    expect(say(table, 'm4', { kind: 'fireCutOff' })).toBe('table/not-armed');
    say(table, 'm4', { kind: 'armCutOff', armed: true });
    expect(say(table, 'm4', { kind: 'fireCutOff' })).toBe('done');
    say(table, 'm2', { kind: 'setThrust', percent: 100 });
    runTable(table, 120);
    expect(table.run.flight.commanded.thrustPercent).toBe(0);
    expect(table.run.flight.thrust).toBeLessThan(1);
    for (const command of [{ kind: 'fireCutOff' }, { kind: 'armCutOff', armed: false }] as const)
      expect(say(table, 'm4', command)).toBe('table/cut-off');
    // and not in the next descent
    say(table, 'm1', { kind: 'again' });
    runTable(table, 301);
    expect(table.state.engine.cutOff).toBe('not armed');
    expect(table.run.flight.commanded.thrustPercent).toBeGreaterThan(0);
  });

  it('[TA34] shuts down an engine that does not obey its throttle', () => {
    const table = openCrew({ faults: [{ kind: 'cutOffFails', source: 'engine', fromTick: 0, parameters: {} }] });
    runTable(table, 2);
    say(table, 'm2', { kind: 'setThrust', percent: 0 });
    runTable(table, 60);
    expect(table.run.flight.commanded.thrustPercent).toBeGreaterThan(0);
    say(table, 'm4', { kind: 'armCutOff', armed: true });
    say(table, 'm4', { kind: 'fireCutOff' });
    runTable(table, 60);
    expect(table.run.flight.commanded.thrustPercent).toBe(0);
  });

  it('[TA34] stops a leak by shutting the line, at the price of a fifth of the thrust', () => {
    const leak: Fault = { kind: 'leak', source: 'tanks', fromTick: 0, parameters: { flow: 2 } };
    const table = openCrew({ faults: [leak] });
    say(table, 'm2', { kind: 'setThrust', percent: 0 });
    runTable(table, 30);
    const before = table.run.flight.propellant;
    runTable(table, 30);
    expect(before - table.run.flight.propellant).toBeCloseTo(1, 6);
    say(table, 'm4', { kind: 'shutLine', shut: true });
    const shut = table.run.flight.propellant;
    runTable(table, 30);
    expect(table.run.flight.propellant).toBe(shut);
    say(table, 'm2', { kind: 'setThrust', percent: 100 });
    runTable(table, 1);
    expect(table.run.flight.commanded.thrustPercent).toBe(80);
  });

  it('[TA21] decides whether contact shuts the engine down', () => {
    expect(leverAtContact(true)).toBe(0);
    expect(leverAtContact(false)).toBeGreaterThan(0);
  });

  it('[TA21] decides so by orders too', () => {
    expect([burnsAfterContact(true), burnsAfterContact(false)]).toEqual([false, true]);
  });

  it('[TA21] takes a false touch high up for contact, and lets it go again', () => {
    const touch: Fault = {
      kind: 'bias',
      source: 'contactProbes',
      channel: 'leg1',
      fromTick: 300,
      toTick: 318,
      parameters: { size: 1, rise: 0 },
    };
    const cut = (on: boolean): Table => {
      const table = openCrew({ byInstruments: true, faults: [touch] });
      say(table, 'm4', { kind: 'setCutAtContact', on });
      runTable(table, 310);
      return table;
    };
    expect(cut(true).state.commanded.thrustPercent).toBe(0);
    const wary = cut(false);
    expect(viewTable(wary, 'm2').flight.phase).toBe('contact');
    expect(wary.state.commanded.thrustPercent).toBeGreaterThan(0);
    runTable(wary, 30);
    expect(viewTable(wary, 'm2').flight.phase).not.toBe('contact');
  });

  it('[TA36] is read off a gauge and off what was commanded, by Propellant alone', () => {
    const table = openCrew({ byInstruments: true });
    runTable(table, 120);
    const { propellantReadings: read } = viewTable(table, 'm4');
    const { propellant } = table.run.flight;
    expect(read?.gauge).toBeDefined();
    // a gauge is off by a percent of the load, the sum by what the engine's lag leaves out
    expect(Math.abs((read?.gauge ?? 0) - propellant)).toBeLessThan(0.04 * table.plan.setup.propellant);
    expect(Math.abs((read?.reckoned ?? 0) - propellant)).toBeLessThan(1);
    // what is left at the least would hover so long: weight over specific impulse and standard gravity is what burns a second
    const { lander, gravity } = table.plan.setup;
    const { mass } = viewTable(table, 'm4').flight;
    const burned = (mass * gravity) / (lander.engine.specificImpulse * 9.80665);
    expect(read?.seconds).toBeCloseTo(Math.min(read?.gauge ?? 0, read?.reckoned ?? 0) / burned, 6);
    for (const id of ['m1', 'm2', 'm3', 'm5']) expect(viewTable(table, id).propellantReadings).toBeUndefined();
  });
});

describe('what Site says', () => {
  it('[TA35] reaches the whole crew, within the site', () => {
    const table = openCrew();
    const { least, most } = table.state.span;
    for (const meters of [least - 1, most + 1, 0.5])
      expect(say(table, 'm5', { kind: 'markSpot', meters, approach: 'either way' })).toBe('table/out-of-range');
    say(table, 'm5', { kind: 'markSpot', meters: 40, approach: 'to the left' });
    say(table, 'm5', { kind: 'declareGround', ground: 'softer' });
    say(table, 'm5', { kind: 'stateLimit', hundredths: 85 });
    for (const id of Object.values(CREW))
      expect(viewTable(table, id).site).toEqual({
        spot: { meters: 40, approach: 'to the left' },
        ground: 'softer',
        limitHundredths: 85,
      });
    say(table, 'm5', { kind: 'clearSpot' });
    expect(viewTable(table, 'm2').site).toEqual({ ground: 'softer', limitHundredths: 85 });
  });

  it.each([-20, 20])('[TA35] is where the stand-in at Flying lands, %s m from where it would', (aside) => {
    const spot = Math.round(landingPlace()) + aside;
    expect(Math.abs(landingPlace(spot) - spot)).toBeLessThan(2);
  });

  it('[TA36] rests on what only Site reads: legs, and the limit to both sides', () => {
    const legs: Fault = { kind: 'indicationAbsent', source: 'legs', fromTick: 0, parameters: { leg: 2 } };
    const table = openCrew({ byInstruments: true, faults: [legs] });
    // the stand-in slows down to what the table of limits holds
    say(table, 'm2', { kind: 'leaveSeat' });
    while (table.run.flight.height > 15) stepTable(table);
    const { siteReadings: read } = viewTable(table, 'm5');
    expect(read?.locked).toEqual([true, true, false, true]);
    expect(read?.limitLeft).toBeGreaterThan(0);
    expect(read?.limitRight).toBeGreaterThan(0);
    for (const id of ['m1', 'm2', 'm3', 'm4']) expect(viewTable(table, id).siteReadings).toBeUndefined();
  });
});

describe('what Sensors does besides judging', () => {
  it('[TA35] names a cause, which the crew is told and the scorecard times', () => {
    const fault: Fault = { kind: 'freeze', source: 'altimeter', fromTick: 100, parameters: {} };
    const table = openCrew({ byInstruments: true, faults: [fault] });
    runTable(table, 160);
    say(table, 'm3', { kind: 'nameCause', source: 'altimeter', cause: 'drift' });
    expect(viewTable(table, 'm1').named).toEqual([{ source: 'altimeter', cause: 'drift' }]);
    runTable(table, 60);
    say(table, 'm3', { kind: 'nameCause', source: 'altimeter', cause: 'freeze' });
    runTable(table, 60);
    say(table, 'm3', { kind: 'nameCause', source: 'altimeter', cause: 'nothing' });
    expect(viewTable(table, 'm1').named).toEqual([]);
    say(table, 'm4', { kind: 'armCutOff', armed: true });
    say(table, 'm4', { kind: 'fireCutOff' });
    while (table.state.stage === 'descending') stepTable(table);
    expect(viewTable(table, 'm1').scorecard?.failures).toMatchObject([{ source: 'altimeter', namedAfter: 2 }]);
  });

  it('[TA35] has named a cause as it begins where the word stood by then, and not where it was taken back before', () => {
    const fault: Fault = { kind: 'freeze', source: 'altimeter', fromTick: 100, parameters: {} };
    const namedAfter = (isTakenBack: boolean) => {
      const table = openCrew({ byInstruments: true, faults: [fault] });
      runTable(table, 40);
      say(table, 'm3', { kind: 'nameCause', source: 'altimeter', cause: 'freeze' });
      runTable(table, 40);
      if (isTakenBack) say(table, 'm3', { kind: 'nameCause', source: 'altimeter', cause: 'nothing' });
      runTable(table, 40);
      say(table, 'm4', { kind: 'armCutOff', armed: true });
      say(table, 'm4', { kind: 'fireCutOff' });
      while (table.state.stage === 'descending') stepTable(table);
      return viewTable(table, 'm1').scorecard?.failures?.[0]?.namedAfter;
    };
    expect(namedAfter(false)).toBe(0);
    expect(namedAfter(true)).toBeUndefined();
  });

  it('[TA37] aligns the inertial unit in four seconds of flying level', () => {
    const table = openCrew({ byInstruments: true });
    say(table, 'm2', { kind: 'setTilt', degrees: 8 });
    runTable(table, 120);
    expect(say(table, 'm3', { kind: 'realign' })).toBe('done');
    expect(say(table, 'm3', { kind: 'realign' })).toBe('table/aligning');
    runTable(table, 30);
    expect(viewTable(table, 'm1').aligning).toBe(4);
    say(table, 'm2', { kind: 'setTilt', degrees: 0 });
    let waited = 0;
    while (viewTable(table, 'm1').aligning === 4) {
      runTable(table, 1);
      waited += 1;
    }
    expect(waited).toBeLessThan(240);
    runTable(table, 238);
    expect(viewTable(table, 'm1').aligning).toBeCloseTo(1 / 60, 12);
    const known = table.run.believed?.sigma.angle ?? 0;
    runTable(table, 1);
    expect(viewTable(table, 'm1').aligning).toBeUndefined();
    // it begins anew: the angle is as uncertain as at the start
    expect(table.run.believed?.sigma.angle).toBeGreaterThan(3 * known);
  });

  it('is refused where everything is true', () => {
    const table = openCrew();
    expect(say(table, 'm3', { kind: 'realign' })).toBe('table/no-instruments');
    expect(say(table, 'm3', { kind: 'nameCause', source: 'altimeter', cause: 'freeze' })).toBe('table/no-instruments');
  });
});

describe('what Lead reads', () => {
  it('[TA36] is P(stay upright), by instruments and where the table of limits holds the contact', () => {
    const table = openCrew({ byInstruments: true });
    say(table, 'm2', { kind: 'leaveSeat' });
    // it comes down faster than the table holds
    expect(viewTable(table, 'm1').leadReadings?.odds).toBeUndefined();
    while (table.run.flight.height > 10) stepTable(table);
    // a squat lander on near level ground, without a drift
    expect(viewTable(table, 'm1').leadReadings?.odds).toBeGreaterThan(0.9);
    for (const id of ['m2', 'm3', 'm4', 'm5']) expect(viewTable(table, id).leadReadings).toBeUndefined();
    const plainly = openCrew();
    say(plainly, 'm2', { kind: 'leaveSeat' });
    while (plainly.run.flight.height > 10) stepTable(plainly);
    expect(viewTable(plainly, 'm1').leadReadings).toEqual({});
  });
});

describe('seats', () => {
  it('[TA38] are handed over to who has none, and change places only by the word of whoever decides', () => {
    const table = openCrew();
    const seatOf = (id: string) => viewTable(table, id).you.seat;
    expect(say(table, 'm2', { kind: 'handOver', member: 'm1' })).toBe('table/sits-elsewhere');
    expect([seatOf('m1'), seatOf('m2')]).toEqual(['lead', 'flying']);
    expect(say(table, 'm1', { kind: 'handOver', member: 'm5' })).toBe('done');
    expect([seatOf('m1'), seatOf('m5')]).toEqual(['site', 'lead']);
    joinTable(table, { name: 'late' });
    say(table, 'm2', { kind: 'handOver', member: 'm6' });
    expect([seatOf('m2'), seatOf('m6')]).toEqual([undefined, 'flying']);
  });

  it('[TA38] are dealt by Lead alone, to nobody who is away', () => {
    const table = openCrew();
    expect(say(table, 'm2', { kind: 'deal', member: 'm3', seat: 'site' })).toBe('table/not-yours');
    expect(say(table, 'm1', { kind: 'deal', member: 'm3', seat: 'sensors' })).toBe('table/sits-there');
    dropMember(table, 'm3');
    expect(say(table, 'm1', { kind: 'deal', member: 'm3', seat: 'site' })).toBe('table/away');
    expect(say(table, 'm1', { kind: 'deal', member: 'm9', seat: 'site' })).toBe('table/not-here');
    expect(say(table, 'm1', { kind: 'deal', member: 'm4', seat: 'flying' })).toBe('done');
    expect(table.state.members.map(({ seat }) => seat)).toEqual(['lead', 'propellant', 'sensors', 'flying', 'site']);
  });
});

describe('the next descent of a crew', () => {
  it('[TA9] begins five seconds after it was asked for, unless somebody who sits stops it', () => {
    const table = openCrew();
    runTable(table, 10);
    expect(say(table, 'm3', { kind: 'again' })).toBe('table/not-deciding');
    expect(say(table, 'm3', { kind: 'wait' })).toBe('table/starting');
    say(table, 'm1', { kind: 'again' });
    expect(say(table, 'm1', { kind: 'again' })).toBe('table/starting');
    expect(viewTable(table, 'm5').startingIn).toBe(5);
    runTable(table, 100);
    expect(say(table, 'm5', { kind: 'wait' })).toBe('done');
    runTable(table, 300);
    expect(table.run.flight.tick).toBe(410);
    say(table, 'm1', { kind: 'again' });
    runTable(table, 300);
    expect(table.run.flight.tick).toBe(1);
  });

  it('[TA9] is for the next seat to decide when Lead has been away for long', () => {
    const table = openCrew();
    dropMember(table, 'm1');
    expect(say(table, 'm2', { kind: 'again' })).toBe('table/not-deciding');
    runTable(table, 180);
    expect(say(table, 'm2', { kind: 'again' })).toBe('done');
  });
});
