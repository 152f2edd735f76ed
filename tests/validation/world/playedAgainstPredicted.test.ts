import { describe, expect, it } from 'vitest';
import { type Descent, type Lander } from '../../../engine/index.ts';
import { findLander } from '../../../levels/index.ts';
import { dropLander, evenGround, settle } from '../../support/dropLander.ts';
import { hardenLegs } from '../../support/hardenLegs.ts';
import { plainLander } from '../../support/plainLander.ts';

/**
 * The played outcome against the engine's own limit for the contact that decided. Both are searched by bisection over the
 * speed of arrival: where the played lander stops staying upright, and where the utilisation of the played contact passes 1. The
 * feet catch (friction 5): the pivot formula knows no sliding.
 *
 * band: largest |played / predicted − 1| [-]; achieved: the same, measured, with its sign (− is: it falls earlier than
 * predicted). The pivot is an idealization: rigid body, feet that catch without giving. Legs that crush lower the body and
 * take energy; legs that only spring give energy back, which is why a lander harder than ours is also farther off.
 */
const hard = plainLander({ force: 200_000, stiffness: 2e7 });
const crushing = plainLander({ force: 20_000, stiffness: 2e6 });
const trivet = findLander('trivet') ?? hard;
const CASES: readonly Case[] = [
  // a near rigid body
  { name: 'hard legs, level', lander: hard, slopeDeg: 0, descentRate: 0.1, band: 0.01, achieved: -0.004 },
  { name: 'hard legs, level', lander: hard, slopeDeg: 0, descentRate: 0.5, band: 0.01, achieved: -0.001 },
  { name: 'hard legs, downhill', lander: hard, slopeDeg: -5, descentRate: 0.3, band: 0.01, achieved: -0.001 },
  { name: 'hard legs, downhill', lander: hard, slopeDeg: -8, descentRate: 1, band: 0.01, achieved: -0.001 },
  // the same body on legs that crush
  { name: 'crushing legs, level', lander: crushing, slopeDeg: 0, descentRate: 0.5, band: 0.03, achieved: -0.016 },
  { name: 'crushing legs, downhill', lander: crushing, slopeDeg: -5, descentRate: 1, band: 0.04, achieved: -0.028 },
  // the lander of the first landing
  { name: 'Trivet, level', lander: trivet, slopeDeg: 0, descentRate: 0.3, band: 0.02, achieved: -0.003 },
  { name: 'Trivet, level', lander: trivet, slopeDeg: 0, descentRate: 1.5, band: 0.02, achieved: 0.002 },
  { name: 'Trivet, downhill', lander: trivet, slopeDeg: -3, descentRate: 1, band: 0.02, achieved: -0.002 },
  { name: 'Trivet, downhill', lander: trivet, slopeDeg: -8, descentRate: 0.3, band: 0.05, achieved: -0.04 },
  { name: 'Trivet, uphill', lander: trivet, slopeDeg: 4, descentRate: 1, band: 0.02, achieved: 0.006 },
  {
    name: 'Trivet hardened x 4, level',
    lander: hardenLegs(trivet, 4),
    slopeDeg: 0,
    descentRate: 0.3,
    band: 0.03,
    achieved: -0.017,
  },
];

interface Case {
  readonly name: string;
  readonly lander: Lander;
  readonly slopeDeg: number;
  readonly descentRate: number;
  readonly band: number;
  readonly achieved: number;
}

function land({ lander, slopeDeg, descentRate }: Case, vx: number): Descent {
  const terrain = evenGround((slopeDeg * Math.PI) / 180, 5);
  const descent = dropLander({ lander, terrain, vx, descentRate });
  settle(descent);
  return descent;
}

function firstSpeed(isBeyond: (speed: number) => boolean): number {
  let [low, high] = [0.5, 3.3];
  expect(isBeyond(low)).toBe(false);
  expect(isBeyond(high)).toBe(true);
  for (let i = 0; i < 11; i++) {
    const middle = (low + high) / 2;
    if (isBeyond(middle)) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

describe('the played outcome and the predicted limit', () => {
  it.each(CASES)('[PL9] agree for $name, coming down at $descentRate m/s, within $band', (touchdown) => {
    const played = firstSpeed((vx) => land(touchdown, vx).outcome?.startsWith('upright') === false);
    const predicted = firstSpeed((vx) => land(touchdown, vx).contact.utilisation > 1);
    const error = played / predicted - 1;
    expect(Math.abs(error), `measured ${error.toFixed(4)}`).toBeLessThan(touchdown.band);
    expect(Math.abs(error - touchdown.achieved), `measured ${error.toFixed(4)}`).toBeLessThan(0.005);
  });

  it('[PL9] a case of ours where they differ: hard legs spring Trivet over before the limit', () => {
    // known: with legs twenty times as hard nothing crushes and the feet give back what they took; the formula, which has
    // no springs, is then not on the cautious side
    const sprung: Case = { ...CASES[0]!, lander: hardenLegs(trivet, 20), descentRate: 1.5 };
    const descent = land(sprung, 3.1);
    expect(descent.outcome).toBe('tipped downhill');
    expect(descent.contact.utilisation).toBeLessThan(0.9);
    expect(descent.contact.utilisation).toBeGreaterThan(0.75);
  });
});
