import { CAUTION } from '../constants.ts';
import { CHANNELS, SOURCES, type Source } from '../sensors/index.ts';
import type { Sample } from './sampleDescent.ts';

/** The samples as lines of JSON, to stand after the lines of their record: `kilter replay` reads past them. */
export function formatSamples(samples: readonly Sample[]): string {
  return samples.map((sample) => `${JSON.stringify(sample)}\n`).join('');
}

/** Whose values go into the table of samples: not what is one figure a leg. */
const TABLED = SOURCES.filter((source) => source !== 'contactProbes' && source !== 'legIndications');

const MOTION = ['x', 'y', 'height', 'vx', 'vy', 'angle'] as const;
const TRUTH = [...MOTION, 'thrust', 'propellant', 'utilisation'] as const;
const BELIEVED = [...MOTION, 'utilisation'] as const;
const SIGMA = ['x', 'height', 'vx', 'vy', 'angle'] as const;
const SHOWN = ['height', 'vx', 'vy', 'angle', 'tipLimit'] as const;

/**
 * The samples as a table, a row a moment: a comment with the caution, then names with units in SI, then figures. What was not there is empty. What was
 * shown to single seats, and what legs say one by one, stands in the lines of JSON alone.
 */
export function samplesCsv(samples: readonly Sample[]): string {
  const head = [
    'after_s',
    ...TRUTH.map((name) => `true_${name}_${UNITS[name]}`),
    ...TABLED.flatMap((source) => [
      ...CHANNELS[source].map((channel) => `sensed_${source}_${channel}`),
      `sensed_${source}_state`,
      `sensed_${source}_judgment`,
    ]),
    ...BELIEVED.map((name) => `believed_${name}_${UNITS[name]}`),
    ...SIGMA.map((name) => `believed_sigma_${name}_${UNITS[name]}`),
    ...SHOWN.map((name) => `shown_${name}_${UNITS[name]}`),
  ];
  return [`# ${CAUTION}`, head.join(','), ...samples.map((sample) => rowOf(sample).join(','))].join('\n') + '\n';
}

const UNITS = {
  x: 'm',
  y: 'm',
  height: 'm',
  vx: 'm/s',
  vy: 'm/s',
  angle: 'rad',
  thrust: 'N',
  propellant: 'kg',
  utilisation: '-',
  tipLimit: 'm/s',
} as const;

function rowOf({ after, truth, sensed, believed, shown }: Sample): readonly (number | string)[] {
  return [
    after,
    ...TRUTH.map((name) => truth[name] ?? ''),
    ...TABLED.flatMap((source) => sensedCells(source, sensed)),
    ...BELIEVED.map((name) => believed?.[name] ?? ''),
    ...SIGMA.map((name) => believed?.sigma[name] ?? ''),
    ...SHOWN.map((name) => shown.all[name] ?? ''),
  ];
}

function sensedCells(source: Source, sensed: Sample['sensed']): readonly (number | string)[] {
  const said = sensed?.[source];
  return [...CHANNELS[source].map((_, i) => said?.values[i] ?? ''), said?.state ?? '', said?.judgment ?? ''];
}
