import { describe, expect, it } from 'vitest';
import type { Fault } from '../../../engine/faults/index.ts';
import { feetOf } from '../../../engine/estimate/index.ts';
import {
  compareWorlds,
  createTable,
  playedModel,
  scorecardOf,
  SEATS,
  stepTable,
  viewTable,
  type Command,
  type PlanChoice,
  type Seat,
  type Table,
} from '../../../engine/table/index.ts';
import type { DescentState } from '../../../engine/world/index.ts';
import { commandTable, joinTable, say } from '../../support/askTable.ts';
import { runTable } from '../../support/crewTable.ts';
import { laid } from '../../support/planChoice.ts';

/** Steeple's six legs: a step of a turn is 60 degrees, which take 6 s at 10 deg/s. */
const STEP_TICKS = 360;
const RAVEL: Partial<PlanChoice> = { lander: 'steeple', site: 'ravel-bank', start: 'high', sensorTrouble: 'seeded' };

interface Crewing {
  readonly byInstruments?: boolean;
  readonly seats?: readonly Seat[];
  readonly faults?: readonly Fault[];
  /** Trivet is at rest soonest, and a step takes it 9 s. */
  readonly lander?: PlanChoice['lander'];
}

function openCrew({ byInstruments = true, seats = SEATS, faults = [], lander = 'steeple' }: Crewing = {}): Table {
  const plan = laid({ ...RAVEL, lander, ...(!byInstruments && { sensorTrouble: 'none' }) });
  const table = createTable({ plan: { ...plan, setup: { ...plan.setup, faults } }, model: playedModel });
  SEATS.forEach((seat, at) => {
    joinTable(table, { name: seat });
    if (seats.includes(seat)) commandTable(table, `m${at + 1}`, { kind: 'takeSeat', seat });
  });
  const begun = commandTable(table, `m${SEATS.findIndex((seat) => seats.includes(seat)) + 1}`, { kind: 'begin' });
  if (!begun.ok) throw new Error(begun.error.reason);
  return table;
}

const turn = (steps: number): Command => ({ kind: 'orderFacing', steps });

/** Of each leg, how far it stands to the right of the middle of the body, and toward the viewer [m]. */
function places(state: DescentState): readonly (readonly [number, number])[] {
  return feetOf(state).map(({ across, aside }) => [across, aside]);
}

/** A leg that is soft, and not shown locked, from the start. */
const weak = (leg: number): readonly Fault[] => [
  { source: 'legs', kind: 'legSoft', fromTick: 0, parameters: { leg, factor: 0.25 } },
  { source: 'legs', kind: 'indicationAbsent', fromTick: 0, parameters: { leg } },
];

describe('an order to turn the lander', () => {
  it('[TA61] is for Site to give, within three steps either way, and the whole crew is told', () => {
    const table = openCrew();
    for (const id of ['m1', 'm2', 'm3', 'm4']) expect(say(table, id, turn(1))).toBe('table/not-yours');
    for (const steps of [-4, 4, 0.5, Number.NaN]) expect(say(table, 'm5', turn(steps))).toBe('table/out-of-range');
    expect(viewTable(table, 'm2').site).not.toHaveProperty('facing');
    expect(say(table, 'm5', turn(-2))).toBe('done');
    for (const id of ['m1', 'm2', 'm3', 'm4', 'm5']) expect(viewTable(table, id).site.facing).toBe(-2);
  });

  it.each([true, false])(
    '[TA61] turns it as a new order says, the old one gone; by instruments: %s',
    (byInstruments) => {
      const table = openCrew({ byInstruments });
      const before = places(table.run.flight);
      say(table, 'm5', turn(2));
      runTable(table, 100);
      say(table, 'm5', turn(-1));
      runTable(table, 100 + STEP_TICKS - 1);
      expect(table.run.flight.facing!.steps).toBe(0);
      runTable(table, 1);
      const { flight } = viewTable(table, 'm5');
      expect(flight.facing).toEqual({ steps: -1, yaw: expect.closeTo(-Math.PI / 3, 12), rest: 0 });
      // seen from above the feet have gone round clockwise by 60 degrees, each as its number
      const [c, s] = [0.5, -Math.sqrt(3) / 2];
      for (const [leg, [right, near]] of places(flight).entries()) {
        expect(right).toBeCloseTo(c * before[leg]![0] + s * before[leg]![1], 6);
        expect(near).toBeCloseTo(c * before[leg]![1] - s * before[leg]![0], 6);
      }
    },
  );

  it('[TA61] is believed as ordered, with the legs as built', () => {
    const table = openCrew({ faults: weak(0) });
    say(table, 'm5', turn(1));
    runTable(table, STEP_TICKS + 10);
    const { known, flight } = table.run;
    expect(known.facing).toEqual(flight.facing);
    for (const [leg, place] of places(known).entries())
      for (const axis of [0, 1] as const) expect(place[axis]).toBeCloseTo(places(flight)[leg]![axis], 6);
    expect(viewTable(table, 'm5').drawnIn).toBe('pencil');
  });

  it('[TA61] stands on the scorecard: when it was ordered, when it was done, how the lander stood at contact', () => {
    const table = openCrew({ seats: ['site'], faults: weak(1), lander: 'trivet' });
    runTable(table, 59);
    say(table, 'm5', turn(0));
    runTable(table, 1);
    say(table, 'm5', turn(1));
    while (table.state.stage === 'descending') stepTable(table);
    const card = scorecardOf(table)!;
    expect(card.facing).toEqual({ steps: 1, orderedAfter: 1, doneAfter: 10 });
    expect(card.contacts[0]!.arrival.facing).toBe(1);
    expect(card.defects).toMatchObject([{ kind: 'legSoft', answeredAfter: 1 }, { kind: 'indicationAbsent' }]);
  });

  it('[TA61] is absent from a card where nobody gave it', () => {
    const table = openCrew({ seats: ['site'], lander: 'trivet' });
    while (table.state.stage === 'descending') stepTable(table);
    expect(scorecardOf(table)).not.toHaveProperty('facing');
    expect(table.run.flight).not.toHaveProperty('facing');
  });

  it('[TA61] stays where its touchdown is played on other worlds, which count the same leg as soft', () => {
    const { setup } = laid({ lander: 'trivet' });
    const touchdown = {
      tick: 900,
      x: setup.start.x,
      vx: 0,
      descentRate: 2,
      angle: 0,
      rate: 0,
      slope: 0,
      mass: 1800,
      firstFoot: 'both' as const,
    };
    const level = { ...setup, terrain: { ...setup.terrain, heights: setup.terrain.heights.map(() => 0) } };
    const crushedLeg = (facing: number) => {
      const [there] = compareWorlds({ ...touchdown, facing }, { ...level, faults: [weak(0)[0]!] }, ['moon']);
      const strokes = there!.final.legs.map(({ stroke }) => stroke);
      const leg = strokes.indexOf(Math.max(...strokes));
      return {
        leg,
        right: Math.sign(there!.final.legs[leg]!.footX - there!.final.x),
        facing: there!.final.facing?.steps,
      };
    };
    // half a turn brings the soft leg, which takes most, to the other side
    const [before, after] = [crushedLeg(0), crushedLeg(2)];
    expect(before).toMatchObject({ leg: 0, facing: 0 });
    expect(after).toEqual({ leg: 0, right: -before.right, facing: 2 });
  });

  it('[TA44] lies face down in turns, one in the place of another', () => {
    const table = openCrew();
    say(table, 'm1', { kind: 'setConduct', conduct: 'turns' });
    say(table, 'm5', turn(1));
    say(table, 'm5', turn(-1));
    expect(viewTable(table, 'm5').turn!.own).toEqual([{ order: 'orderFacing', figure: -1 }]);
    expect(viewTable(table, 'm1').site).not.toHaveProperty('facing');
    say(table, 'm1', { kind: 'turnOver' });
    expect(viewTable(table, 'm1').site.facing).toBe(-1);
  });
});

