import { assert } from '../assert.ts';
import type { Vec2 } from '../math/vec2.ts';
import { PHYSICS_DT } from './constants.ts';
import type { Terrain } from '../ground/terrain.ts';
import { groundSpan, highestGround } from '../ground/terrain.ts';
import type { Bulk, Motion } from './motion.ts';
import {
  Chain,
  CONTACT_SKIN,
  createWorld,
  MAX_POLYGON_VERTICES,
  Polygon,
  stepWorld,
  Vec2 as Vertex,
  type Body,
  type Contact,
  type World,
} from './planckWorld.ts';

/** Length of ground in one chain [m]. */
const CHUNK_LENGTH = 24;
/** Chains exist this far to either side of the hull [m], and only while it is this near to the highest ground [m]. */
const CHAIN_REACH = 24;
const CHAIN_CEILING = 40;

/** Scratch, overwritten before each use: the step allocates nothing. */
const MASS_DATA = { mass: 0, center: { x: 0, y: 0 }, I: 0 };
const VELOCITY = { x: 0, y: 0 };

/** The hull in the rigid-body world, and the ground below it. Changed by the step only. */
export interface HullBody {
  readonly world: World;
  readonly ground: Body;
  readonly body: Body;
  /** Which chunks of the ground exist by now. */
  readonly chunks: boolean[];
  readonly highest: number;
  /** Fastest closing speed of a hull contact that began since it was last set to 0 [m/s]. */
  strike: number;
}

/** Bodies are made in this order and never again: ground, then hull, which may take another outline. */
export function createHullBody(terrain: Terrain, hull: readonly Vec2[], bulk: Bulk, motion: Motion): HullBody {
  const world = createWorld();
  const ground = world.createBody();
  const body = world.createBody({ type: 'dynamic', allowSleep: false });
  shapeHull(body, hull, terrain.friction);
  const [first, last] = groundSpan(terrain);
  const chunks = Array.from({ length: Math.ceil((last - first) / CHUNK_LENGTH) }, () => false);
  const made: HullBody = { world, ground, body, chunks, highest: highestGround(terrain), strike: 0 };
  setBulk(made, bulk);
  placeHull(made, motion);
  world.on('begin-contact', (contact) => {
    made.strike = Math.max(made.strike, closingSpeed(contact, body));
  });
  return made;
}

function shapeHull(body: Body, hull: readonly Vec2[], friction: number): void {
  for (const part of splitPolygon(hull))
    body.createFixture({
      shape: new Polygon(part.map(([x, y]) => ({ x, y }))),
      density: 1,
      friction,
      restitution: 0,
    });
}

/** Gives a hull that is clear of the ground another outline and other mass properties, about a center of mass that keeps its place and motion. */
export function reshapeHull(made: HullBody, terrain: Terrain, hull: readonly Vec2[], bulk: Bulk, motion: Motion): void {
  const { body } = made;
  for (let fixture = body.getFixtureList(); fixture; fixture = body.getFixtureList()) body.destroyFixture(fixture);
  shapeHull(body, hull, terrain.friction);
  setBulk(made, bulk);
  placeHull(made, motion);
}

/** Puts the hull where the motion says. */
function placeHull({ body }: HullBody, motion: Motion): void {
  body.setTransform({ x: 0, y: 0 }, motion.angle);
  const offset = body.getWorldCenter();
  body.setTransform({ x: motion.x - offset.x, y: motion.y - offset.y }, motion.angle);
  body.setLinearVelocity({ x: motion.vx, y: motion.vy });
  body.setAngularVelocity(motion.rate);
}

/** Gives the hull the mass properties of the whole lander. Keeps the motion of its material points. */
export function setBulk(hull: HullBody, bulk: Bulk): void {
  const { mass, centerHeight, inertia } = bulk;
  // the library wants the moment of inertia about the origin of the body frame
  MASS_DATA.mass = mass;
  MASS_DATA.center.y = centerHeight;
  MASS_DATA.I = inertia + mass * centerHeight * centerHeight;
  hull.body.setMassData(MASS_DATA);
}

/**
 * Hands one physics step to the rigid-body world, which alone knows about hull contact, and reads it back into `motion`.
 *
 * `start` is the motion before the step and `motion` after it, hull contact left out. In flight and on legs the world gets
 * the mean velocity of the step, so that it arrives exactly where the motion arrived, and the rest of the change of
 * velocity is added afterward. With the hull on the ground it gets the final velocity, which is its own scheme, so that
 * what lies still keeps no speed.
 */
export function carryHull(hull: HullBody, start: Motion, motion: Motion, isDown: boolean): void {
  const { body } = hull;
  VELOCITY.x = isDown ? motion.vx : (motion.x - start.x) / PHYSICS_DT;
  VELOCITY.y = isDown ? motion.vy : (motion.y - start.y) / PHYSICS_DT;
  const rate = isDown ? motion.rate : (motion.angle - start.angle) / PHYSICS_DT;
  const restX = motion.vx - VELOCITY.x;
  const restY = motion.vy - VELOCITY.y;
  const restRate = motion.rate - rate;
  body.setLinearVelocity(VELOCITY);
  body.setAngularVelocity(rate);
  stepWorld(hull.world);
  const center = body.getWorldCenter();
  const velocity = body.getLinearVelocity();
  motion.x = center.x;
  motion.y = center.y;
  motion.angle = body.getAngle();
  motion.vx = velocity.x + restX;
  motion.vy = velocity.y + restY;
  motion.rate = body.getAngularVelocity() + restRate;
}

