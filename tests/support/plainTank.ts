import type { Tank } from '../../engine/lander/lander.ts';

/** A tank with what a test wants of it. */
export function plainTank(shape: Partial<Tank> = {}): Tank {
  return {
    name: 'plain',
    orientation: 'upright',
    radius: 1,
    length: 2,
    bottomHeight: 1,
    offset: [0, 0],
    fill: 0.5,
    density: 1000,
    ...shape,
  };
}
