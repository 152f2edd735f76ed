import { describe, expect, it } from 'vitest';
import { callJson, callKilter } from './runKilter.ts';

interface Answer {
  readonly outsideCheckedRange: readonly string[];
}
const outsideOf = async (line: string): Promise<readonly string[]> =>
  ((await callJson(line.split(' '))) as Answer).outsideCheckedRange;

const SMALL_ENVELOPE = '--steps 2 --yaws 1 --coarse 2 --halvings 0';

describe('a result outside the checked range', () => {
  it.each([
    'limit trivet',
    'stance --half-stance 0.5 --center-height 2 --mass 1000 --inertia 0 --worlds moon,earth',
    'touchdown trivet',
    `envelope trivet --from 0 --to 1 --descent-from 1 --descent-to 2 ${SMALL_ENVELOPE}`,
    'compare trivet',
    'disperse trivet --runs 60',
  ])('[CK7] is not claimed by kilter %s', async (line) => {
    expect(await outsideOf(line)).toEqual([]);
    expect((await callKilter(line.split(' '))).out).not.toContain('Outside checked range');
  });

  it.each([
    ['touchdown trivet --missing 2', 'missing legs'],
    ['touchdown trivet --soft 1 --unlatched 2', 'soft legs', 'legs that are not latched'],
    ['touchdown trivet --under-pad 1:0.2', 'a rock or a hole under a footpad'],
    ['touchdown trivet --site saddlers-bench', 'uneven ground'],
    ['touchdown trivet --thrust 2000 --hold 1', 'thrust after contact', 'thrusters that hold after contact'],
    ['touchdown trivet --yaw-rate 3', 'turning about the vertical'],
    ['touchdown trivet --soil-stiffness 1e6 --soil-strength 3e4', 'soil of even bearing strength'],
    [`envelope trivet --from 0 --to 1 --missing 1 ${SMALL_ENVELOPE}`, 'missing legs'],
    ['disperse levels/scenarios/benchArrivals.json --runs 60', 'legs that may be missing, soft or not latched'],
  ])('[CK8] names what was never checked: kilter %s', async (line, ...features) => {
    const outside = await outsideOf(line);
    for (const feature of features) expect(outside).toContain(`${feature}, not checked from outside`);
    expect((await callKilter(line.split(' '))).out).toContain(`${features[0]}, not checked from outside`);
  });

  it.each([
    ['limit trivet --gravity 24.8', 'gravity 24.8 m/s^2'],
    ['limit --half-stance 0.1 --center-height 10 --mass 100 --inertia 0', 'half stance over height 0.01'],
    ['limit --half-stance 1 --center-height 1 --mass 100 --inertia 400', 'inertia over m L^2 2'],
    ['stance trivet --worlds ceres,earth', 'gravity 0.2839 m/s^2'],
    ['stance trivet', 'half stance over height 1.909'],
    ['touchdown trivet --descent 5', 'descent rate 5 m/s'],
    ['touchdown trivet --pitch 10', 'lean 10 deg'],
    ['touchdown bolster', 'half stance over height 1.161'],
    [`envelope trivet --to 6 ${SMALL_ENVELOPE}`, 'horizontal speed 6 m/s'],
    ['compare trivet --slope 15', 'slope 15 deg'],
    ['disperse trivet --runs 20', 'runs 20'],
  ])('[CK7] is said by kilter %s, to people and to machines', async (line, named) => {
    const outside = await outsideOf(line);
    expect(outside.some((found) => found.startsWith(`${named}, checked from `))).toBe(true);
    expect((await callKilter(line.split(' '))).out).toContain(`Outside checked range: ${outside.join('; ')}.`);
  });
});
