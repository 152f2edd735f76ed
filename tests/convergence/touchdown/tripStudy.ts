/**
 * How the simulated limit of a caught foot becomes the plastic trip limit. `node tests/convergence/touchdown/tripStudy.ts [file.svg]` prints the
 * table of engine/touchdown/CONVERGENCE.md and, given a file, draws it.
 */
import { writeFileSync } from 'node:fs';
import { tripLimit } from '../../../engine/pivot/index.ts';
import { CAUGHT, caughtLimit } from '../../support/caughtFoot.ts';
import { MOON } from '../../support/touchDown.ts';

const STIFFNESSES = [1e4, 3e4, 1e5, 3e5, 1e6, 3e6, 1e7];
/** Frictions whose tick labels would overlap. */
const CROWDED = new Set([0.78, 0.85, 0.9, 1.25]);
const FRICTIONS = [0.78, 0.8, 0.85, 0.9, 1, 1.25, 1.5, 2, 3, 10];

const closed = tripLimit(CAUGHT, { gravity: MOON, slope: 0 });
const plastic = closed.kind === 'limit' ? closed.plastic.alongGround : Number.NaN;

type Point = readonly [x: number, limit: number];
const byStiffness = STIFFNESSES.map((stiffness): Point => [stiffness, caughtLimit({ stiffness, friction: 10 })]);
const damped1 = STIFFNESSES.map((stiffness): Point => [
  stiffness,
  caughtLimit({ stiffness, friction: 10, damping: 1 }),
]);
const byFriction = FRICTIONS.map((friction): Point => [friction, caughtLimit({ stiffness: 1e6, friction })]);

function table(title: string, points: readonly Point[]): void {
  process.stdout.write(`${title}\n`);
  for (const [x, limit] of points) {
    process.stdout.write(`${x} | ${limit.toFixed(4)} | ${(100 * (limit / plastic - 1)).toFixed(2)} %\n`);
  }
}

process.stdout.write(
  `plastic limit ${plastic.toFixed(4)} m/s, critical friction ${CAUGHT.halfStance / CAUGHT.centerHeight}\n`,
);
table('stiffness, friction 10, damping 2', byStiffness);
table('stiffness, friction 10, damping 1', damped1);
table('friction, stiffness 1e6, damping 2', byFriction);

const file = process.argv[2];
if (file !== undefined) writeFileSync(file, drawing());

/** Height on the drawing of a limit speed. */
function y(limit: number): number {
  return 270 - (limit - 1.6) * 185;
}

/** Two panels: limit over stiffness and over friction, with the plastic limit as a line. */
function drawing(): string {
  const panel = (
    left: number,
    title: string,
    lines: readonly (readonly Point[])[],
    x: (value: number) => number,
  ): string => {
    const paths = lines.map((points, i) => {
      const path = points.map(([value, limit]) => `${(left + x(value)).toFixed(1)},${y(limit).toFixed(1)}`).join(' ');
      const dots = path
        .split(' ')
        .map(
          (at) =>
            `<circle cx="${at.split(',')[0]}" cy="${at.split(',')[1]}" r="3" fill="${i === 0 ? '#222' : '#fff'}" stroke="#222"/>`,
        );
      return `<polyline points="${path}" fill="none" stroke="#222"/>${dots.join('')}`;
    });
    const line = `<line x1="${left}" x2="${left + 300}" y1="${y(plastic)}" y2="${y(plastic)}" stroke="#222" stroke-dasharray="6 4"/>`;
    const ticks = [1.6, 1.8, 2, 2.2, 2.4, 2.6, 2.8].map(
      (limit) => `<text x="${left - 6}" y="${y(limit) + 4}" text-anchor="end">${limit.toFixed(1)}</text>`,
    );
    const marks = lines[0]!
      .filter(([value]) => !CROWDED.has(value))
      .map(
        ([value]) =>
          `<text x="${left + x(value)}" y="290" text-anchor="middle">${value >= 1000 ? value.toExponential(0).replace('e+', 'e') : value}</text>`,
      );
    return `<g><rect x="${left}" y="20" width="300" height="250" fill="none" stroke="#888"/>${line}${paths.join('')}${ticks.join('')}${marks.join('')}<text x="${left + 150}" y="312" text-anchor="middle">${title}</text></g>`;
  };
  const stiffness = panel(
    60,
    'leg stiffness [N/m]: damping 2 (filled), 1 (hollow)',
    [byStiffness, damped1],
    (k) => 10 + 93 * (Math.log10(k) - 4),
  );
  const friction = panel(
    430,
    'friction, log scale; none below 0.75',
    [byFriction],
    (mu) => 10 + 250 * Math.log10(mu / 0.75),
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" width="760" height="330" font-family="sans-serif" font-size="11"><rect width="760" height="330" fill="#fff"/><text x="60" y="14">Limit speed [m/s] of a caught foot; dashed: plastic trip limit ${plastic.toFixed(4)} m/s</text>${stiffness}${friction}</svg>`;
}
