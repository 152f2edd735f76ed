import { describe, expect, it } from 'vitest';
import { drawMeasures, measureWords } from '../../../client/panels/debrief/measureScale.ts';
import { momentWords } from '../../../client/panels/debrief/momentWords.ts';
import { drawUtilisation } from '../../../client/panels/debrief/utilisationDrawing.ts';
import type { Sample } from '../../../engine/replay/index.ts';
import type { InjectMeasures } from '../../../engine/review/index.ts';
import { DRILLS } from '../../../levels/index.ts';

const NOT_SEEN = { over: [] };
const measures = (seen: Partial<InjectMeasures['measures']>): InjectMeasures => ({
  inject: 'x',
  sentAfter: 1,
  measures: { detect: NOT_SEEN, isolate: NOT_SEEN, recover: NOT_SEEN, ...seen },
  responses: [],
});

describe('a moment in words', () => {
  it('has the title of its inject, once the drill is known', () => {
    const drill = DRILLS.find(({ id }) => id === 'quiet-altimeter')!;
    const [row] = drill.events;
    const moment = { kind: 'detected', after: 3, inject: row!.id } as const;
    expect(momentWords(moment, drill)).toBe(`Noticed: ${row!.title}`);
    expect(momentWords(moment, undefined)).toBe(`Noticed: ${row!.id}`);
  });

  it('has who it was, where a seat did it', () => {
    expect(momentWords({ kind: 'poll', after: 3, seat: 'lead' }, undefined)).toBe('A poll was called (Lead)');
  });
});

describe('the measures of an inject', () => {
  it('say what was not observed, and draw no scale where nothing was', () => {
    expect(measureWords(NOT_SEEN)).toBe('not observed');
    expect(drawMeasures(measures({}), 'a')).toBeUndefined();
  });

  it('stand on the scale as a person put them right', () => {
    const detect = { seconds: 9, over: [], corrected: { seconds: 4, reason: 'heard it', by: 'Eve' } };
    const drawn = drawMeasures(measures({ detect }), 'a');
    expect(drawn?.label).toContain('noticed: after 4');
    expect(drawn?.markup).not.toContain('noticed 9');
  });

  it('say that a hold lies between, or another pace', () => {
    expect(measureWords({ seconds: 5, over: ['hold'] })).toMatch(/over a hold$/);
    expect(measureWords({ seconds: 5, over: ['turns', 'pace'] })).toMatch(
      /in turns, at another pace than the drill’s$/,
    );
  });
});

/** A moment in the air: how near it was to tipping, and how near it was believed. */
function sample(after: number, is: number | undefined, believed: number): Sample {
  const still = { x: 0, y: 0, height: 1, vx: 0, vy: 0, angle: 0 };
  const sigma = { x: 0, height: 0, vx: 0, vy: 0, angle: 0 };
  return {
    line: 'sample',
    tick: 60 * after,
    after,
    truth: { ...still, thrust: 0, propellant: 0, ...(is !== undefined && { utilisation: is }) },
    believed: { ...still, sigma, utilisation: believed },
    shown: { all: still },
  };
}

describe('how near it was to tipping', () => {
  it('ends where the lander meets the ground', () => {
    const drawn = drawUtilisation([sample(1, 0.2, 0.1), sample(2, 0.5, 0.3), sample(3, undefined, 0.9)]);
    expect(drawn?.label).toMatch(/believed share of the tip limit: 30.%\. Last true share: 50.%/u);
  });

  it('is not drawn where there is no figure of it', () => {
    expect(drawUtilisation([sample(1, undefined, 0.1)])).toBeUndefined();
  });
});
