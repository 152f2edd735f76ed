import { describe, expect, it } from 'vitest';
import { DisagreementHistory, heightOnStrip, STRIP } from '../../../client/panels/disagreementStrip.ts';
import { ageWords, disagreementWords, sourceValue } from '../../../client/panels/sourceWords.ts';
import { GLYPH, stateGlyph } from '../../../client/views/stateGlyph.ts';
import { GATE, SOURCE_STATES } from '../../../engine/estimate/index.ts';
import type { Source } from '../../../engine/sensors/index.ts';

const THIN = '\u202f';

describe('the strip of the last half minute', () => {
  it('has now at its right edge and half a minute ago at its left one', () => {
    const history = new DisagreementHistory();
    history.take(0, 0);
    history.take(900, 0);
    history.take(1800, 0);
    expect(history.lines()).toEqual(['0,13 75,13 150,13']);
  });

  it('drops what is older, but for one point from which the line comes in', () => {
    const history = new DisagreementHistory();
    for (const tick of [0, 600, 1200, 1800, 2400, 3000]) history.take(tick, 0);
    expect(history.lines()).toEqual(['0,13 50,13 100,13 150,13']);
  });

  it('is broken where there was nothing to weigh', () => {
    const history = new DisagreementHistory();
    history.take(0, 0);
    history.take(600, undefined);
    history.take(1200, GATE);
    history.take(1800, GATE);
    expect(history.lines()).toEqual(['0,13', '100,6.5 150,6.5']);
  });

  it('begins anew with another descent, and takes a tick once', () => {
    const history = new DisagreementHistory();
    history.take(1800, 1);
    history.take(0, 0);
    history.take(0, -GATE);
    expect(history.lines()).toEqual(['150,19.5']);
  });

  it('has the gate half way to its edges, and runs along them beyond', () => {
    expect(heightOnStrip(0)).toBe(STRIP.height / 2);
    expect(heightOnStrip(GATE)).toBe(STRIP.height / 4);
    expect(heightOnStrip(50)).toBe(0);
    expect(heightOnStrip(-50)).toBe(STRIP.height);
  });
});

describe('what a source says', () => {
  it.each<[Source, readonly number[], string]>([
    ['altimeter', [56.25], `56.3${THIN}m`],
    ['velocityRadar', [0.03, -4.42], `→ 0.03, ↓ 4.42${THIN}m/s`],
    ['surfaceCamera', [-0.5], `← 0.50${THIN}m/s`],
    ['surfaceCamera', [-0.004], `0.00${THIN}m/s`],
    ['attitudeReference', [Math.PI / 60], '3.0° left'],
    ['attitudeReference', [-Math.PI / 60], '3.0° right'],
    ['inertialUnit', [-0.1, 2.02, 0], `← 0.10, ↑ 2.02${THIN}m/s², 0.0°/s`],
    ['propellantGauge', [119.4], `119${THIN}kg`],
    ['contactProbes', [1, 0, 0, 1], '1 0 0 1'],
    ['velocityRadar', [], '–'],
    ['altimeter', [], '–'],
  ])('%s %j reads %s', (source, values, words) => {
    expect(sourceValue({ source, values })).toBe(words);
  });

  it('has an age once there was a sample, and a sign where it disagrees', () => {
    expect(ageWords(undefined)).toBe('');
    expect(ageWords(14)).toBe(`14.0${THIN}s old`);
    expect(disagreementWords(undefined)).toBe('');
    expect(disagreementWords(2.25)).toBe(`+2.3${THIN}σ`);
    expect(disagreementWords(-0.9)).toBe(`−0.9${THIN}σ`);
    expect(disagreementWords(0.01)).toBe(`0.0${THIN}σ`);
  });

  it('has a state that is told by shape alone', () => {
    const shapes = SOURCE_STATES.map(stateGlyph);
    expect(new Set(shapes).size).toBe(SOURCE_STATES.length);
    for (const shape of shapes) expect(shape).toMatch(/^<path d="M/);
    expect(GLYPH).toBeGreaterThan(0);
  });
});