/** True when some part of the hull touches the ground. */
export function isHullDown(hull: HullBody): boolean {
  for (let edge = hull.body.getContactList(); edge; edge = edge.next ?? null)
    if (edge.contact.isTouching()) return true;
  return false;
}

/**
 * What decides the next step of the rigid-body world: place and speed of the hull, which ground is laid, and of each contact whether it touches and the
 * impulses from which its solver starts.
 */
export function hullMemory({ body, chunks, strike }: HullBody): number[] {
  const place = body.getPosition();
  const center = body.getWorldCenter();
  const velocity = body.getLinearVelocity();
  const memory = [place.x, place.y, center.x, center.y, body.getAngle()];
  memory.push(velocity.x, velocity.y, body.getAngularVelocity(), strike, ...chunks.map(Number));
  for (let edge = body.getContactList(); edge; edge = edge.next ?? null) {
    const { contact } = edge;
    const manifold = contact.getManifold();
    memory.push(contact.getChildIndexA(), contact.getChildIndexB(), Number(contact.isTouching()), manifold.pointCount);
    for (let i = 0; i < manifold.pointCount; i++) {
      const point = manifold.points[i];
      if (point) memory.push(point.id.key, point.normalImpulse, point.tangentImpulse);
    }
  }
  return memory;
}

/**
 * Lays the ground under and beside the hull once it comes near, chunk by chunk, from left to right, and leaves it there.
 * A chain of the whole site would cost hundreds of kilobytes and seconds of start time over many rooms.
 *
 * The chain lies CONTACT_SKIN below the ground: that is how far apart the library keeps what rests, so that a resting
 * hull is drawn and felt on the ground. (Vertically; on a slope of 12 degrees 0.3 mm are missing.)
 */
export function layGround(hull: HullBody, terrain: Terrain, x: number, y: number): void {
  if (y > hull.highest + CHAIN_CEILING) return;
  const [first] = groundSpan(terrain);
  const from = Math.max(0, Math.floor((x - CHAIN_REACH - first) / CHUNK_LENGTH));
  const to = Math.min(hull.chunks.length - 1, Math.floor((x + CHAIN_REACH - first) / CHUNK_LENGTH));
  for (let i = from; i <= to; i++) {
    if (hull.chunks[i]) continue;
    hull.chunks[i] = true;
    layChunk(hull.ground, terrain, i);
  }
}

function layChunk(ground: Body, terrain: Terrain, index: number): void {
  const [first] = groundSpan(terrain);
  const { spacing } = terrain;
  const from = Math.ceil((index * CHUNK_LENGTH) / spacing);
  const to = Math.min(terrain.heights.length - 1, Math.ceil(((index + 1) * CHUNK_LENGTH) / spacing));
  if (to <= from) return;
  const vertex = (i: number) => new Vertex(first + i * spacing, (terrain.heights[i] ?? 0) - CONTACT_SKIN);
  const chain = new Chain(
    Array.from({ length: to - from + 1 }, (_, i) => vertex(from + i)),
    false,
  );
  // neighbors, so that a hull slides over the joint of two chunks without catching on it
  if (from > 0) chain.setPrevVertex(vertex(from - 1));
  if (to < terrain.heights.length - 1) chain.setNextVertex(vertex(to + 1));
  ground.createFixture({ shape: chain, density: 0, friction: terrain.friction, restitution: 0 });
}

/** How fast a new contact of the hull closes, at its fastest point [m/s]. */
function closingSpeed(contact: Contact, body: Body): number {
  const manifold = contact.getWorldManifold(null);
  if (!manifold) return 0;
  const outward = contact.getFixtureA().getBody() === body ? 1 : -1;
  let fastest = 0;
  for (let i = 0; i < manifold.pointCount; i++) {
    const point = manifold.points[i];
    if (!point) continue;
    const v = body.getLinearVelocityFromWorldPoint(point);
    fastest = Math.max(fastest, outward * (v.x * manifold.normal.x + v.y * manifold.normal.y));
  }
  return fastest;
}

/** Cuts a convex polygon into fans that the library takes whole. */
function splitPolygon(hull: readonly Vec2[]): readonly (readonly Vec2[])[] {
  assert(hull.length >= 3, 'the hull of a section has at least 3 corners');
  const parts: Vec2[][] = [];
  const [apex, ...rest] = hull;
  assert(apex !== undefined, 'the hull has a first corner');
  for (let from = 0; from < rest.length - 1; from += MAX_POLYGON_VERTICES - 2)
    parts.push([apex, ...rest.slice(from, from + MAX_POLYGON_VERTICES - 1)]);
  return parts;
}
