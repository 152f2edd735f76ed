import { OUTCOMES, PHASES } from '../../engine/world/index.ts';
import { arrival, touchdown } from './cardShape.ts';
import { group, list, number, optional, truth, words } from './shapes.ts';

/** A descent, as it travels: as the crew knows it, and for the control side as it is. */

const quantity = number('float64');

export const commanded = group({ thrustPercent: number('uint8'), tiltDeg: number('int8') });

export const flight = group({
  tick: number('uint32'),
  phase: words(PHASES),
  x: quantity,
  y: quantity,
  vx: quantity,
  vy: quantity,
  angle: quantity,
  rate: quantity,
  thrust: quantity,
  propellant: quantity,
  mass: quantity,
  height: quantity,
  slope: quantity,
  legs: list(
    group({
      footX: quantity,
      footY: quantity,
      footZ: quantity,
      inContact: truth,
      stroke: quantity,
      strokeUsed: quantity,
      usedUp: truth,
      load: quantity,
    }),
  ),
  commanded,
  facing: optional(group({ steps: number('int8'), yaw: quantity, rest: quantity })),
  touchdown: optional(group(touchdown)),
  contacts: list(arrival),
  outcome: optional(words(OUTCOMES)),
});
