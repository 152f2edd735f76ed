import { describe, expect, it } from 'vitest';
import type { Lander } from '../../../engine/lander/lander.ts';
import { prepareTouchdown, runTouchdown, type TouchdownOutcome } from '../../../engine/touchdown/index.ts';
import { ringLander } from '../../support/ringLander.ts';
import { MOON, plane } from '../../support/touchDown.ts';

/**
 * Trends that were measured on models of a lunar-module-class lander. The gear here is of that class and invented in its details: four legs,
 * pads 4.2 m out, center of mass 3.4 m up, 7 t, two-stage primaries of 20 and 42 kN and secondaries of 15 kN.
 */
function classLander(legCount: number): Lander {
  const base = ringLander({
    mass: 7000,
    inertia: [18_000, 18_000, 22_000],
    centerHeight: 3.4,
    legCount,
    radius: 4.2,
    crushForce: 20_000,
    stiffness: 1e6,
    hipInset: 2.2,
    hipHeight: 3,
    secondary: { force: 15_000, stroke: 1, stiffness: 1e6 },
  });
  const stages = [
    { force: 20_000, stroke: 0.25 },
    { force: 42_000, stroke: 0.56 },
  ];
  return { ...base, legs: base.legs.map((leg) => ({ ...leg, stages })) };
}

interface Arrival {
  readonly slopeDeg: number;
  readonly friction: number;
  readonly horizontalSpeed: number;
  readonly descentRate: number;
  readonly yaw: number;
  readonly pitchDeg?: number;
  readonly rollDeg?: number;
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

function outcomeFor(lander: Lander): (arrival: Arrival) => TouchdownOutcome {
  const prepared = prepareTouchdown(lander);
  if (!prepared.ok) throw new Error(JSON.stringify(prepared.error));
  return (arrival) => {
    const { horizontalSpeed, descentRate, yaw } = arrival;
    const state = {
      horizontalSpeed,
      descentRate,
      yaw,
      pitch: radians(arrival.pitchDeg ?? 0),
      roll: radians(arrival.rollDeg ?? 0),
    };
    const ground = plane(arrival.friction, radians(arrival.slopeDeg));
    return runTouchdown(prepared.value, { gravity: MOON, ground, state }).outcome;
  };
}

const isTipped = (outcome: TouchdownOutcome): boolean => outcome.startsWith('tipped');

/** Yaw angles over one spacing of the legs. */
function yaws(legCount: number, count: number): readonly number[] {
  return Array.from({ length: count }, (_, i) => ((i + 0.5) / count) * ((2 * Math.PI) / legCount));
}

/** Least speed of a scan at which the lander tips at any yaw. */
function worstYawLimit(legCount: number, friction: number, speeds: readonly number[]): number {
  const touch = outcomeFor(classLander(legCount));
  const falls = (horizontalSpeed: number): boolean =>
    yaws(legCount, 6).some((yaw) =>
      isTipped(touch({ slopeDeg: 12, friction, horizontalSpeed, descentRate: 2.13, yaw })),
    );
  return speeds.find(falls) ?? Infinity;
}

const SPEEDS = Array.from({ length: 17 }, (_, i) => 1 + 0.25 * i);

describe('friction trend', () => {
  // NASA Langley, 1/6-scale models, NTRS 20070030982 (trend, from memory): no overturn at 0.4; some at 0.7 to 1.0; five legs better than four
  it('lets nothing overturn at 0.4 up to 5 m/s, and some at 0.7 to 1.0', () => {
    expect(worstYawLimit(4, 0.4, SPEEDS)).toBe(Infinity);
    const at07 = worstYawLimit(4, 0.7, SPEEDS);
    const at1 = worstYawLimit(4, 1, SPEEDS);
    expect(at07).toBeLessThan(4);
    expect(at1).toBeLessThan(at07);
  });

  it('has five legs of equal radius stand more speed than four, at the worst yaw', () => {
    for (const friction of [0.7, 1]) {
      expect(worstYawLimit(5, friction, SPEEDS)).toBeGreaterThan(worstYawLimit(4, friction, SPEEDS));
    }
  });
});

describe('descent-rate trend', () => {
  // AD-0269413, 1961 (trend, from memory): a strip of instability can appear at a critical descent rate
  it('shows a strip of descent rates that tip between lower and higher ones that do not', () => {
    const touch = outcomeFor(
      ringLander({
        mass: 7000,
        inertia: [18_000, 18_000, 22_000],
        centerHeight: 3.4,
        legCount: 4,
        radius: 4.2,
        crushForce: 20_000,
        stroke: 1.5,
        stiffness: 1e6,
        hipInset: 2.2,
        hipHeight: 3,
        secondary: { force: 15_000, stroke: 1.5, stiffness: 1e6 },
      }),
    );
    const scan = Array.from({ length: 45 }, (_, i) =>
      isTipped(
        touch({ slopeDeg: 12, friction: 1, horizontalSpeed: 1.3, descentRate: 0.1 + 0.1 * i, yaw: Math.PI / 4 }),
      ),
    );
    expect(scan.slice(0, 15)).not.toContain(true);
    expect(scan).toContain(true);
    expect(scan.slice(scan.lastIndexOf(true) + 1).length).toBeGreaterThan(2);
    expect(scan.at(-1)).toBe(false);
  });
});

describe('design corners of lunar-module-class gear', () => {
  // NASA TN D-6850, Rogers 1972 (numbers from memory): 3.05 m/s down and 0 across, 2.13 down and 1.22 across; attitude 6 deg; slope 12 deg
  const corners = [
    { descentRate: 3.05, horizontalSpeed: 0 },
    { descentRate: 2.13, horizontalSpeed: 1.22 },
  ];

  it('stays up in nearly all yaws and lean directions', () => {
    const touch = outcomeFor(classLander(4));
    let tipped = 0;
    let runs = 0;
    for (const corner of corners) {
      for (const yaw of yaws(1, 40)) {
        // the lean points another way for each yaw
        const leanTo = 2.3999632 * runs;
        const arrival = { ...corner, slopeDeg: 12, friction: 0.8, yaw };
        const lean = { pitchDeg: 6 * Math.cos(leanTo), rollDeg: 6 * Math.sin(leanTo) };
        if (isTipped(touch({ ...arrival, ...lean }))) tipped++;
        runs++;
      }
    }
    expect(runs).toBe(80);
    expect(tipped / runs).toBeLessThan(0.05);
  });

  it('may fail when everything is at its worst at once', () => {
    const touch = outcomeFor(classLander(4));
    const worst = yaws(4, 24).filter((yaw) => {
      const towardSlope = { pitchDeg: 6 * Math.cos(yaw), rollDeg: 6 * Math.sin(yaw) };
      return isTipped(
        touch({ descentRate: 3.05, horizontalSpeed: 1.8, slopeDeg: 15, friction: 1, yaw, ...towardSlope }),
      );
    });
    expect(worst.length).toBeGreaterThan(0);
  });
});
