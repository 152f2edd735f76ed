import { describe, expect, it } from 'vitest';
import { ringLander } from '../../support/ringLander.ts';
import { MOON, plane, touchDown } from '../../support/touchDown.ts';

const lander = ringLander({
  mass: 2000,
  inertia: [2000, 2000, 2500],
  centerHeight: 1.5,
  legCount: 4,
  radius: 2,
  crushForce: 10_000,
});

describe('the history of a touchdown', () => {
  it.each([1, 3, 8, 20])('[TD19] has a sample every %i steps while the feet are down', (historyEvery) => {
    const state = { horizontalSpeed: 0.3, descentRate: 2 };
    const { history, step } = touchDown(
      { lander, gravity: MOON, ground: plane(0.8), state },
      { historyEvery, step: 1 / 2048, timeLimit: 0.06, stopWhenDecided: false },
    );
    const steps = history!.map(({ time }) => time / step);
    expect(steps.length).toBeGreaterThan(50 / historyEvery);
    steps.forEach((at, i) => expect(at).toBeCloseTo(i * historyEvery, 6));
  });
});
