import { assert } from '../assert.ts';
import { MAX_TILT_DEG } from '../input/controlInput.ts';
import { drainTanks } from '../lander/drainTanks.ts';
import { createDescent } from '../world/createDescent.ts';
import type { ControlInput, DescentSetup, DescentState, TouchdownState } from '../world/descent.ts';
import { layOutSection } from '../world/layOutSection.ts';
import { readDescent } from '../world/readDescent.ts';
import { stepDescent } from '../world/stepDescent.ts';
import { findWorld, type World } from '../worlds.ts';
import { staticTiltOf } from '../pivot/tripLimit.ts';
import { pivotBodyAt } from './closedForm.ts';
import { cardOutcome, judgeContact } from './judgeContact.ts';
import type { CardOutcome, JudgedContact } from './scorecardTypes.ts';

/** One touchdown as it ends on one world. */
export interface WorldTouchdown extends Omit<JudgedContact, 'arrival'> {
  readonly world: World;
  /** The same on every world [rad]. */
  readonly staticTilt: number;
  readonly outcome: CardOutcome;
  readonly final: DescentState;
  /** Replays it: this setup, with `input` at every tick until the outcome. */
  readonly setup: DescentSetup;
  readonly input: ControlInput;
}

/** The three of the examples, lightest first. */
export const COMPARED_WORLDS: readonly string[] = ['moon', 'mars', 'earth'];

/**
 * The same touchdown on several worlds: same lander, same ground, same velocities, attitude and rate at contact; only
 * gravity differs. The limit is the tip limit of that arrival on that world; the outcome is that of the played world, started an
 * instant before the contact with unused legs and left to itself with the engine off.
 */
export function compareWorlds(
  touchdown: TouchdownState,
  played: DescentSetup,
  worldIds: readonly string[] = COMPARED_WORLDS,
): readonly WorldTouchdown[] {
  const { facing } = touchdown;
  const section = layOutSection(played.lander, played.propellant, facing);
  const body = pivotBodyAt(section, touchdown.mass);
  const propellant = Math.max(0, Math.min(played.propellant, touchdown.mass - section.masses.leastMass));
  const lander = drainTanks(played.lander, touchdown.mass);
  const tilt = (touchdown.angle * 180) / Math.PI;
  // the thrusters act until the first foot is down: they are told to hold the attitude there is
  const input = { thrustPercent: 0, tiltDeg: Math.round(Math.max(-MAX_TILT_DEG, Math.min(MAX_TILT_DEG, tilt))) + 0 };
  return worldIds.map((id) => {
    const world = findWorld(id);
    assert(world !== undefined, `there is a world '${id}'`);
    const there = { ...played, gravity: world.gravity };
    const { arrival: _arrival, ...margin } = judgeContact(there, { ...touchdown, after: 'first' });
    const setup = contactSetup(touchdown, { ...there, lander, propellant, ...(facing !== undefined && { facing }) });
    const final = playOut(setup, input);
    return {
      world,
      ...margin,
      staticTilt: staticTiltOf(body),
      outcome: cardOutcome(final.outcome ?? 'stopped', margin),
      final,
      setup,
      input,
    };
  });
}

/** Height of the lower foot above the ground at the start [m]: one step before contact at any speed that is flown. */
const CLEARANCE = 1e-6;

/** The same setup, started so that the lower foot is about to touch. */
function contactSetup(touchdown: TouchdownState, setup: DescentSetup): DescentSetup {
  const { x, vx, descentRate, angle, rate } = touchdown;
  const start = { x, y: 0, angle, vx, vy: -descentRate, rate };
  // the height of a foot above the ground is linear in that of the body
  const high = Math.max(...setup.terrain.heights) + 100;
  const { height } = readDescent(createDescent({ ...setup, start: { ...start, y: high } }));
  return { ...setup, start: { ...start, y: high - height + CLEARANCE } };
}

function playOut(setup: DescentSetup, input: ControlInput): DescentState {
  const descent = createDescent(setup);
  while (descent.outcome === undefined) stepDescent(descent, input);
  return readDescent(descent);
}
