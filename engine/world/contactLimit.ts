import { staticTiltOf, tripLimit, type ContactCondition, type PivotBody, type TripLimit } from '../pivot/tripLimit.ts';
import type { TouchdownState } from './descent.ts';

/** The trip limits of one contact state, toward the side of travel and away from it, and what they say together. */
export interface ContactLimit {
  /** +1 to the right, −1 to the left; a lander that comes straight down counts as traveling downhill. */
  readonly direction: 1 | -1;
  /** In the direction of travel. */
  readonly ahead: TripLimit;
  /** To the other side. */
  readonly behind: TripLimit;
  /** Actual over allowed horizontal speed, plastic pivot [-]; Infinity where no speed at all is allowed. */
  readonly utilisation: number;
}

/**
 * Trip limits of a lander in the state of one contact, or of a contact now.
 *
 * The legs crush, so they take up the closing speed whichever foot is first ('together' in the trip limit). A rigid leg
 * would add b·w/h to the limit with the leading foot first, and take as much away with the trailing one: at 3 m/s some
 * meters a second either way, which neither the played nor the simulated landers show.
 *
 * Where the leading foot alone is down, the body turns over it from the attitude it has: its footpad plane, if that falls
 * more steeply than the ground, is what the pivot formula calls the slope. A body whose center moves up has no closing speed.
 */
export function contactLimit(body: PivotBody, gravity: number, contact: TouchdownState): ContactLimit {
  const direction = travelDirection(contact);
  const ahead = limitToward(direction, body, gravity, contact);
  const behind = limitToward(direction === 1 ? -1 : 1, body, gravity, contact);
  return { direction, ahead, behind, utilisation: utilisationOf(Math.abs(contact.vx), ahead, behind) };
}

/** The condition under which a contact is judged toward one side. */
export function contactCondition(direction: 1 | -1, gravity: number, contact: TouchdownState): ContactCondition {
  const isLeadingAlone = contact.firstFoot === (direction === 1 ? 'right' : 'left');
  // slope and attitude are counter-clockwise: a fall to the right is the negative of either
  const ground = -direction * contact.slope;
  const sole = -direction * contact.angle;
  return {
    gravity,
    slope: isLeadingAlone ? Math.max(ground, sole) : ground,
    rate: -direction * contact.rate,
    descentRate: Math.max(0, contact.descentRate),
    firstContact: 'together',
  };
}

function travelDirection(contact: TouchdownState): 1 | -1 {
  if (contact.vx !== 0) return contact.vx > 0 ? 1 : -1;
  return contact.slope > 0 ? -1 : 1;
}

function limitToward(direction: 1 | -1, body: PivotBody, gravity: number, contact: TouchdownState): TripLimit {
  const condition = contactCondition(direction, gravity, contact);
  const staticTilt = staticTiltOf(body);
  if (Math.abs(condition.slope) >= staticTilt) return { kind: 'cannotStand', staticTilt };
  return tripLimit(body, condition);
}

function utilisationOf(speed: number, ahead: TripLimit, behind: TripLimit): number {
  if (ahead.kind === 'cannotStand' || behind.kind === 'cannotStand') return Infinity;
  const limit = ahead.plastic.horizontal;
  // tripping backward: even with the speed it has forward, the turn to the other side is enough
  if (limit <= 0 || -speed > behind.plastic.horizontal) return Infinity;
  return speed / limit;
}
