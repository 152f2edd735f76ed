import { beforeEach, describe, expect, it } from 'vitest';
import { SEATS, createTable, stepTable, viewTable, type Command, type Table } from '../../../engine/table/index.ts';
import { commandTable, joinTable } from '../../support/askTable.ts';
import { plainModel, plainPlan } from '../../support/plainTable.ts';

let table: Table;

/** Carries out a command and says 'done', or the code of the refusal. */
function say(id: string, command: Command): string {
  const result = commandTable(table, id, command);
  return result.ok ? 'done' : result.error.code;
}

function reasonFor(id: string, command: Command): string {
  const result = commandTable(table, id, command);
  return result.ok ? '' : result.error.reason;
}

function run(ticks: number): void {
  for (let i = 0; i < ticks; i += 1) stepTable(table);
}

beforeEach(() => {
  table = createTable({ plan: plainPlan, model: plainModel });
  joinTable(table, { name: 'Ada' });
  joinTable(table, { name: 'Bo' });
});

describe('seats', () => {
  it('[TA5] go to whoever asks first, and a second one is told who sits there', () => {
    expect(say('m1', { kind: 'takeSeat', seat: 'flying' })).toBe('done');
    expect(say('m2', { kind: 'takeSeat', seat: 'flying' })).toBe('table/seat-taken');
    expect(reasonFor('m2', { kind: 'takeSeat', seat: 'flying' })).toBe('Flying is taken by Ada.');
  });

  it('[TA5] hold one member each: taking another frees the first', () => {
    say('m1', { kind: 'takeSeat', seat: 'flying' });
    say('m1', { kind: 'takeSeat', seat: 'lead' });
    expect(say('m2', { kind: 'takeSeat', seat: 'flying' })).toBe('done');
    const names = viewTable(table, 'm1').seats.map(({ seat, name }) => [seat, name]);
    expect(names).toEqual([
      ['lead', 'Ada'],
      ['flying', 'Bo'],
      ['sensors', undefined],
      ['propellant', undefined],
      ['site', undefined],
    ]);
  });

  it('[TA5] may be taken again by the one who sits there, which changes nothing', () => {
    say('m1', { kind: 'takeSeat', seat: 'site' });
    const before = viewTable(table, 'm1');
    expect(say('m1', { kind: 'takeSeat', seat: 'site' })).toBe('done');
    expect(viewTable(table, 'm1')).toEqual(before);
  });

  it('[TA5] are free once left', () => {
    say('m1', { kind: 'takeSeat', seat: 'site' });
    expect(say('m1', { kind: 'leaveSeat' })).toBe('done');
    expect(say('m1', { kind: 'leaveSeat' })).toBe('table/not-seated');
    expect(say('m2', { kind: 'takeSeat', seat: 'site' })).toBe('done');
  });

  it.each(SEATS)('[TA6] at %s let a member begin, hold, resume and repeat', (seat) => {
    say('m1', { kind: 'takeSeat', seat });
    expect(say('m1', { kind: 'begin' })).toBe('done');
    expect(say('m1', { kind: 'hold' })).toBe('done');
    expect(say('m1', { kind: 'resume' })).toBe('done');
    run(1000);
    expect(say('m1', { kind: 'again' })).toBe('done');
  });

  it('[TA6] are needed for everything but taking one', () => {
    const commands: readonly Command[] = [
      { kind: 'begin' },
      { kind: 'hold' },
      { kind: 'resume' },
      { kind: 'again' },
      { kind: 'leaveSeat' },
      { kind: 'setThrust', percent: 10 },
      { kind: 'setTilt', degrees: 0 },
    ];
    expect(commands.map((command) => say('m1', command))).toEqual(commands.map(() => 'table/not-seated'));
  });
});

describe('controls', () => {
  it('[TA7] are both at Flying, whoever sits elsewhere', () => {
    say('m1', { kind: 'takeSeat', seat: 'flying' });
    say('m2', { kind: 'takeSeat', seat: 'propellant' });
    expect(viewTable(table, 'm1').you.holds).toEqual({ thrust: true, tilt: true });
    expect(viewTable(table, 'm2').you.holds).toEqual({ thrust: false, tilt: false });
  });

  it('[TA7] refuse the wrong seat and say whose they are', () => {
    say('m1', { kind: 'takeSeat', seat: 'flying' });
    say('m2', { kind: 'takeSeat', seat: 'propellant' });
    say('m1', { kind: 'begin' });
    expect(reasonFor('m1', { kind: 'setCeiling', percent: 40 })).toBe(
      'That is for Propellant to do, and you sit at Flying.',
    );
    expect(reasonFor('m2', { kind: 'setTilt', degrees: 4 })).toBe(
      'That is for Flying to do, and you sit at Propellant.',
    );
    expect(say('m1', { kind: 'setTilt', degrees: 4 })).toBe('done');
    expect(say('m1', { kind: 'setThrust', percent: 40 })).toBe('done');
    run(1);
    expect(viewTable(table, 'm1').flight.commanded).toEqual({ thrustPercent: 40, tiltDeg: 4 });
  });

  it.each(['lead', 'sensors', 'propellant', 'site'] as const)('[TA7] are never at %s', (seat) => {
    say('m1', { kind: 'takeSeat', seat });
    say('m1', { kind: 'begin' });
    expect(say('m1', { kind: 'setThrust', percent: 1 })).toBe('table/not-yours');
    expect(say('m1', { kind: 'setTilt', degrees: 1 })).toBe('table/not-yours');
  });

  it.each([-1, 101, 0.5, Number.NaN, Number.POSITIVE_INFINITY])('[TA8] refuse a thrust of %s percent', (percent) => {
    say('m1', { kind: 'takeSeat', seat: 'flying' });
    say('m1', { kind: 'begin' });
    expect(reasonFor('m1', { kind: 'setThrust', percent })).toContain(`from 0 to 100; got ${percent}`);
    expect(viewTable(table, 'm1').commanded.thrustPercent).toBe(54);
  });

  it.each([-31, 31, 0.1, Number.NaN])('[TA8] refuse a tilt of %s degrees', (degrees) => {
    say('m1', { kind: 'takeSeat', seat: 'flying' });
    say('m1', { kind: 'begin' });
    expect(reasonFor('m1', { kind: 'setTilt', degrees })).toContain(`from -30 to 30; got ${degrees}`);
    expect(viewTable(table, 'm1').commanded.tiltDeg).toBe(0);
  });

  it('[TA8] take the ends of both ranges', () => {
    say('m1', { kind: 'takeSeat', seat: 'flying' });
    say('m1', { kind: 'begin' });
    for (const percent of [0, 100]) expect(say('m1', { kind: 'setThrust', percent })).toBe('done');
    for (const degrees of [-30, 30]) expect(say('m1', { kind: 'setTilt', degrees })).toBe('done');
    expect(viewTable(table, 'm1').commanded).toEqual({ thrustPercent: 100, tiltDeg: 30 });
  });
});

