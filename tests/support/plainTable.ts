import type { TableModel, TablePlan } from '../../engine/table/index.ts';
import type { DescentSetup, DescentState } from '../../engine/world/index.ts';
import { plainChoice } from './plainChoice.ts';

/** This world keeps nothing that is worth a hash. */
const NO_HASH = '0'.repeat(16);

/**
 * A world simple enough to reckon by hand, under the real rules of the table: a point falls straight down at 1 m/s a tick
 * less 1 m/s a full thrust, from 100 m, and comes to rest at 0. The stand-in always commands 50 % and 5 degrees.
 */
export const plainModel: TableModel = {
  createDescent(plan) {
    let state = startOf(plan.setup);
    return {
      step(input) {
        const y = Math.max(0, state.y - (1 - input.thrustPercent / 100));
        const tick = state.tick + 1;
        const down = y === 0;
        state = {
          ...state,
          tick,
          y,
          height: y,
          commanded: input,
          angle: input.tiltDeg,
          phase: down ? 'at rest' : 'approach',
          ...(down ? { outcome: 'upright' } : {}),
        };
        return down ? [{ kind: 'outcome', tick, outcome: 'upright' }] : [];
      },
      setFaults: () => undefined,
      read: () => state,
      mark() {
        const { tick, phase, x, y, angle, vx, vy, thrust, propellant } = state;
        return {
          tick,
          phase,
          x,
          y,
          angle,
          vx,
          vy,
          rate: 0,
          thrust,
          propellant,
          legs: NO_HASH,
          contacts: NO_HASH,
          hull: NO_HASH,
        };
      },
    };
  },
  createPilot: () => () => ({ thrustPercent: 50, tiltDeg: 5 }),
  createMarginGauge: () => () => ({
    predicted: {
      limit: 2,
      speedMargin: 1.5,
      utilisation: 0.25,
      band: 'desired',
      callout: 'inside',
      x: 0,
      seconds: 1,
      descentRate: 1,
      slope: 0,
    },
    tiltLeft: 0.5,
  }),
  createSideGauge: () => () => undefined,
  scorecard: (final) => ({
    outcome: final.outcome === 'upright' ? 'upright inside limit' : (final.outcome ?? 'stopped'),
    contacts: [],
    contactCount: 0,
    restTilt: 0,
    strokeUsed: [0, 0],
    propellantLeft: final.propellant,
    physics: 0,
  }),
};

function startOf(setup: DescentSetup): DescentState {
  const leg = { footX: 0, footY: 0, footZ: 0, inContact: false, stroke: 0, strokeUsed: 0, usedUp: false, load: 0 };
  return {
    tick: 0,
    phase: 'approach',
    x: 0,
    y: setup.start.y,
    vx: 0,
    vy: -1,
    angle: 0,
    rate: 0,
    thrust: 0,
    propellant: setup.propellant,
    mass: 1000,
    height: setup.start.y,
    slope: 0,
    legs: [leg, leg],
    commanded: { thrustPercent: 0, tiltDeg: 0 },
    contacts: [],
  };
}

export const plainPlan: TablePlan = {
  title: 'A plain fall',
  landerId: 'peg',
  siteId: 'flat',
  worldId: 'moon',
  seed: 1,
  choice: plainChoice,
  setup: {
    lander: {
      id: 'peg',
      name: 'Peg',
      summary: 'A point, for tests.',
      parts: [{ name: 'all', kind: 'dry', mass: 1000, center: [0, 0, 1], shape: { kind: 'point' } }],
      tanks: [],
      legs: [],
      hull: [],
      engine: { maxThrust: 3000, minThrust: 0, specificImpulse: 300, lag: 0, attitudeTorque: 0 },
      probeLength: 0,
    },
    gravity: 1.62,
    terrain: { firstX: -10, spacing: 20, heights: [0, 0], friction: 0.5 },
    start: { x: 0, y: 100, angle: 0, vx: 0, vy: -1, rate: 0 },
    propellant: 100,
  },
};
