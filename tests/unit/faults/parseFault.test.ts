import { describe, expect, it } from 'vitest';
import { parseFault, type Fault } from '../../../engine/faults/index.ts';

const SPAN = { fromTick: 60, toTick: 120 };

/** One of each kind, as it stands in a file. */
const EXAMPLES: readonly Fault[] = [
  { source: 'altimeter', kind: 'noData', parameters: {}, ...SPAN },
  { source: 'altimeter', kind: 'freeze', parameters: {}, fromTick: 0 },
  { source: 'velocityRadar', channel: 'across', kind: 'bias', parameters: { size: 1.5, rise: 4 }, ...SPAN },
  { source: 'inertialUnit', channel: 'rate', kind: 'drift', parameters: { rate: 0.001 }, ...SPAN },
  { source: 'attitudeReference', kind: 'noise', parameters: { sigma: 0.1 }, ...SPAN },
  { source: 'altimeter', kind: 'delay', parameters: { by: 1.5 }, ...SPAN },
  { source: 'altimeter', kind: 'spike', parameters: { size: -30, chance: 0.1 }, ...SPAN },
  { source: 'surfaceCamera', kind: 'falseValid', parameters: {}, ...SPAN },
  { source: 'contactProbes', kind: 'falseInvalid', parameters: {}, ...SPAN },
  { source: 'engine', kind: 'thrustLoss', parameters: { factor: 0.6 }, ...SPAN },
  { source: 'engine', kind: 'thrustOffset', parameters: { percent: -4 }, ...SPAN },
  { source: 'engine', kind: 'cutOffFails', parameters: {}, ...SPAN },
  { source: 'tanks', kind: 'leak', parameters: { flow: 0.2 }, ...SPAN },
  { source: 'legs', kind: 'legSoft', parameters: { leg: 1, factor: 0.7 }, ...SPAN },
  { source: 'legs', kind: 'legMissing', parameters: { leg: 0 }, ...SPAN },
  { source: 'legs', kind: 'legNotLatched', parameters: { leg: 3 }, ...SPAN },
  { source: 'legs', kind: 'indicationAbsent', parameters: { leg: 2 }, ...SPAN },
];

function problemsOf(json: unknown) {
  const result = parseFault(json);
  if (result.ok) throw new Error('must be refused');
  return result.error;
}

describe('a fault from a file', () => {
  it.each(EXAMPLES.map((fault) => [fault.kind, fault] as const))('[FA2] is read back as written: %s', (_, fault) => {
    const result = parseFault(JSON.parse(JSON.stringify(fault)));
    expect(result).toEqual({ ok: true, value: fault });
  });

  it('[FA2] of bias grows at once unless told otherwise', () => {
    const result = parseFault({ source: 'altimeter', kind: 'bias', parameters: { size: 2 }, fromTick: 0 });
    expect(result.ok && result.value.parameters).toEqual({ size: 2, rise: 0 });
  });

  it.each([
    ['', 'altimeter frozen'],
    ['', null],
    ['kind', { source: 'altimeter', parameters: {}, fromTick: 0 }],
    ['kind', { source: 'altimeter', kind: 'frozen', parameters: {}, fromTick: 0 }],
    ['source', { source: 'altitude', kind: 'freeze', parameters: {}, fromTick: 0 }],
    ['source', { source: 'altimeter', kind: 'thrustLoss', parameters: { factor: 0.5 }, fromTick: 0 }],
    ['source', { kind: 'freeze', parameters: {}, fromTick: 0 }],
    ['fromTick', { source: 'altimeter', kind: 'freeze', parameters: {} }],
    ['fromTick', { source: 'altimeter', kind: 'freeze', parameters: {}, fromTick: 1.5 }],
    ['fromTick', { source: 'altimeter', kind: 'freeze', parameters: {}, fromTick: -1 }],
    ['toTick', { source: 'altimeter', kind: 'freeze', parameters: {}, fromTick: 10, toTick: 10 }],
    ['channel', { source: 'altimeter', channel: 'across', kind: 'freeze', parameters: {}, fromTick: 0 }],
    ['channel', { source: 'velocityRadar', channel: 'across', kind: 'delay', parameters: { by: 1 }, fromTick: 0 }],
    ['channel', { source: 'engine', channel: 'across', kind: 'cutOffFails', parameters: {}, fromTick: 0 }],
    ['parameters', { source: 'altimeter', kind: 'freeze', fromTick: 0 }],
    ['parameters', { source: 'altimeter', kind: 'freeze', parameters: 3, fromTick: 0 }],
    ['parameters.sise', { source: 'altimeter', kind: 'bias', parameters: { size: 1, sise: 2 }, fromTick: 0 }],
    ['parameters.size', { source: 'altimeter', kind: 'bias', parameters: { size: '1' }, fromTick: 0 }],
    ['parameters.rise', { source: 'altimeter', kind: 'bias', parameters: { size: 1, rise: -1 }, fromTick: 0 }],
    ['parameters.rate', { source: 'altimeter', kind: 'drift', parameters: {}, fromTick: 0 }],
    ['parameters.sigma', { source: 'altimeter', kind: 'noise', parameters: { sigma: Infinity }, fromTick: 0 }],
    ['parameters.by', { source: 'altimeter', kind: 'delay', parameters: { by: 3.1 }, fromTick: 0 }],
    ['parameters.chance', { source: 'altimeter', kind: 'spike', parameters: { size: 1, chance: 2 }, fromTick: 0 }],
    ['parameters.factor', { source: 'engine', kind: 'thrustLoss', parameters: { factor: 1.1 }, fromTick: 0 }],
    ['parameters.percent', { source: 'engine', kind: 'thrustOffset', parameters: { percent: 101 }, fromTick: 0 }],
    ['parameters.flow', { source: 'tanks', kind: 'leak', parameters: { flow: -1 }, fromTick: 0 }],
    ['parameters.leg', { source: 'legs', kind: 'legMissing', parameters: { leg: 16 }, fromTick: 0 }],
    ['parameters.factor', { source: 'legs', kind: 'legSoft', parameters: { leg: 0, factor: 0 }, fromTick: 0 }],
    ['when', { source: 'altimeter', kind: 'freeze', parameters: {}, fromTick: 0, when: 3 }],
  ])('[FA2] is refused with the field named: %s', (path, json) => {
    const problems = problemsOf(json);
    expect(problems.map((problem) => problem.path)).toContain(path);
    for (const { code, expected } of problems) {
      expect(code).toMatch(/^fault\//);
      expect(expected.length).toBeGreaterThan(3);
    }
  });
});
