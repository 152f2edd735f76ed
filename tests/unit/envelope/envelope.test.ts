import { describe, expect, it } from 'vitest';
import {
  advanceEnvelope,
  createEnvelope,
  enterAnswer,
  envelopeProgress,
  mapEnvelope,
  pendingJobs,
  rowLimits,
  runJob,
  type Envelope,
  type EnvelopeQuestion,
  type SimulateEnvelope,
} from '../../../engine/envelope/index.ts';
import { blockNodes, isSingle } from '../../../engine/envelope/refinement.ts';
import { nextUniform, seedRandom } from '../../../engine/math/random.ts';
import { drawnRegion, plainQuestion } from '../../support/plainEnvelope.ts';

function work(question: EnvelopeQuestion, simulate: SimulateEnvelope): Envelope {
  const envelope = createEnvelope(question);
  advanceEnvelope(envelope, simulate, Infinity);
  return envelope;
}

/** Corners of the 8 x 8 coarse blocks of a grid of 33 x 33, and one node inside each. */
const COARSE_NODES = 9 * 9 + 8 * 8;

/** Inside an ellipse about (0.3, 1.2); tips downhill right of it, uphill left of it. */
const ELLIPSE = (v: number, w: number): 'upright' | 'tipped downhill' | 'tipped uphill' =>
  ((v - 0.3) / 2.4) ** 2 + ((w - 1.2) / 1.5) ** 2 < 1 ? 'upright' : v > 0.3 ? 'tipped downhill' : 'tipped uphill';

/** Inside left of 2.5, but for a strip of instability 0.6 m/s wide, and with an island beyond. */
const STRIP = (v: number, w: number): 'upright' | 'tipped downhill' => {
  if (Math.abs(w - 2.05) < 0.3) return 'tipped downhill';
  if ((v - 3.3) ** 2 + (w - 3) ** 2 < 0.36) return 'upright';
  return v < 2.5 ? 'upright' : 'tipped downhill';
};

/** Tips in a strip of descent rates between two coarse rows. */
const THIN_STRIP = (_v: number, w: number): 'upright' | 'tipped downhill' =>
  w > 1.55 && w < 1.95 ? 'tipped downhill' : 'upright';

/** Inside everywhere but at one node of the grid. */
const SPECK = (v: number, w: number): 'upright' | 'overloaded' =>
  Math.abs(v - 0.75) < 0.1 && Math.abs(w - 1.625) < 0.05 ? 'overloaded' : 'upright';

/** A region that differs between yaws 0 to 3. */
const FOUR_YAWS = (v: number, w: number, yaw: number): 'upright' | 'overloaded' | 'tipped downhill' => {
  if (yaw === 2 && v > 1) return 'overloaded';
  if (yaw === 1 && v > 2) return 'tipped downhill';
  return w > 3.5 && yaw === 3 ? 'tipped downhill' : 'upright';
};

/** All that an envelope says, without the order in which it was found. */
function plain(envelope: Envelope): unknown {
  const map = mapEnvelope(envelope);
  return {
    map: { ...map, lines: map.lines.map((line) => line.map(({ inside, outside }) => [inside, outside])) },
    crossings: [...envelope.crossings].toSorted(([a], [b]) => (a < b ? -1 : 1)),
  };
}

