/**
 * Writes engine/touchdown/CONVERGENCE.md and its drawings: every table from a new run of the studies, the words around it. Takes some 30 s
 * on one core, so it is no part of the tests; step.test.ts holds the orders and a sample of the outcomes.
 *
 *   node tests/convergence/touchdown/writeConvergence.ts
 */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { DEFAULT_STEP } from '../../../engine/touchdown/index.ts';
import { arrivalStudy, dropStudy, REFERENCE, STEPS, type ArrivalRow } from './stepStudy.ts';
import { stepDrawing, tripDrawing } from './studyDrawings.ts';
import { tripStudy, type CaughtLimit } from './tripStudy.ts';

const FOLDER = path.join(import.meta.dirname, '../../../engine/touchdown');
const ARRIVALS = 200;
const LANDERS = [
  { id: 'trivet', name: 'Trivet' },
  { id: 'steeple', name: 'Steeple' },
  { id: 'bolster', name: 'Bolster' },
] as const;

const drop = dropStudy(STEPS.filter((step) => step <= DEFAULT_STEP));
const landers = LANDERS.map(({ id, name }) => ({ name, rows: distinct(arrivalStudy(id, ARRIVALS)) }));
const trip = tripStudy();

/** Of rows that use the same step after the bound, the one that asked for the shortest. */
function distinct(rows: readonly ArrivalRow[]): readonly ArrivalRow[] {
  return rows.filter((row, i) => rows[i + 1]?.used !== row.used);
}

/** A table whose columns line up. */
function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = head.map((text, i) => Math.max(text.length, ...rows.map((row) => row[i]!.length)));
  const line = (cells: readonly string[]): string => `| ${cells.map((c, i) => c.padEnd(widths[i]!)).join(' | ')} |`;
  const rule = widths.map((width) => '-'.repeat(width));
  return [line(head), line(rule), ...rows.map(line)].join('\n');
}

function share(value: number): string {
  return value.toExponential(1);
}

function inverse(step: number): string {
  return `1/${Math.round(1 / step)}`;
}

function dropTable(): string {
  const head = ['step [s]', 'undamped, from the ground', 'damped', 'undamped, within a step', 'damped'];
  return table(
    head,
    drop.map(({ step, values }) => [inverse(step), ...values.map(share)]),
  );
}

function arrivalTable(): string {
  const head = ['lander', 'step', 'used', 'other outcome', 'stroke', 'margin [m]'];
  const rows = landers.flatMap(({ name, rows: ofLander }) =>
    ofLander.map((row, i) => [
      i === 0 ? name : '',
      inverse(row.step),
      inverse(row.used),
      i === 0 ? `${row.otherOutcome} of ${ARRIVALS}` : `${row.otherOutcome}`,
      share(row.strokeError),
      share(row.marginError),
    ]),
  );
  return table(head, rows);
}

function tripTable(): string {
  const head = ['stiffness of a leg [N/m]', 'friction', 'damping', 'limit [m/s]', 'error'];
  const row = ({ stiffness, friction, damping, limit }: CaughtLimit): string[] => [
    stiffness.toExponential(0).replace('+', ''),
    `${friction}`,
    `${damping}`,
    limit === undefined ? 'none' : limit.toFixed(4),
    limit === undefined ? 'none' : percent(limit / trip.plastic - 1),
  ];
  // the first row over friction stands among those over stiffness
  const rows = [...trip.byStiffness, ...trip.lessDamped, ...trip.byFriction.slice(1)];
  return table(head, rows.map(row));
}

function percent(error: number): string {
  const text = (100 * error).toFixed(1);
  return `${error > 0 ? '+' : ''}${text} %`;
}

/** What the default step comes to, lander by lander. */
function choice(): string {
  const rows = landers.flatMap(({ rows: ofLander }) => ofLander.filter(({ step }) => step === DEFAULT_STEP));
  const other = rows.reduce((sum, { otherOutcome }) => sum + otherOutcome, 0);
  const stroke = Math.max(...rows.map(({ strokeError }) => strokeError));
  const margin = Math.max(...rows.map(({ marginError }) => marginError));
  return `**Choice.** DEFAULT_STEP = ${inverse(DEFAULT_STEP)} s: of ${rows.length * ARRIVALS} random touchdowns, ${other} end otherwise than at the finest step; strokes are right to
${(100 * stroke).toFixed(1)} % and margins to ${(1000 * margin).toFixed(1)} mm on average, lander by lander. That is far inside what is known of friction, soil and honeycomb.`;
}

function text(): string {
  return `# How large a step may be

Written by \`node tests/convergence/touchdown/writeConvergence.ts\`, tables and drawings; held by \`tests/convergence/touchdown/step.test.ts\`.
"Used" is the step after the bound on stiffness and damping (README, "Step").

![Errors over the step](stepStudy.svg)

## Order

Plain drop, 2000 kg on four upright legs of 20 kN and 2 MN/m, 3 m/s, Moon. Relative error of the stroke: undamped against the energy balance
n (F s + F^2 / 2k) = m v^2 / 2 + m g (s + F / k); damped (0.2 of critical) against a step of ${inverse(REFERENCE)} s. Once starting on the ground, once
5.17 cm above it, so that the pads meet the ground within a step.

${dropTable()}

Order 2. Measured before there was a correction of the impulse at the edges of a contact (README, "Onset and release"): the damped columns
1 to 2 % at 1/1024 s, of order 1, and 12 % of energy gained by an undamped lander that bounced for a minute; with it, 6e-5.

In whole touchdowns the order is 1: the dashpots take their rate over the last step, half a step late, and pads begin to crush, slide
and stick within steps.

## Whole touchdowns

${ARRIVALS} random arrivals each (speed to 3 m/s, descent 0.5 to 3 m/s, slope to 0.2 rad, friction 0.5 to 1, lean 5 deg, rates 3 deg/s), Moon, against
a step of ${inverse(REFERENCE)} s: runs that end otherwise, mean relative error of the largest stroke, mean error of the least margin.

${arrivalTable()}

${choice()}
MAX_PHASE_SQUARED = 1/2 shortens the step where legs are stiffer; it is what the first rows of Steeple and Bolster show.

Near a limit speed a run is a coin on its edge: there two steps may disagree although both are right to their order. Counted once, against
1/16384 s: one of 3600 more arrivals ended otherwise (seeds 5 and 11, Steeple), and of 1200 wild ones (three worlds, soils, rocks, lean to
0.2 rad each way, to 4 m/s, seed 77) 0 of Trivet, 6 of Steeple and 1 of Bolster; of Steeple at 1/1024 s, 2.

## Legs stiffen, friction grows: the plastic trip limit

Square body, half stance 1.5 m, center of mass 2 m up, I = 1.5 m^2 x mass, Moon, sliding flat along the ground, contact over-damped (2 x
critical) or critically damped. Limit speed by bisection to 5e-4, against the plastic limit ${trip.plastic.toFixed(4)} m/s (physics of a caught foot).

![Limit speed of a caught foot](tripStudy.svg)

${tripTable()}

Stiff, rough and over-damped it is the plastic limit. With less damping the caught foot rebounds a little and the limit falls, toward the
lossless bound. With less friction the pads slide before they hold, and below the critical friction b/h = 0.75 there is no limit up to 3 m/s.
`;
}

writeFileSync(path.join(FOLDER, 'CONVERGENCE.md'), text());
writeFileSync(path.join(FOLDER, 'stepStudy.svg'), stepDrawing(drop, landers));
writeFileSync(path.join(FOLDER, 'tripStudy.svg'), tripDrawing(trip));
