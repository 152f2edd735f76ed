/**
 * Legs of a lander file, all of one kind, placed in one of two ways:
 *
 * - round: `count` footpads at equal angles on a circle, the first at `firstAzimuthDeg`, each hip straight above its spoke;
 * - listed: `footpads` as x, y and `hips` as x, y, z, so that rows of side legs can be described.
 */
import {
  describe,
  isPlainObject,
  readFields,
  readList,
  readNumber,
  report,
  type Fields,
  type ProblemList,
} from '../fieldReader.ts';
import { cos, sin } from '../math/index.ts';
import type { CrushStage, Leg } from './lander.ts';
import { COUNTS, RANGES } from './landerRanges.ts';
import { readBodyPoint, readPlanePoint } from './readPoint.ts';

const ROUND = ['count', 'radius', 'firstAzimuthDeg', 'hipRadius', 'hipHeight'] as const;
const LISTED = ['footpads', 'hips'] as const;
const BUILD = ['footpadDiameter', 'stiffness', 'stages', 'bottomedStiffness'] as const;

type Placed = Pick<Leg, 'footpad' | 'hip'>;
type Build = Omit<Leg, 'footpad' | 'hip'>;

export function readLegs(list: ProblemList, value: unknown, path: string): readonly Leg[] | undefined {
  if (value === undefined) return undefined;
  if (!isPlainObject(value)) return report(list, 'wrong-type', { path, expected: 'an object', came: describe(value) });
  const listed = LISTED.some((name) => Object.hasOwn(value, name));
  if (listed && ROUND.some((name) => Object.hasOwn(value, name))) {
    const expected = `either ${ROUND.join(', ')} or ${LISTED.join(', ')}`;
    return report(list, 'mixed-legs', { path, expected, came: 'fields of both' });
  }
  const fields = readFields<string, 'secondary'>(
    list,
    value,
    path,
    [...(listed ? LISTED : ROUND), ...BUILD],
    ['secondary'],
  );
  if (fields === undefined) return undefined;
  const placed = listed ? readListed(list, fields, path) : readRound(list, fields, path);
  const build = readBuild(list, fields, path);
  if (placed === undefined || build === undefined) return undefined;
  return placed.map((place) => ({ ...place, ...build }));
}

function readRound(list: ProblemList, fields: Fields<string>, path: string): readonly Placed[] | undefined {
  const count = readNumber(list, fields['count'], `${path}.count`, RANGES.legCount);
  const radius = readNumber(list, fields['radius'], `${path}.radius`, RANGES.legRadius);
  const first = readNumber(list, fields['firstAzimuthDeg'], `${path}.firstAzimuthDeg`, RANGES.azimuthDeg);
  const hipRadius = readNumber(list, fields['hipRadius'], `${path}.hipRadius`, RANGES.hipRadius);
  const hipHeight = readNumber(list, fields['hipHeight'], `${path}.hipHeight`, RANGES.hipHeight);
  if (count === undefined || radius === undefined || first === undefined) return undefined;
  if (hipRadius === undefined || hipHeight === undefined) return undefined;
  return Array.from({ length: count }, (_, index): Placed => {
    const [x, y] = directionDeg(first + (360 * index) / count);
    return { footpad: [radius * x, radius * y, 0], hip: [hipRadius * x, hipRadius * y, hipHeight] };
  });
}

/**
 * Cosine and sine of an azimuth in degrees, from the angle's part below 45 degrees, so that legs that mirror each other in
 * the file do so to the last bit.
 */
function directionDeg(azimuthDeg: number): readonly [number, number] {
  const turn = azimuthDeg - 360 * Math.floor(azimuthDeg / 360);
  const quarter = Math.floor(turn / 90);
  const rest = turn - 90 * quarter;
  const below = ((rest > 45 ? 90 - rest : rest) * Math.PI) / 180;
  const near = rest === 45 ? Math.sqrt(0.5) : cos(below);
  const far = rest === 45 ? Math.sqrt(0.5) : sin(below);
  const [x, y] = rest > 45 ? [far, near] : [near, far];
  const turned: readonly (readonly [number, number])[] = [
    [x, y],
    [0 - y, x],
    [0 - x, 0 - y],
    [y, 0 - x],
  ];
  return turned[quarter % 4] ?? [x, y];
}

function readListed(list: ProblemList, fields: Fields<string>, path: string): readonly Placed[] | undefined {
  const footpads = readList(
    list,
    fields['footpads'],
    `${path}.footpads`,
    { ...COUNTS.legs, of: 'footpads' },
    (item, at) => readPlanePoint(list, item, at),
  );
  const hips = readList(list, fields['hips'], `${path}.hips`, { ...COUNTS.legs, of: 'hips' }, (item, at) =>
    readBodyPoint(list, item, at, RANGES.hipHeight),
  );
  if (footpads === undefined || hips === undefined) return undefined;
  if (footpads.length !== hips.length) {
    const expected = `as many hips as footpads, ${footpads.length}`;
    return report(list, 'wrong-count', { path: `${path}.hips`, expected, came: `a list of ${hips.length}` });
  }
  return hips.map((hip, index): Placed => {
    const [x, y] = footpads[index] ?? hip;
    return { footpad: [x, y, 0], hip };
  });
}

function readBuild(list: ProblemList, fields: Fields<string>, path: string): Build | undefined {
  const footpadDiameter = readNumber(
    list,
    fields['footpadDiameter'],
    `${path}.footpadDiameter`,
    RANGES.footpadDiameter,
  );
  const stiffness = readNumber(list, fields['stiffness'], `${path}.stiffness`, RANGES.stiffness);
  const stages = readList(list, fields['stages'], `${path}.stages`, COUNTS.stages, (item, at) =>
    readStage(list, item, at),
  );
  const bottomedStiffness = readNumber(
    list,
    fields['bottomedStiffness'],
    `${path}.bottomedStiffness`,
    RANGES.stiffness,
  );
  const secondary = readSecondary(list, fields['secondary'], `${path}.secondary`);
  if (footpadDiameter === undefined || stiffness === undefined) return undefined;
  if (stages === undefined || bottomedStiffness === undefined) return undefined;
  const build = { footpadDiameter, stiffness, stages, bottomedStiffness };
  return secondary === undefined ? build : { ...build, secondary };
}

function readStage(list: ProblemList, value: unknown, path: string): CrushStage | undefined {
  const fields = readFields(list, value, path, ['force', 'stroke']);
  if (fields === undefined) return undefined;
  const force = readNumber(list, fields.force, `${path}.force`, RANGES.force);
  const stroke = readNumber(list, fields.stroke, `${path}.stroke`, RANGES.stroke);
  return force === undefined || stroke === undefined ? undefined : { force, stroke };
}

function readSecondary(list: ProblemList, value: unknown, path: string): Leg['secondary'] {
  if (value === undefined) return undefined;
  const fields = readFields(list, value, path, ['force', 'stroke', 'stiffness']);
  if (fields === undefined) return undefined;
  const force = readNumber(list, fields.force, `${path}.force`, RANGES.force);
  const stroke = readNumber(list, fields.stroke, `${path}.stroke`, RANGES.stroke);
  const stiffness = readNumber(list, fields.stiffness, `${path}.stiffness`, RANGES.stiffness);
  if (force === undefined || stroke === undefined || stiffness === undefined) return undefined;
  return { force, stroke, stiffness };
}
