// Must stay first: planck takes Math.sin, Math.cos and Math.atan2 when it is loaded, and the platform's own differ in the
// last bit between Node and browsers.
import '../math/installDeterministicMath.ts';
import { Chain, Polygon, Rot, Settings, Vec2, World, type Body, type Contact } from 'planck';
import { assert } from '../assert.ts';
import { cos, sin } from '../math/trig.ts';
import { MAX_RATE, MAX_SPEED, PHYSICS_DT, POSITION_ITERATIONS, VELOCITY_ITERATIONS } from './constants.ts';

/**
 * The one place that touches planck: its settings, the world, and the step of fixed length.
 *
 * What is set, and why:
 * - the settings are process-wide, so they are set here once and frozen;
 * - no sleeping: at 1.6 m/s² the library puts a body to sleep that stands a little past its balance point;
 * - impacts below 1 m/s would not rebound, so that threshold is lowered;
 * - speeds beyond `maxTranslation` a step would be cut silently, so it is raised out of reach and `stepWorld` throws first.
 */

/** Impacts slower than this do not rebound [m/s]. The library's own 1 would make every soft contact dead. */
Settings.velocityThreshold = 0.05;
/** [m] and [rad] a step. Twice the guard of `stepWorld`, so that the library never cuts a speed by itself. */
Settings.maxTranslation = 2 * MAX_SPEED * PHYSICS_DT;
Settings.maxRotation = 2 * MAX_RATE * PHYSICS_DT;
Object.freeze(Settings);

checkTrigonometry();

export { Chain, Polygon, Vec2, type Body, type Contact, type World };

/**
 * Distance that the library keeps between resting shapes [m]: the skins of both, less the slop it lets them sink in. What
 * comes down very softly stops up to the slop of 5 mm higher.
 */
export const CONTACT_SKIN = 2 * Settings.polygonRadius - Settings.linearSlop;

/** Most vertices of one polygon; the library silently drops the rest. */
export const MAX_POLYGON_VERTICES = Settings.maxPolygonVertices;

/** A world without gravity of its own unless told otherwise, that never sleeps. */
export function createWorld(gravity = 0): World {
  return new World({ gravity: { x: 0, y: -gravity }, allowSleep: false });
}

/** Advances by PHYSICS_DT. There is no other step length. Throws on a speed that the library would have cut. */
export function stepWorld(world: World): void {
  for (let body = world.getBodyList(); body; body = body.getNext()) {
    const v = body.getLinearVelocity();
    // negated, so that NaN is refused too
    if (!(v.x * v.x + v.y * v.y <= MAX_SPEED * MAX_SPEED)) refuseSpeed('speed', v.x, v.y, MAX_SPEED, 'm/s');
    if (!(Math.abs(body.getAngularVelocity()) <= MAX_RATE))
      refuseSpeed('rate', body.getAngularVelocity(), 0, MAX_RATE, 'rad/s');
  }
  world.step(PHYSICS_DT, VELOCITY_ITERATIONS, POSITION_ITERATIONS);
}

function refuseSpeed(what: string, x: number, y: number, limit: number, unit: string): never {
  throw new Error(`Broken contract: a ${what} of at most ${limit} ${unit} is expected in the world, got (${x}, ${y})`);
}

/**
 * Throws when planck was loaded before our sine and cosine were installed, for instance by a bundler that moved it into
 * an earlier chunk. Some platform may agree with ours on a few angles, hardly on all of these.
 */
function checkTrigonometry(): void {
  const rotation = Rot.identity();
  for (let i = 1; i <= 512; i++) {
    const angle = i * 0.0123456789;
    rotation.setAngle(angle);
    assert(
      rotation.s === sin(angle) && rotation.c === cos(angle),
      'planck must be loaded after installDeterministicMath; import it through engine/world/planckWorld.ts only',
    );
  }
}
