import { JUDGMENTS } from '../../engine/estimate/index.ts';
import { nextUniform, type seedRandom } from '../../engine/math/index.ts';
import { SOURCES } from '../../engine/sensors/index.ts';
import type { Command } from '../../engine/table/index.ts';

/** A press of somebody at random, at a table where m1 to m5 sit at the seats in their order. */
export function drawnPress(random: ReturnType<typeof seedRandom>): readonly [string, Command] {
  const draw = (count: number) => Math.floor(count * nextUniform(random));
  const presses: readonly (readonly [string, Command])[] = [
    ['m2', { kind: 'setTilt', degrees: draw(21) - 10 }],
    ['m4', { kind: 'setThrust', percent: draw(60) }],
    [
      'm3',
      {
        kind: 'judgeSource',
        source: SOURCES[draw(SOURCES.length)] ?? 'altimeter',
        judgment: JUDGMENTS[draw(3)] ?? 'accepted',
      },
    ],
    ['m2', { kind: 'orderDescentRate', tenths: draw(40) }],
    ['m2', { kind: 'orderDrift', tenths: draw(21) - 10 }],
    ['m2', { kind: 'orderLean', degrees: draw(21) - 10 }],
    ['m2', { kind: 'callOut', sentence: 'motion', to: 'all' }],
    ['m3', { kind: 'callOut', sentence: 'heightAge', to: 'all' }],
    ['m3', { kind: 'callOut', sentence: 'differs', source: SOURCES[draw(SOURCES.length)] ?? 'altimeter', to: 'lead' }],
    ['m4', { kind: 'callOut', sentence: 'usable', to: 'all' }],
    ['m5', { kind: 'callOut', sentence: draw(2) === 0 ? 'limit' : 'slope', to: 'all' }],
    ['m5', { kind: 'orderFacing', steps: draw(7) - 3 }],
    ['m1', { kind: 'callPoll', question: draw(2) === 0 ? 'go' : 'stay' }],
    ['m1', { kind: 'decide', decision: 'go' }],
    ['m1', { kind: 'hold' }],
    ['m1', { kind: 'resume' }],
  ];
  return presses[draw(presses.length)] ?? ['m1', { kind: 'resume' }];
}
