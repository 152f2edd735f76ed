import { describe, expect, it } from 'vitest';
import { readDescent } from '../../../engine/world/index.ts';
import { dropLander, evenGround, settle } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

describe('the contacts of a descent', () => {
  it('[PL15] keep the hard first contact when thrust makes a softer one of the next', () => {
    // the case that a scorecard spoke of as 0.80 m/s: met the ground at 2.75, thrust at contact, came down again softly
    const lander = plainLander({ propellant: 100, maxThrust: 12_000, lag: 0 });
    const drop = { lander, terrain: evenGround(0, 0.2), vx: 2.75, descentRate: 1.5, propellant: 100 };
    const descent = dropLander(drop);
    settle(descent, 30);
    settle(descent, 30, { thrustPercent: 50, tiltDeg: 0 });
    settle(descent);
    const { contacts, touchdown } = readDescent(descent);
    expect(contacts.length).toBeGreaterThanOrEqual(2);
    expect(contacts[0]).toMatchObject({ after: 'first', vx: 2.75, descentRate: 1.5 });
    expect(contacts[1]?.after).toBe('re-light');
    expect(touchdown).toMatchObject({ vx: 2.75, descentRate: 1.5 });
  });

  it('[PL15] begin the touchdown anew when the lander has flown again', () => {
    const lander = plainLander({ propellant: 200, maxThrust: 12_000, lag: 0 });
    const descent = dropLander({ lander, descentRate: 2, propellant: 200 });
    settle(descent, 60);
    settle(descent, 100, { thrustPercent: 60, tiltDeg: 0 });
    expect(descent.phase).toBe('terminal descent');
    settle(descent);
    const { contacts, touchdown } = readDescent(descent);
    expect(contacts[0]?.after).toBe('first');
    const again = contacts.find(({ after }) => after === 're-light');
    expect(again?.tick).toBeGreaterThan(160);
    expect(touchdown?.tick).toBe(again?.tick);
  });

  it.each([
    { angle: 0.1, firstFoot: 'left' },
    { angle: -0.1, firstFoot: 'right' },
    { angle: 0, firstFoot: 'both' },
  ] as const)(
    '[PL15] say that a lander leaning by $angle rad meets the ground with: $firstFoot',
    ({ angle, firstFoot }) => {
      const descent = dropLander({ lander: plainLander(), angle, descentRate: 1 });
      settle(descent, 60);
      const { contacts, touchdown } = readDescent(descent);
      expect(contacts[0]?.firstFoot).toBe(firstFoot);
      expect(touchdown?.firstFoot).toBe(firstFoot);
    },
  );

  it('[PL16] tell of each foot that comes down, and how fast, from the first tick on', () => {
    const events = settle(dropLander({ lander: plainLander(), descentRate: 2 }), 1);
    const down = events.flatMap((event) => (event.kind === 'footDown' ? [event] : []));
    expect(down.map(({ leg, speed, tick }) => ({ leg, speed, tick }))).toEqual(
      [0, 1, 2, 3].map((leg) => ({ leg, speed: 2, tick: 1 })),
    );
  });
});
