import { figure } from '../../engine/figures.ts';
import { barPlot, polarPlot, withKey, type KeyEntry, type PolarSeries } from '../../engine/plot/index.ts';
import { feetRound, planeClasses, planeDrawing, type LeastTipFields } from '../../engine/study/index.ts';
import { ROUND_STEP, type BoardCell, type BoardFindings } from './boardFindings.ts';
import type { BoardQuestion } from './boardQuestion.ts';
import { paragraph, type Sheet } from './sheet.ts';
import { angleWords, limitWords, percentWords } from './words.ts';

/** Least tip limits, a row a world and a column a slope. */
export function matrixPart(
  { asked, worlds, slopesDeg }: BoardQuestion,
  { cells }: BoardFindings,
  sheet: Sheet,
): string {
  const speed = Math.abs(asked.horizontalSpeed);
  const rows = worlds.map((world) => [
    `${world.name}, ${figure(world.gravity, 3)} m/s^2`,
    ...cells.filter((cell) => cell.world.id === world.id).map((cell) => cellWords(cell, speed)),
  ]);
  const tolerance = Math.max(...cells.map(({ least }) => least.tipTolerance));
  return [
    paragraph(
      `The same arrival on every world and slope: ${asked.descentRate} m/s down, friction ${asked.friction} [-], the ground falling the way it travels. Limits hold to within ${figure(tolerance, 3)} m/s of the search, and no closer than the models do: see the credibility card.`,
    ),
    sheet.table({
      caption: `Least tip limit [m/s]. "tips": below the ${figure(speed, 2)} m/s of the arrival. "leg": a leg is used up from that speed, before it tips; at once: even without sideways speed. "*": an input lies outside the checked range.`,
      columns: [{ heading: 'world, gravity' }, ...slopesDeg.map((slope) => ({ heading: `slope ${slope} deg` }))],
      rows,
    }),
  ].join('\n');
}

/** Anything less is written as 0.00 [m/s]. */
const LEAST_SHOWN = 0.005;

function cellWords({ least, outside }: BoardCell, speed: number): string {
  const { tip, tipUpTo, gear, firstLimit } = least;
  const limit = tip === null ? `none to ${figure(tipUpTo, 1)}` : figure(tip, 2);
  return [
    `${limit}${outside.length > 0 ? ' *' : ''}`,
    ...(tip !== null && tip < speed ? ['tips'] : []),
    ...(firstLimit === 'gear' && gear !== null ? [gear < LEAST_SHOWN ? 'leg at once' : `leg ${figure(gear, 2)}`] : []),
  ].join(', ');
}

const FULL = { ink: 'ink', width: 2.2 } as const;
const CLOSED = { ink: 'pencil', width: 1.6, dash: 'dashed' } as const;

/** Static tilt and tip limit all round. */
export function directionPart({ asked }: BoardQuestion, { rigid, round, least }: BoardFindings, sheet: Sheet): string {
  const feet = feetRound(asked);
  const tilt: PolarSeries = {
    name: 'static tilt',
    stroke: FULL,
    closed: true,
    points: rigid.rows.map(({ azimuthDeg, tiltDeg }) => ({ azimuthDeg, value: tiltDeg })),
  };
  const closed: PolarSeries = {
    name: 'closed form: feet together, rigid legs',
    stroke: CLOSED,
    closed: true,
    points: rigid.rows.map(({ azimuthDeg, plastic }) => ({ azimuthDeg, value: Math.max(0, plastic ?? 0) })),
  };
  const simulated: PolarSeries = {
    name: 'simulated, this lander',
    stroke: FULL,
    closed: true,
    points: round.map(({ azimuthDeg, tip }) => ({ azimuthDeg, value: tip ?? undefined })),
  };
  const key = [simulated, closed].map(({ name, stroke }): KeyEntry => ({ name, mark: stroke }));
  const speed = Math.abs(asked.horizontalSpeed);
  return [
    paragraph(
      `Azimuths are the lander's own, from x toward y. Standing still it falls first toward ${angleWords(rigid.least.azimuthDeg)}, at ${angleWords(rigid.least.tiltDeg)}; that is the same on every world. Moving, ${directionWords(least)}.`,
    ),
    sheet.pair(
      [
        polarPlot({
          label: 'Static tilt by direction',
          unit: 'deg',
          series: [tilt],
          feet,
          ring: { value: asked.slopeDeg, words: 'slope' },
        }),
        'Tilt of the ground at which it falls, by direction [deg], every 5 deg; dotted: the slope of the arrival.',
      ],
      [
        withKey(
          polarPlot({
            label: 'Tip limit by direction of travel',
            unit: 'm/s',
            series: [closed, simulated],
            feet,
            ring: { value: speed, words: 'this arrival' },
          }),
          key,
        ),
        `Tip limit by direction of travel [m/s], simulated every ${ROUND_STEP} deg; the ground falls in each direction of travel. Open rings: tips at no speed looked at.`,
      ],
    ),
  ].join('\n');
}

function directionWords(least: LeastTipFields): string {
  const { tipAzimuthDeg } = least;
  return tipAzimuthDeg === null
    ? `it tips at no speed looked at, ${limitWords(least)}`
    : `it tips first toward ${angleWords(tipAzimuthDeg)}, above ${limitWords(least)}`;
}

/** The plane of speeds, with its grid. */
export function planePart({ asked, grid }: BoardQuestion, { plane }: BoardFindings, sheet: Sheet): string {
  const known = plane.nodes.length - plane.unknown;
  const { speedTo, descentTo, steps, yaws } = grid;
  const key = planeClasses(plane).map(({ name, hatch }): KeyEntry => ({
    name: `${name}, ${plane.counts[name]}`,
    mark: hatch,
  }));
  const drawing = planeDrawing(asked, grid, plane, {
    label: 'Plane of horizontal speed and descent rate',
    x: 'horizontal speed, + downhill [m/s]',
    y: 'descent rate [m/s]',
    point: 'this arrival',
  });
  return [
    paragraph(
      `${percentWords((plane.counts.inside ?? 0) / known, 0)} of the plane looked at stays upright with no limit passed.`,
    ),
    sheet.figure(
      withKey(drawing, key),
      `Horizontal speed and descent rate, the worst of ${yaws} yaws all round. Grid ${figure((2 * speedTo) / steps, 3)} by ${figure(descentTo / steps, 3)} m/s; ${plane.runs} touchdowns simulated; a feature thinner than four steps may be missed. The key counts nodes of the grid.`,
    ),
  ].join('\n');
}

/** The half stance that each world asks for. */
export function worldsPart(
  { asked }: BoardQuestion,
  { stance: { body, speed, rows } }: BoardFindings,
  sheet: Sheet,
): string {
  const bars = rows.map(({ name, halfStance, ratioToEarth }) => ({
    name,
    value: halfStance ?? undefined,
    tick: body.halfStance,
    note:
      halfStance === null
        ? 'none will do'
        : `${figure(halfStance, 2)} m${ratioToEarth === null ? '' : `, ${figure(ratioToEarth, 2)}`}`,
  }));
  return [
    paragraph(
      `The half stance at which ${figure(speed, 2)} m/s along the ground is just borne by a rigid body on ${asked.slopeDeg} deg, by the closed form (plastic pivot); the lander has ${figure(body.halfStance, 2)} m. That speed is its own limit of this kind on Earth.`,
    ),
    sheet.figure(
      barPlot({ label: 'Half stance required on each world', axis: 'half stance required [m]', bars }),
      'Half stance required, and how many times that on Earth; dashed: what the lander has.',
    ),
  ].join('\n');
}