describe('an envelope', () => {
  it('[EN1] gives every node the class that simulating it would, without simulating most of them', () => {
    for (const region of [ELLIPSE, STRIP]) {
      const map = mapEnvelope(work(plainQuestion({ coarse: 2 }), drawnRegion(region)));
      const wrong = map.nodes.filter(({ horizontalSpeed, descentRate, class: name }) => {
        const truth = region(horizontalSpeed, descentRate);
        return name !== { upright: 'inside', 'tipped downhill': 'tip downhill', 'tipped uphill': 'tip uphill' }[truth];
      });
      expect(wrong).toEqual([]);
      expect(map.unknown).toBe(0);
      expect(map.simulated).toBeLessThan(0.7 * map.nodes.length);
      expect(map.counts.inside).toBeGreaterThan(100);
    }
  });

  it('[EN1] counts every node once, at any time: by its class, or as unknown', () => {
    const regions = [ELLIPSE, SPECK, STRIP, (): 'upright' => 'upright'];
    for (const [region, calls] of regions.flatMap((each) => [30, 200, Infinity].map((some) => [each, some] as const))) {
      const envelope = createEnvelope(plainQuestion());
      advanceEnvelope(envelope, drawnRegion(region), calls);
      const { nodes, counts, unknown } = mapEnvelope(envelope);
      for (const [name, count] of Object.entries(counts))
        expect(count, name).toBe(nodes.filter((node) => node.class === name).length);
      expect(Object.values(counts).reduce((sum, count) => sum + count, unknown)).toBe(nodes.length);
    }
  });

  it('[EN2] leaves no block uncut in which simulated nodes differ, on grids of any size', () => {
    const random = seedRandom(71);
    const upTo = (most: number): number => Math.floor(nextUniform(random) * most);
    for (let draw = 0; draw < 200; draw++) {
      const [columns, rows] = [2 + upTo(8), 2 + upTo(8)];
      const speck = new Set(Array.from({ length: 1 + upTo(3) }, () => `${upTo(columns)} ${upTo(rows)}`));
      const question = plainQuestion({
        horizontalSpeed: { from: 0, to: columns - 1, count: columns },
        descentRate: { from: 0, to: rows - 1, count: rows },
        coarse: 2 + upTo(7),
      });
      const { blocks, size, verdicts } = work(
        question,
        drawnRegion((v, w) => (speck.has(`${Math.round(v)} ${Math.round(w)}`) ? 'overloaded' : 'upright')),
      );
      const uncut = blocks.filter(
        (block) =>
          !isSingle(block) &&
          new Set(blockNodes(block, size).flatMap((node) => verdicts.get(node)?.class ?? [])).size > 1,
      );
      expect(uncut, `${columns} x ${rows}, ${[...speck].join(', ')}`).toEqual([]);
    }
  });

  it('[EN2] meets a strip along the grid that is thinner than its coarse step, whole', () => {
    const map = mapEnvelope(work(plainQuestion(), drawnRegion(THIN_STRIP)));
    const inStrip = map.nodes.filter(({ descentRate }) => descentRate > 1.55 && descentRate < 1.95);
    expect(inStrip).toHaveLength(3 * 33);
    expect(inStrip.filter((node) => node.class !== 'tip downhill')).toEqual([]);
  });

  it('[EN2] keeps a strip of instability and an island beyond it', () => {
    const envelope = work(plainQuestion(), drawnRegion(STRIP));
    const limits = rowLimits(envelope);
    const at = (rate: number): (typeof limits)[number] | undefined =>
      limits.find(({ descentRate }) => Math.abs(descentRate - rate) < 1e-9);
    expect(at(1)).toMatchObject({ startsInside: true, comesBack: false });
    expect(at(2)).toMatchObject({ startsInside: false });
    expect(at(3)).toMatchObject({ startsInside: true, comesBack: true });
    expect(
      mapEnvelope(envelope).nodes.filter((node) => node.horizontalSpeed > 2.8 && node.class === 'inside').length,
    ).toBeGreaterThan(5);
  });

  it('[EN2] simulates every node when asked to, and then misses not even a single one', () => {
    const quick = mapEnvelope(work(plainQuestion(), drawnRegion(SPECK)));
    const every = mapEnvelope(work(plainQuestion({ every: true }), drawnRegion(SPECK)));
    expect(quick.counts['crush exhausted']).toBe(0);
    expect(every.counts['crush exhausted']).toBe(1);
    expect(every.simulated).toBe(every.nodes.length);
    expect(every.lines.length).toBe(4);
  });

  it('[EN3] puts the boundary on the inside of the true one, nearer than a step over two to the halvings', () => {
    const halvings = 6;
    const envelope = work(plainQuestion({ halvings }), drawnRegion(ELLIPSE));
    const step = 8 / 32 / 2 ** halvings;
    expect(envelope.crossings.size).toBeGreaterThan(40);
    for (const { horizontalSpeed: v, descentRate: w } of envelope.crossings.values()) {
      const size = ((v - 0.3) / 2.4) ** 2 + ((w - 1.2) / 1.5) ** 2;
      expect(size).toBeLessThan(1);
      // the gradient of size is below 2 × 2 / 1.5 per m/s on the rim
      expect(size).toBeGreaterThan(1 - (8 / 3) * step);
    }
  });

  it('[EN3] draws the boundary as closed lines: every crossing off the rim of the grid ends two of them', () => {
    const envelope = work(plainQuestion(), drawnRegion(ELLIPSE));
    const { lines } = mapEnvelope(envelope);
    const ends = new Map<unknown, number>();
    for (const end of lines.flat()) ends.set(end, (ends.get(end) ?? 0) + 1);
    expect(ends.size).toBe(envelope.crossings.size);
    const { columns } = envelope.size;
    for (const crossing of envelope.crossings.values()) {
      const isOnRim = crossing.inside < columns && crossing.outside < columns;
      expect(ends.get(crossing)).toBe(isOnRim ? 1 : 2);
    }
  });

  it('[EN4] is the same to the bit in whatever order and portions its jobs are done', () => {
    const question = plainQuestion({ directions: [0, 1, 2, 3, 4].map((yaw) => ({ yaw })) });
    const region = drawnRegion((v, w, yaw) => ELLIPSE(v * (1 + 0.1 * yaw), w));
    const straight = work(question, region);
    const backward = createEnvelope(question);
    while (pendingJobs(backward).length > 0)
      for (const job of pendingJobs(backward).toReversed()) enterAnswer(backward, runJob(question, job, region));
    const portions = createEnvelope(question);
    let calls = 0;
    while (!advanceEnvelope(portions, region, 7)) calls++;
    expect(calls).toBeGreaterThan(50);
    expect(plain(backward)).toEqual(plain(straight));
    expect(plain(portions)).toEqual(plain(straight));
    expect(straight.runs).toBeLessThanOrEqual(region.asked());
  });

  it('[EN4] shows what is known so far at any time, and nothing as known that is not', () => {
    const envelope = createEnvelope(plainQuestion());
    expect(mapEnvelope(envelope)).toMatchObject({ unknown: 33 * 33, simulated: 0, isDone: false });
    advanceEnvelope(envelope, drawnRegion(STRIP), 60);
    const part = mapEnvelope(envelope);
    expect(part.simulated).toBe(60);
    expect(part.unknown).toBeGreaterThan(0);
    expect(envelopeProgress(envelope)).toMatchObject({ stage: 'scan', answered: 60, known: COARSE_NODES, runs: 60 });
    for (const { knowledge, class: name, horizontalSpeed, descentRate } of part.nodes) {
      expect(name === undefined).toBe(knowledge === 'unknown');
      const truth = STRIP(horizontalSpeed, descentRate) === 'upright' ? 'inside' : 'tip downhill';
      expect(knowledge === 'simulated' ? name : truth).toBe(truth);
    }
  });

  it('[EN5] is the worst of its directions, and names the one that is', () => {
    const directions = [0, 1, 2, 3].map((yaw) => ({ yaw }));
    const { nodes } = mapEnvelope(work(plainQuestion({ directions, every: true }), drawnRegion(FOUR_YAWS)));
    const at = (v: number, w: number): (typeof nodes)[number] | undefined =>
      nodes.find((node) => node.horizontalSpeed === v && node.descentRate === w);
    expect(at(0, 1)).toMatchObject({ class: 'inside' });
    expect(at(1.5, 1)).toMatchObject({ class: 'crush exhausted', direction: 2 });
    expect(at(2.5, 1)).toMatchObject({ class: 'tip downhill', direction: 1 });
    expect(at(0, 4)).toMatchObject({ class: 'tip downhill', direction: 3 });
  });

  it('has nothing to find where everything is inside, or nothing', () => {
    for (const outcome of ['upright', 'tipped uphill'] as const) {
      const map = mapEnvelope(
        work(
          plainQuestion(),
          drawnRegion(() => outcome),
        ),
      );
      expect(map).toMatchObject({ isDone: true, unknown: 0, simulated: COARSE_NODES, lines: [] });
    }
  });

  it('takes grids whose sides are no multiple of the coarse step', () => {
    const question = plainQuestion({
      horizontalSpeed: { from: -4, to: 4, count: 12 },
      descentRate: { from: 0.5, to: 3, count: 2 },
      coarse: 5,
    });
    const map = mapEnvelope(
      work(
        question,
        drawnRegion((v) => (v < 1 ? 'upright' : 'tipped downhill')),
      ),
    );
    expect(map.unknown).toBe(0);
    expect(map.counts.inside).toBe(2 * 7);
  });

  it('refuses answers nobody asked for, and questions without sense', () => {
    const envelope = createEnvelope(plainQuestion());
    const verdict = { class: 'inside', direction: 0, leastMargin: 1, runs: 1 } as const;
    expect(() => enterAnswer(envelope, { kind: 'node', node: 1, ...verdict })).toThrow(/nobody asked/);
    for (const bad of [
      { horizontalSpeed: { from: 1, to: 1, count: 5 } },
      { horizontalSpeed: { from: 0, to: 1, count: 1 } },
      { descentRate: { from: -1, to: 1, count: 5 } },
      { directions: [] },
      { coarse: 0 },
      { halvings: 1.5 },
    ])
      expect(() => createEnvelope(plainQuestion(bad))).toThrow(/Broken contract/);
  });
});
