import { describe, expect, it } from 'vitest';
import { estimateView, type EstimateView, type Judgment, type Judgments } from '../../../engine/estimate/index.ts';
import type { Fault } from '../../../engine/faults/index.ts';
import { SOURCES, type Source } from '../../../engine/sensors/index.ts';
import { believe, type BelievedTick } from '../../support/believedDescent.ts';
import { kinematicState, LEVEL, livelyDescent, still } from '../../support/kinematicTruth.ts';
import { TRUE_MAP } from '../../support/plainEstimate.ts';

const LIVELY = { truth: livelyDescent(900), terrain: LEVEL };
const WEIGHED = ['altimeter', 'velocityRadar', 'attitudeReference', 'surfaceCamera'] as const;

interface Told {
  readonly faults?: readonly Fault[];
  readonly judgments?: Judgments;
  readonly seed?: number;
}

/** Views of a lively descent, by tick. */
function views({ faults = [], judgments = {}, seed = 5 }: Told, descent = LIVELY): readonly EstimateView[] {
  const seen: EstimateView[] = [];
  believe(descent, { seed, faults, judgmentsAt: () => judgments, map: TRUE_MAP }, ({ estimate, readings }) => {
    seen.push(estimateView(estimate, readings, judgments));
  });
  return seen;
}

function statesOf(source: Source, told: Told, descent = LIVELY): readonly string[] {
  return views(told, descent).map(({ sources }) => sources[source].state);
}

describe('the automatic check', () => {
  it('[ES4] calls every source valid in a descent without trouble', () => {
    const last = views({}).at(-1)!;
    expect(SOURCES.map((source) => last.sources[source].state)).toEqual(SOURCES.map(() => 'valid'));
  });

  it('[ES4] says no data before the first report', () => {
    const first = views({})[1]!;
    expect(first.sources.altimeter).toMatchObject({
      state: 'no data',
      age: undefined,
      isUsed: false,
      disagreement: [],
    });
  });

  it.each(SOURCES)('[ES4] of a source that falls silent: stale, then no data, then valid again: %s', (source) => {
    const states = statesOf(source, {
      faults: [{ source, kind: 'noData', parameters: {}, fromTick: 300, toTick: 600 }],
    });
    const after = states.slice(300);
    expect(states.slice(200, 300)).toEqual(states.slice(200, 300).map(() => 'valid'));
    expect([...new Set(after)]).toEqual(['valid', 'stale', 'no data']);
    expect(states.at(-1)).toBe('valid');
  });

  it('[ES4] shows the age of what a source says', () => {
    const seen = views({ faults: [{ source: 'altimeter', kind: 'noData', parameters: {}, fromTick: 300 }] });
    // the last report before came at tick 297, of a sample of 294
    expect(seen[297]!.sources.altimeter.age).toBeCloseTo(0.05, 12);
    expect(seen[600]!.sources.altimeter.age).toBeCloseTo((600 - 294) / 60, 12);
  });

  it('[ES4] shows the age of what the estimate rests on, whatever a rejected source says since', () => {
    const seen = views({ judgments: { altimeter: 'rejected' } });
    expect(seen.at(-1)!.sources.altimeter).toMatchObject({ usedAge: undefined, isUsed: false });
    const used = views({ faults: [{ source: 'altimeter', kind: 'noData', parameters: {}, fromTick: 300 }] });
    expect(used[600]!.sources.altimeter.usedAge).toBeCloseTo((600 - 294) / 60, 12);
  });

  it('[ES4] of a source that measures and calls itself invalid: failed', () => {
    const faults = [{ source: 'velocityRadar', kind: 'falseInvalid', parameters: {}, fromTick: 300 }] as const;
    expect(statesOf('velocityRadar', { faults }).at(-1)).toBe('failed');
  });

  it('[ES4] of a source that cannot measure: no data', () => {
    const truth = Array.from({ length: 200 }, (_, tick) => kinematicState(tick, still(50, 0.5)));
    const states = statesOf('velocityRadar', {}, { truth, terrain: LEVEL });
    expect([...new Set(states)]).toEqual(['no data']);
  });

  it('[ES4] of a source that disagrees: suspect after three reports, valid again when it agrees again', () => {
    const faults: readonly Fault[] = [
      { source: 'velocityRadar', kind: 'bias', parameters: { size: 3, rise: 0 }, fromTick: 300, toTick: 360 },
    ];
    const states = statesOf('velocityRadar', { faults });
    // reports come at ticks 305, 311, 317
    expect(states.slice(305, 317)).toEqual(states.slice(305, 317).map(() => 'valid'));
    expect(states.slice(317, 365)).toEqual(states.slice(317, 365).map(() => 'suspect'));
    expect(states.at(-1)).toBe('valid');
  });
});

