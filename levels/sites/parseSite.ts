import {
  createProblemList,
  describe,
  readFields,
  readList,
  readNumber,
  readText,
  report,
  type ProblemList,
} from '../../engine/fieldReader.ts';
import { readSoil } from '../../engine/ground/index.ts';
import { accept, refuse, type FieldProblem, type Result } from '../../engine/result.ts';
import type { BaseSlope, CraterField, GroundShape, Site, StepField, Undulation } from './site.ts';
import { MOST_SLOPES, RANGES, SITE_FORMAT, TEXTS } from './siteRanges.ts';

/** The site that a parsed JSON document describes, or everything that is wrong with it. Degrees become radians here. */
export function parseSite(json: unknown): Result<Site, readonly FieldProblem[]> {
  const list = createProblemList('site');
  const site = readSite(list, json);
  return site === undefined || list.problems.length > 0 ? refuse(list.problems) : accept(site);
}

function readSite(list: ProblemList, json: unknown): Site | undefined {
  const fields = readFields(list, json, '', ['format', 'id', 'name', 'summary', 'ground'], ['startX']);
  if (fields === undefined) return undefined;
  if (fields.format !== SITE_FORMAT && fields.format !== undefined) {
    const expected = JSON.stringify(SITE_FORMAT);
    return report(list, 'unknown-format', { path: 'format', expected, came: describe(fields.format) });
  }
  const id = readText(list, fields.id, 'id', TEXTS.id);
  const name = readText(list, fields.name, 'name', TEXTS.name);
  const summary = readText(list, fields.summary, 'summary', TEXTS.summary);
  const startX = fields.startX === undefined ? 0 : readNumber(list, fields.startX, 'startX', RANGES.startX);
  const ground = fields.ground === undefined ? undefined : readGround(list, fields.ground, 'ground');
  if (id === undefined || name === undefined || summary === undefined || ground === undefined) return undefined;
  if (startX === undefined) return undefined;
  checkStart(list, startX, ground);
  return { id, name, summary, startX, ground };
}

const GROUND = ['width', 'spacing', 'friction', 'slopes', 'undulation', 'craters', 'steps'] as const;

function readGround(list: ProblemList, value: unknown, path: string): GroundShape | undefined {
  const fields = readFields(list, value, path, GROUND, ['soil']);
  const width = readNumber(list, fields?.width, `${path}.width`, RANGES.width);
  const spacing = readNumber(list, fields?.spacing, `${path}.spacing`, RANGES.spacing);
  const friction = readNumber(list, fields?.friction, `${path}.friction`, RANGES.friction);
  const soil = readSoil(list, fields?.soil, `${path}.soil`);
  const slopes = readList(
    list,
    fields?.slopes,
    `${path}.slopes`,
    { least: 1, most: MOST_SLOPES, of: 'slopes' },
    (item, itemPath) => readSlope(list, item, itemPath),
  );
  const undulation = readUndulation(list, fields?.undulation, `${path}.undulation`);
  const craters = readCraters(list, fields?.craters, `${path}.craters`);
  const steps = readSteps(list, fields?.steps, `${path}.steps`);
  if (width === undefined || spacing === undefined || friction === undefined || slopes === undefined) return undefined;
  if (undulation === undefined || craters === undefined || steps === undefined) return undefined;
  if (soil === undefined && fields?.soil !== undefined) return undefined;
  const ground = { width, spacing, friction, ...(soil && { soil }), slopes, undulation, craters, steps };
  checkGround(list, ground, path);
  return ground;
}

function readSlope(list: ProblemList, value: unknown, path: string): BaseSlope | undefined {
  const fields = readFields(list, value, path, ['untilX', 'slopeDeg']);
  const untilX = readNumber(list, fields?.untilX, `${path}.untilX`, RANGES.untilX);
  const slopeDeg = readNumber(list, fields?.slopeDeg, `${path}.slopeDeg`, RANGES.slopeDeg);
  return untilX === undefined || slopeDeg === undefined ? undefined : { untilX, slope: (slopeDeg * Math.PI) / 180 };
}