describe('stages', () => {
  it('[TA9] refuse controls before the descent and after it', () => {
    say('m1', { kind: 'takeSeat', seat: 'flying' });
    expect(say('m1', { kind: 'setThrust', percent: 10 })).toBe('table/stage');
    say('m1', { kind: 'begin' });
    run(1000);
    expect(viewTable(table, 'm1').stage).toBe('resolved');
    expect(say('m1', { kind: 'setThrust', percent: 10 })).toBe('table/stage');
    expect(say('m1', { kind: 'hold' })).toBe('table/stage');
    expect(say('m1', { kind: 'resume' })).toBe('table/stage');
    expect(say('m1', { kind: 'begin' })).toBe('table/stage');
  });

  it('[TA9] refuse to begin twice and to repeat what is not over', () => {
    say('m1', { kind: 'takeSeat', seat: 'lead' });
    expect(say('m1', { kind: 'again' })).toBe('table/stage');
    say('m1', { kind: 'begin' });
    expect(say('m1', { kind: 'begin' })).toBe('table/stage');
  });

  it('[TA9] let whoever is alone start over, and in a crew only the one who decides', () => {
    say('m1', { kind: 'takeSeat', seat: 'sensors' });
    say('m1', { kind: 'begin' });
    expect(say('m1', { kind: 'again' })).toBe('done');
    say('m2', { kind: 'takeSeat', seat: 'flying' });
    expect(say('m1', { kind: 'again' })).toBe('table/not-deciding');
    expect(say('m2', { kind: 'again' })).toBe('done');
    say('m2', { kind: 'wait' });
    joinTable(table, { name: 'Cy' });
    say('m2', { kind: 'letIn', member: 'm3' });
    say('m3', { kind: 'takeSeat', seat: 'lead' });
    expect(reasonFor('m2', { kind: 'again' })).toBe('That is for Lead to decide.');
    expect(say('m3', { kind: 'again' })).toBe('done');
  });

  it('[TA10] stop the clock of the descent on hold, and only it', () => {
    say('m1', { kind: 'takeSeat', seat: 'flying' });
    say('m1', { kind: 'begin' });
    run(5);
    say('m1', { kind: 'hold' });
    expect(say('m1', { kind: 'hold' })).toBe('table/held');
    run(50);
    expect(viewTable(table, 'm1').flight.tick).toBe(5);
    expect(say('m1', { kind: 'setThrust', percent: 70 })).toBe('done');
    expect(say('m1', { kind: 'resume' })).toBe('done');
    expect(say('m1', { kind: 'resume' })).toBe('table/held');
    run(1);
    expect(viewTable(table, 'm1').flight).toMatchObject({ tick: 6, commanded: { thrustPercent: 70 } });
  });

  it('[TA11] lay the scorecard on the table when the descent is over, and take it away for the next', () => {
    say('m1', { kind: 'takeSeat', seat: 'flying' });
    say('m1', { kind: 'begin' });
    expect(viewTable(table, 'm1').scorecard).toBeUndefined();
    run(1000);
    expect(viewTable(table, 'm1').scorecard?.outcome).toBe('upright inside limit');
    // who sat where when it came to rest, and no stand-in
    expect(viewTable(table, 'm1').scorecard?.crew).toEqual([{ seat: 'flying', name: 'Ada' }]);
    say('m2', { kind: 'takeSeat', seat: 'lead' });
    expect(viewTable(table, 'm1').scorecard?.crew).toHaveLength(1);
    say('m2', { kind: 'again' });
    // it stays on the table while a crew is told that it goes
    run(299);
    expect(viewTable(table, 'm1')).toMatchObject({ stage: 'resolved', startingIn: 1 / 60 });
    expect(viewTable(table, 'm1').scorecard).toBeDefined();
    run(1);
    expect(viewTable(table, 'm1')).toMatchObject({ stage: 'descending', held: false, flight: { tick: 1 } });
    expect(viewTable(table, 'm1').scorecard).toBeUndefined();
    expect(viewTable(table, 'm1').you.seat).toBe('flying');
  });

  it('[TA11] report each happening of the descent once, with its tick', () => {
    say('m1', { kind: 'takeSeat', seat: 'flying' });
    say('m1', { kind: 'begin' });
    const events = Array.from({ length: 1000 }, () => stepTable(table)).flat();
    expect(events).toEqual([{ kind: 'outcome', tick: 218, outcome: 'upright' }]);
  });
});