describe('what is taken in', () => {
  it.each([...WEIGHED, 'inertialUnit'] as const)(
    '[ES4] says so while it is, and no longer once its source says nothing that can be used: %s',
    (source) => {
      const faults = [{ source, kind: 'falseInvalid', parameters: {}, fromTick: 600 }] as const;
      const seen = views({ faults });
      expect(seen[599]!.sources[source].isUsed).toBe(true);
      expect(seen.at(-1)!.sources[source].isUsed).toBe(false);
    },
  );

  it.each(WEIGHED)(
    '[ES4] a source rejected or under check moves nothing, and is checked all the same: %s',
    (source) => {
      const silent = views({ faults: [{ source, kind: 'noData', parameters: {}, fromTick: 0 }] });
      for (const judgment of ['rejected', 'under check'] satisfies readonly Judgment[]) {
        const put = views({ judgments: { [source]: judgment } });
        for (const [tick, view] of put.entries()) {
          const { sources: _, ...motion } = view;
          expect(motion).toEqual(
            Object.fromEntries(Object.entries(silent[tick]!).filter(([name]) => name !== 'sources')),
          );
        }
        const last = put.at(-1)!.sources[source];
        expect(last).toMatchObject({ judgment, state: 'valid', isUsed: false });
        expect(last.disagreement.length).toBeGreaterThan(0);
      }
    },
  );

  it('[ES4] a rejected inertial unit is not followed', () => {
    const kept = views({ judgments: { inertialUnit: 'rejected' } }).at(-1)!;
    const silent = views({ faults: [{ source: 'inertialUnit', kind: 'noData', parameters: {}, fromTick: 0 }] }).at(-1)!;
    expect({ ...kept, sources: 0 }).toEqual({ ...silent, sources: 0 });
    expect(kept.sigma.vx).toBeGreaterThan(5 * views({}).at(-1)!.sigma.vx);
  });

  it('[ES4] what a source says when it calls itself invalid moves nothing', () => {
    const faults = (['falseInvalid', 'noData'] as const).map((kind): Fault => ({
      source: 'altimeter',
      kind,
      parameters: {},
      fromTick: 100,
    }));
    const [invalid, silent] = faults.map((fault) => views({ faults: [fault] }).at(-1)!);
    expect({ ...invalid, sources: 0 }).toEqual({ ...silent, sources: 0 });
  });

  it('[ES4] one report far off moves nothing', () => {
    const spike: Fault = {
      source: 'altimeter',
      kind: 'bias',
      parameters: { size: 40, rise: 0 },
      fromTick: 303,
      toTick: 304,
    };
    const silent: Fault = { source: 'altimeter', kind: 'noData', parameters: {}, fromTick: 303, toTick: 304 };
    const [spiked, without] = [spike, silent].map((fault) => views({ faults: [fault] }).at(-1)!);
    expect({ ...spiked, sources: 0 }).toEqual({ ...without, sources: 0 });
  });
});

describe('a source that stays away', () => {
  const SIZE = 30;
  const faults: readonly Fault[] = [
    { source: 'altimeter', kind: 'bias', parameters: { size: SIZE, rise: 0 }, fromTick: 300 },
  ];

  /** How much higher the lander is believed to be than it is, by tick. */
  function excess(judgments: Judgments): readonly number[] {
    const found: number[] = [];
    const note = ({ estimate, state }: BelievedTick): void => void found.push(estimate.mean[1]! - state.y);
    believe(LIVELY, { seed: 5, faults, judgmentsAt: () => judgments, map: TRUE_MAP }, note);
    return found;
  }

  it('[ES5] is left out for four seconds, and then believed', () => {
    const off = excess({});
    // the first wrong report comes at tick 303
    expect(Math.max(...off.slice(120, 303 + 240).map(Math.abs))).toBeLessThan(2);
    expect(off[303 + 246]!).toBeGreaterThan(0.8 * SIZE);
  });

  it('[ES5] is never believed when the crew has rejected it', () => {
    expect(Math.max(...excess({ altimeter: 'rejected' }).slice(240).map(Math.abs))).toBeLessThan(8);
  });

  it('[ES5] leads the estimate back when it was right: a wrong one that was believed locks nobody out', () => {
    const ended: readonly Fault[] = [{ ...faults[0]!, toTick: 600 }];
    let last = Infinity;
    believe(
      { ...LIVELY, truth: livelyDescent(1200) },
      { seed: 5, faults: ended, map: TRUE_MAP },
      ({ estimate, state }) => {
        last = estimate.mean[1]! - state.y;
      },
    );
    expect(Math.abs(last)).toBeLessThan(1);
  });
});