function readUndulation(list: ProblemList, value: unknown, path: string): Undulation | undefined {
  if (value === undefined) return undefined;
  const fields = readFields(list, value, path, ['rmsHeight', 'shortest', 'longest', 'hurst']);
  const rmsHeight = readNumber(list, fields?.rmsHeight, `${path}.rmsHeight`, RANGES.rmsHeight);
  const shortest = readNumber(list, fields?.shortest, `${path}.shortest`, RANGES.wavelength);
  const longest = readNumber(list, fields?.longest, `${path}.longest`, RANGES.wavelength);
  const hurst = readNumber(list, fields?.hurst, `${path}.hurst`, RANGES.hurst);
  if (rmsHeight === undefined || shortest === undefined || longest === undefined || hurst === undefined)
    return undefined;
  return { rmsHeight, shortest, longest, hurst };
}

function readCraters(list: ProblemList, value: unknown, path: string): CraterField | undefined {
  if (value === undefined) return undefined;
  const fields = readFields(list, value, path, ['count', 'leastDiameter', 'mostDiameter', 'depthRatio']);
  const count = readNumber(list, fields?.count, `${path}.count`, RANGES.count);
  const leastDiameter = readNumber(list, fields?.leastDiameter, `${path}.leastDiameter`, RANGES.diameter);
  const mostDiameter = readNumber(list, fields?.mostDiameter, `${path}.mostDiameter`, RANGES.diameter);
  const depthRatio = readNumber(list, fields?.depthRatio, `${path}.depthRatio`, RANGES.depthRatio);
  if (count === undefined || leastDiameter === undefined || mostDiameter === undefined || depthRatio === undefined)
    return undefined;
  return { count, leastDiameter, mostDiameter, depthRatio };
}

function readSteps(list: ProblemList, value: unknown, path: string): StepField | undefined {
  if (value === undefined) return undefined;
  const fields = readFields(list, value, path, ['count', 'mostHeight', 'width']);
  const count = readNumber(list, fields?.count, `${path}.count`, RANGES.count);
  const mostHeight = readNumber(list, fields?.mostHeight, `${path}.mostHeight`, RANGES.stepHeight);
  const width = readNumber(list, fields?.width, `${path}.width`, RANGES.stepWidth);
  return count === undefined || mostHeight === undefined || width === undefined
    ? undefined
    : { count, mostHeight, width };
}

/** Descents begin well inside the ground. */
function checkStart(list: ProblemList, startX: number, { width }: GroundShape): void {
  const most = 0.4 * width;
  if (Math.abs(startX) <= most) return;
  report(list, 'start-off-site', {
    path: 'startX',
    expected: `a place from ${-most} to ${most} m`,
    came: String(startX),
  });
}

/** What the fields must be to each other. */
function checkGround(list: ProblemList, ground: GroundShape, path: string): void {
  const { slopes, undulation, craters, width } = ground;
  slopes.forEach(({ untilX }, i) => {
    const before = slopes[i - 1]?.untilX ?? -width / 2;
    const isLast = i === slopes.length - 1;
    const expected = isLast ? `the right end of the ground, ${width / 2} m` : `beyond ${before} m`;
    if (isLast ? untilX !== width / 2 : untilX <= before)
      report(list, 'slope-out-of-order', { path: `${path}.slopes[${i}].untilX`, expected, came: String(untilX) });
  });
  if (undulation.shortest > undulation.longest)
    report(list, 'wavelengths-crossed', {
      path: `${path}.undulation.shortest`,
      expected: `at most the longest, ${undulation.longest} m`,
      came: String(undulation.shortest),
    });
  if (craters.leastDiameter > craters.mostDiameter)
    report(list, 'diameters-crossed', {
      path: `${path}.craters.leastDiameter`,
      expected: `at most the most, ${craters.mostDiameter} m`,
      came: String(craters.leastDiameter),
    });
}
