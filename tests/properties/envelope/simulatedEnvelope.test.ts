import { describe, expect, it } from 'vitest';
import {
  advanceEnvelope,
  createEnvelope,
  mapEnvelope,
  rowLimits,
  type Envelope,
  type EnvelopeQuestion,
} from '../../../engine/envelope/index.ts';
import { prepareTouchdown, runTouchdown } from '../../../engine/touchdown/index.ts';
import { plainQuestion } from '../../support/plainEnvelope.ts';

function simulated(question: EnvelopeQuestion): Envelope {
  const kernel = prepareTouchdown(question.lander);
  if (!kernel.ok) throw new Error('no kernel');
  const envelope = createEnvelope(question);
  advanceEnvelope(envelope, (touchdown) => runTouchdown(kernel.value, touchdown), Infinity);
  return envelope;
}

/** Coarse enough to be quick, with tips and used-up legs in it. */
function onSlope(slope: number, changes: Partial<EnvelopeQuestion> = {}): EnvelopeQuestion {
  return plainQuestion({
    conditions: { gravity: 1.62422, ground: { shape: { kind: 'plane', slope }, friction: 0.9 } },
    horizontalSpeed: { from: -4, to: 4, count: 13 },
    descentRate: { from: 0.5, to: 4.5, count: 7 },
    directions: [{ yaw: 0 }],
    coarse: 2,
    halvings: 0,
    ...changes,
  });
}

describe('an envelope of the simulation', () => {
  it('[EN1] refined says the same of every node as one that simulates them all', () => {
    const directions = [{ yaw: 0 }, { yaw: Math.PI / 4 }];
    const refined = mapEnvelope(simulated(onSlope(0.15, { directions })));
    const every = mapEnvelope(simulated(onSlope(0.15, { directions, every: true })));
    expect(refined.nodes.map((node) => node.class)).toEqual(every.nodes.map((node) => node.class));
    expect(refined.simulated).toBeLessThan(every.simulated);
    expect(every.counts.inside).toBeGreaterThan(20);
    expect(every.counts['tip downhill']).toBeGreaterThan(10);
  });

  it('on level ground is its own mirror image for a lander that is', () => {
    const { nodes, columns, counts } = mapEnvelope(simulated(onSlope(0)));
    expect(counts.inside).toBeGreaterThan(20);
    expect(counts.inside).toBeLessThan(nodes.length - 20);
    const mirrored = nodes.map((_, i) => nodes[i - (i % columns) + columns - 1 - (i % columns)]?.class);
    expect(mirrored).toEqual(nodes.map((node) => node.class));
  });

  it('has a lower limit downhill the steeper the ground', () => {
    const limits = [0.02, 0.08, 0.15].map((slope) => {
      const rows = { descentRate: { from: 1, to: 1.5, count: 2 }, halvings: 6 };
      return rowLimits(simulated(onSlope(slope, rows)))[0]?.above?.horizontalSpeed ?? Number.NaN;
    });
    expect(limits[1]).toBeLessThan(limits[0] ?? 0);
    expect(limits[2]).toBeLessThan(limits[1] ?? 0);
  });

  it('[EN2] shows instability at gentle descents on a steep slope where a harder one stays up: nothing makes it convex', () => {
    const nodes = mapEnvelope(simulated(onSlope(0.35, { directions: [{ yaw: 0 }, { yaw: Math.PI / 4 }] }))).nodes;
    const classesBelow = (rate: number): readonly (string | undefined)[] =>
      nodes.filter((node) => node.descentRate < rate).map((node) => node.class);
    expect(classesBelow(1.3)).not.toContain('inside');
    expect(classesBelow(3)).toContain('inside');
  });
});
