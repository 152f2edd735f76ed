import { describe, expect, it } from 'vitest';
import {
  isCutOffDead,
  leakAt,
  legConditionsAt,
  thrustFactorAt,
  thrustOffsetAt,
  type Fault,
} from '../../../engine/faults/index.ts';

const SPAN = { fromTick: 100, toTick: 200 };
const TICKS = [0, 99, 100, 150, 199, 200, 1000];
const inside = (tick: number): boolean => tick >= 100 && tick < 200;

describe('a fault of the lander', () => {
  it('[FA3] takes thrust by a factor, and losses multiply', () => {
    const half = { source: 'engine', kind: 'thrustLoss', parameters: { factor: 0.5 }, ...SPAN } as const;
    for (const tick of TICKS) {
      expect(thrustFactorAt([half], tick)).toBe(inside(tick) ? 0.5 : 1);
      expect(thrustFactorAt([half, half], tick)).toBe(inside(tick) ? 0.25 : 1);
    }
  });

  it('[FA3] adds thrust by a share of the full one, and offsets add up', () => {
    const more = { source: 'engine', kind: 'thrustOffset', parameters: { percent: 5 }, ...SPAN } as const;
    const less = { ...more, parameters: { percent: -2 } };
    for (const tick of TICKS) expect(thrustOffsetAt([more, less], tick)).toBe(inside(tick) ? 3 : 0);
  });

  it('[FA3] keeps the engine from being cut off', () => {
    const stuck = { source: 'engine', kind: 'cutOffFails', parameters: {}, ...SPAN } as const;
    for (const tick of TICKS) expect(isCutOffDead([stuck], tick)).toBe(inside(tick));
    expect(isCutOffDead([], 150)).toBe(false);
  });

  it('[FA3] lets propellant out, and leaks add up', () => {
    const leak = { source: 'tanks', kind: 'leak', parameters: { flow: 0.3 }, ...SPAN } as const;
    for (const tick of TICKS) expect(leakAt([leak, leak], tick)).toBe(inside(tick) ? 0.6 : 0);
  });

  it('[FA3] makes legs soft, missing or not latched: the worst counts, in order of the legs', () => {
    const faults: readonly Fault[] = [
      { source: 'legs', kind: 'legSoft', parameters: { leg: 3, factor: 0.5 }, ...SPAN },
      { source: 'legs', kind: 'legSoft', parameters: { leg: 3, factor: 0.8 }, ...SPAN },
      { source: 'legs', kind: 'legSoft', parameters: { leg: 1, factor: 0.5 }, ...SPAN },
      { source: 'legs', kind: 'legNotLatched', parameters: { leg: 1 }, ...SPAN },
      { source: 'legs', kind: 'legNotLatched', parameters: { leg: 0 }, ...SPAN },
      { source: 'legs', kind: 'legMissing', parameters: { leg: 0 }, ...SPAN },
      { source: 'legs', kind: 'indicationAbsent', parameters: { leg: 2 }, ...SPAN },
    ];
    for (const tick of TICKS)
      expect(legConditionsAt(faults, tick)).toEqual(
        inside(tick)
          ? [
              { leg: 0, kind: 'missing' },
              { leg: 1, kind: 'not latched' },
              { leg: 3, kind: 'soft', factor: 0.5 },
            ]
          : [],
      );
  });
});
