import { cos, sin } from '../math/index.ts';
import { circle, line, polyline, tickWords, words, type Plot, type Point, type Stroke } from './markup.ts';
import { linearScale, roundUp } from './scale.ts';

export interface PolarSeries {
  readonly name: string;
  readonly stroke: Stroke;
  /** In any order; undefined: there is no limit toward that azimuth as far as was looked. Not closed while not all are known. */
  readonly points: readonly { readonly azimuthDeg: number; readonly value: number | undefined }[];
  readonly closed: boolean;
}

interface PolarQuestion {
  readonly label: string;
  readonly unit: string;
  readonly series: readonly PolarSeries[];
  /** Azimuths of footpads, drawn as pads at the rim [deg], numbered from 1; missing ones hollow. */
  readonly feet: readonly { readonly azimuthDeg: number; readonly missing: boolean }[];
  /** A value looked up, drawn as a ring: the speed of the arrival, the slope of the ground. */
  readonly ring?: { readonly value: number; readonly words: string };
}

const SIZE = 360;
const MIDDLE = SIZE / 2;
const RADIUS = 134;

/** Values by azimuth round the lander, x to the right and y up, as the lander's own frame is seen from above. */
export function polarPlot({ label, unit, series, feet, ring }: PolarQuestion): Plot {
  const values = series.flatMap(({ points }) => points.flatMap(({ value }) => value ?? []));
  const most = roundUp(Math.max(0, ring?.value ?? 0, ...values), 4);
  const scale = linearScale([0, most], [0, RADIUS], 4);
  const at = (azimuthDeg: number, radius: number): Point => {
    const azimuth = (azimuthDeg * Math.PI) / 180;
    return [MIDDLE + radius * cos(azimuth), MIDDLE - radius * sin(azimuth)];
  };
  const rings = scale.ticks.filter((value) => value > 0);
  const spokes = Array.from({ length: 12 }, (_, i) => 30 * i);
  const markup = [
    ...spokes.map((azimuth) => {
      const [x, y] = at(azimuth, RADIUS);
      return line(MIDDLE, MIDDLE, x, y, { ink: 'grid' });
    }),
    ...rings.map((value) => circle(MIDDLE, MIDDLE, scale.at(value), { ink: value === most ? 'faint' : 'grid' })),
    ...spokes
      .filter((azimuth) => azimuth % 90 === 0)
      .map((azimuth) => {
        const [x, y] = at(azimuth, RADIUS + 31);
        return words(`${azimuth}°`, x, y + 4, { size: 12, ink: 'pencil', align: 'center' });
      }),
    ...feet.map(({ azimuthDeg, missing }, i) => {
      const [x, y] = at(azimuthDeg, RADIUS + 10);
      const pad = circle(x, y, 8, { ink: 'ink', dash: missing ? 'dotted' : 'solid' }, missing ? 'none' : 'soil');
      return pad + words(String(i + 1), x, y + 4, { size: 11, align: 'center' });
    }),
    ring === undefined || ring.value <= 0
      ? ''
      : circle(MIDDLE, MIDDLE, scale.at(ring.value), { ink: 'blue', width: 1.4, dash: 'dotted' }),
    ...series.map((one) => drawSeries(one, (azimuth, value) => at(azimuth, scale.at(value ?? most)))),
    ...rings.map((value) =>
      words(
        `${tickWords(value, scale.step)}${value === most ? ` ${unit}` : ''}`,
        MIDDLE + 4,
        MIDDLE - scale.at(value) - 3,
        { size: 11, ink: 'pencil', halo: 'card' },
      ),
    ),
    ring === undefined || ring.value <= 0
      ? ''
      : words(ring.words, MIDDLE, MIDDLE + scale.at(ring.value) + 13, {
          size: 11,
          ink: 'blue',
          align: 'center',
          halo: 'card',
        }),
  ].join('');
  return { width: SIZE, height: SIZE, markup, label };
}

function drawSeries(
  { points, stroke, closed }: PolarSeries,
  at: (azimuthDeg: number, value: number | undefined) => Point,
): string {
  const sorted = points.toSorted((a, b) => a.azimuthDeg - b.azimuthDeg);
  const places = sorted.map(({ azimuthDeg, value }) => at(azimuthDeg, value));
  if (!closed) return places.map(([x, y]) => circle(x, y, 2.4, stroke)).join('');
  const open = sorted.flatMap(({ value }, i) => (value === undefined ? [circle(...places[i]!, 2.4, stroke)] : []));
  return polyline(places, stroke, true) + open.join('');
}
