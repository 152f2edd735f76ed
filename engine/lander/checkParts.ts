/** Parts and tanks: distinct names, plausible densities, inside the lander. */
import { report, type ProblemList } from '../fieldReader.ts';
import { subtract3 } from '../math/index.ts';
import { checkBound, round } from './checkBound.ts';
import type { BodyPoint, Lander, Part, Tank } from './lander.ts';
import { OUTSIDE_SHARE } from './landerRanges.ts';

export interface Box {
  readonly low: BodyPoint;
  readonly high: BodyPoint;
  readonly sides: BodyPoint;
  readonly longest: number;
}

/** Smallest box with sides along x, y and z around the hull points and the hips. */
export function boxAround(lander: Lander): Box {
  const points = [...lander.hull, ...lander.legs.map((leg) => leg.hip)];
  const along = (axis: 0 | 1 | 2) => points.map((point) => point[axis]);
  const low: BodyPoint = [Math.min(...along(0)), Math.min(...along(1)), Math.min(...along(2))];
  const high: BodyPoint = [Math.max(...along(0)), Math.max(...along(1)), Math.max(...along(2))];
  const sides = subtract3(high, low);
  return { low, high, sides, longest: Math.max(...sides) };
}

export function checkParts(list: ProblemList, lander: Lander, box: Box): void {
  checkNames(list, lander.parts, 'parts');
  checkNames(list, lander.tanks, 'tanks');
  lander.parts.forEach((part, index) => checkPart(list, part, `parts[${index}]`, box));
  lander.tanks.forEach((tank, index) => checkTank(list, tank, `tanks[${index}]`, box));
}

function checkNames(list: ProblemList, items: readonly { readonly name: string }[], path: string): void {
  const first = new Map<string, number>();
  for (const [index, { name }] of items.entries()) {
    const earlier = first.get(name);
    if (earlier === undefined) first.set(name, index);
    else
      report(list, 'duplicate-name', {
        path: `${path}[${index}].name`,
        expected: `a name other than that of ${path}[${earlier}]`,
        came: `text ${JSON.stringify(name)}`,
      });
  }
}

function checkPart(list: ProblemList, part: Part, path: string, box: Box): void {
  checkInside(list, part.center, `${path}.center`, box);
  const { shape, mass } = part;
  const where = { path, what: 'mass over volume' };
  if (shape.kind === 'box') {
    checkBound(list, mass / (shape.size[0] * shape.size[1] * shape.size[2]), 'partDensity', where);
    checkReach(list, Math.max(...shape.size), `${path}.shape`, box);
  }
  if (shape.kind === 'cylinder')
    checkBound(list, mass / (Math.PI * shape.radius * shape.radius * shape.length), 'partDensity', where);
  if (shape.kind === 'tube')
    checkBound(list, mass / (2 * Math.PI * shape.radius * shape.length), 'shellDensity', {
      path,
      what: 'mass over surface',
    });
  if (shape.kind === 'cylinder' || shape.kind === 'tube')
    checkReach(list, Math.max(2 * shape.radius, shape.length), `${path}.shape`, box);
  if (shape.kind === 'inertia') checkMoments(list, part, shape.moments, `${path}.shape.moments`, box);
}

/** Each is at most the sum of the other two, for any body; and each fits the size of the lander. */
function checkMoments(list: ProblemList, part: Part, moments: BodyPoint, path: string, box: Box): void {
  const [a, b, c] = moments;
  if (a > b + c || b > a + c || c > a + b) {
    const expected = 'three moments of which none exceeds the sum of the other two';
    report(list, 'impossible-moments', { path, expected, came: moments.join(', ') });
  }
  moments.forEach((moment, index) => {
    const gyration = Math.sqrt(moment / part.mass) / box.longest;
    checkBound(list, gyration, 'gyration', {
      path: `${path}[${index}]`,
      what: 'radius of gyration over longest side of the hull',
    });
  });
}

function checkTank(list: ProblemList, tank: Tank, path: string, box: Box): void {
  const height = tank.orientation === 'upright' ? tank.length : 2 * tank.radius;
  checkInside(list, [tank.offset[0], tank.offset[1], tank.bottomHeight + height / 2], path, box);
  checkReach(list, Math.max(2 * tank.radius, tank.length), path, box);
}

function checkInside(list: ProblemList, center: BodyPoint, path: string, box: Box): void {
  const slack = OUTSIDE_SHARE * box.longest;
  const inside = ([0, 1, 2] as const).every(
    (axis) => center[axis] >= box.low[axis] - slack && center[axis] <= box.high[axis] + slack,
  );
  if (inside) return;
  const expected = `a center within ${round(slack)} m of the box around hull and hips`;
  report(list, 'outside-hull', { path, expected, came: `a center at ${center.map(round).join(', ')}` });
}

function checkReach(list: ProblemList, size: number, path: string, box: Box): void {
  if (size <= (1 + OUTSIDE_SHARE) * box.longest) return;
  const expected = `at most ${round((1 + OUTSIDE_SHARE) * box.longest)} m across`;
  report(list, 'outside-hull', { path, expected, came: `${round(size)} m` });
}