/** The outermost leg on the side to which the ground falls, which is the left or the right one here. */
function downhillLeg(): number {
  const { flight } = openCrew().run;
  const outs = places(flight).map(([right]) => -Math.sign(flight.slope) * right);
  return outs.indexOf(Math.max(...outs));
}

describe('the stand-in at Site', () => {
  it('[TA39] turns a leg that is not shown locked uphill, after the time a person takes, and says so in the log', () => {
    const table = openCrew({ seats: ['lead'], faults: weak(downhillLeg()) });
    runTable(table, 180);
    expect(table.state.site.facing).toBeUndefined();
    while (table.state.stage === 'descending' && table.state.site.facing === undefined) stepTable(table);
    expect(table.run.flight.tick).toBeGreaterThan(180);
    const { facing } = table.state.site;
    while (table.run.flight.facing?.steps !== facing && table.state.stage === 'descending') stepTable(table);
    const [right] = places(table.run.known)[downhillLeg()]!;
    expect(Math.sign(right)).toBe(Math.sign(table.run.flight.slope));
    expect(table.state.talk.log).toContainEqual(
      expect.objectContaining({ seat: 'site', what: { kind: 'orderFacing', steps: facing } }),
    );
  });

  it('[TA39] leaves it to a person who sits there', () => {
    const table = openCrew({ seats: ['site'], faults: weak(downhillLeg()) });
    runTable(table, 900);
    expect(table.state.site.facing).toBeUndefined();
  });

  it('[TA39] goes by what is shown: a soft leg that is shown locked is not turned, nor is one whose sound indication was lost on level ground', () => {
    const [soft, absent] = weak(downhillLeg());
    const shownLocked = openCrew({ seats: ['lead'], faults: [soft!] });
    runTable(shownLocked, 900);
    expect(shownLocked.state.site.facing).toBeUndefined();
    const plan = laid({ ...RAVEL, site: 'pinfold-plain' });
    const level = createTable({ plan: { ...plan, setup: { ...plan.setup, faults: [absent!] } }, model: playedModel });
    joinTable(level, { name: 'Ada' });
    say(level, 'm1', { kind: 'takeSeat', seat: 'lead' });
    say(level, 'm1', { kind: 'begin' });
    runTable(level, 900);
    expect(level.state.site.facing).toBeUndefined();
  });

  it('[TA39] does nothing asleep', () => {
    const plan = laid(RAVEL);
    const setup = { ...plan.setup, faults: weak(downhillLeg()) };
    const instruments = { ...plan.instruments!, standIns: 'asleep' as const };
    const table = createTable({ plan: { ...plan, setup, instruments }, model: playedModel });
    joinTable(table, { name: 'Ada' });
    say(table, 'm1', { kind: 'takeSeat', seat: 'lead' });
    say(table, 'm1', { kind: 'begin' });
    runTable(table, 900);
    expect(table.state.site.facing).toBeUndefined();
  });
});
