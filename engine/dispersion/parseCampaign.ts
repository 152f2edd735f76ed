/**
 * Reads a campaign document: JSON of format CAMPAIGN_FORMAT, SI, with degrees only where a name ends in Deg. Strict: unknown
 * fields are refused, nothing is clamped, every problem is listed. What may be left out has one stated meaning.
 */
import type { DocumentBudget } from '../documentText.ts';
import {
  createProblemList,
  describe,
  fieldPath,
  readChoice,
  readFields,
  readList,
  readNumber,
  readText,
  report,
  type Fields,
  type ProblemList,
} from '../fieldReader.ts';
import type { Lander } from '../lander/lander.ts';
import { LANDER_BUDGET } from '../lander/landerRanges.ts';
import { SOBOL_DIMENSIONS } from '../math/sobol.ts';
import { accept, refuse, type FieldProblem, type Result } from '../result.ts';
import { TOUCHDOWN_OUTCOMES } from '../touchdown/touchdownCase.ts';
import { findWorld, WORLDS } from '../worlds.ts';
import { campaignAxes, type Campaign, type CampaignRequirement } from './campaign.ts';
import {
  CAMPAIGN_INPUTS,
  INPUT_FACTS,
  type CampaignInput,
  type InputDistributions,
  type PairedInputs,
} from './campaignInputs.ts';
import type { Distribution } from './distribution.ts';
import { SAMPLING_METHODS } from './pointSet.ts';
import { readDistribution } from './readDistribution.ts';
import { readGear } from './readGear.ts';
import { readPairs } from './readPairs.ts';
import { readSoil } from '../ground/readSoil.ts';

export const CAMPAIGN_FORMAT = 'kilter-campaign/1';

/** A whole lander may stand inside, one level down. */
export const CAMPAIGN_BUDGET: DocumentBudget = {
  mostBytes: 2 * LANDER_BUDGET.mostBytes,
  deepest: 1 + LANDER_BUDGET.deepest,
};

const REQUIRED = ['format', 'title', 'lander', 'method', 'runs', 'seed', 'inputs'] as const;
const OPTIONAL = ['world', 'gravity', 'soil', 'pairs', 'gear', 'padLeg', 'requirement'] as const;
type CampaignFields = Fields<(typeof REQUIRED)[number] | (typeof OPTIONAL)[number]>;

const LINE = { least: 1, most: 120, pattern: /^[^\p{C}\p{Zl}\p{Zp}]+$/u, words: 'one line, no control characters' };
export const CAMPAIGN_RANGES = {
  runs: { least: 1, most: 2_000_000, unit: '-', whole: true },
  seed: { least: 0, most: Number.MAX_SAFE_INTEGER, unit: '-', whole: true },
  gravity: { least: 0.01, most: 30, unit: 'm/s²' },
  share: { least: 1e-6, most: 1 - 1e-9, unit: '-' },
} as const;

/** How a campaign document's `lander` is turned into one: a name, or a whole lander document. */
export type ReadLander = (value: unknown) => Result<Lander, readonly FieldProblem[]>;

/** The campaign that a parsed JSON document describes, or everything that is wrong with the document. */
export function parseCampaign(json: unknown, readLander: ReadLander): Result<Campaign, readonly FieldProblem[]> {
  const list = createProblemList('campaign');
  const fields = readFields(list, json, '', REQUIRED, OPTIONAL);
  const campaign = fields === undefined ? undefined : readCampaign(list, fields, readLander);
  if (campaign !== undefined && list.problems.length === 0) checkTogether(list, campaign);
  return campaign === undefined || list.problems.length > 0 ? refuse(list.problems) : accept(campaign);
}

function readCampaign(list: ProblemList, fields: CampaignFields, readLander: ReadLander): Campaign | undefined {
  if (fields.format !== undefined && fields.format !== CAMPAIGN_FORMAT)
    report(list, 'unknown-format', {
      path: 'format',
      expected: JSON.stringify(CAMPAIGN_FORMAT),
      came: describe(fields.format),
    });
  const title = readText(list, fields.title, 'title', LINE);
  const method = readChoice(list, fields.method, 'method', SAMPLING_METHODS);
  const runs = readNumber(list, fields.runs, 'runs', CAMPAIGN_RANGES.runs);
  const seed = readNumber(list, fields.seed, 'seed', CAMPAIGN_RANGES.seed);
  const gravity = readGravity(list, fields);
  const lander = readLanderField(list, fields.lander, readLander);
  const inputs = readInputs(list, fields.inputs);
  const pairs = fields.pairs === undefined ? [] : readPairs(list, fields.pairs, 'pairs');
  const soil = readSoil(list, fields.soil, 'soil');
  const requirement = readRequirement(list, fields.requirement);
  if (title === undefined || method === undefined || runs === undefined || seed === undefined) return undefined;
  if (gravity === undefined || lander === undefined || inputs === undefined || pairs === undefined) return undefined;
  // people count legs from 1, the engine from 0
  const legs = { least: 1, most: lander.legs.length, unit: '-', whole: true };
  const gear = readGear(list, fields.gear, 'gear', legs);
  const padLeg = readNumber(list, fields.padLeg, 'padLeg', legs);
  const optional = {
    ...(soil && { soil }),
    ...(gear && { gear }),
    ...(padLeg !== undefined && { padLeg: padLeg - 1 }),
    ...(requirement && { requirement }),
  };
  return { title, lander, gravity, method, runs, seed, inputs, pairs, ...optional };
}

function readLanderField(list: ProblemList, value: unknown, readLander: ReadLander): Lander | undefined {
  if (value === undefined) return undefined;
  const read = readLander(value);
  if (read.ok) return read.value;
  for (const { code, path, expected, came } of read.error) {
    const place = path === '' ? 'lander' : `lander.${path}`;
    report(list, code.replace('/', '-'), { path: place, expected, came });
  }
  return undefined;
}

function readGravity(list: ProblemList, { world, gravity }: CampaignFields): number | undefined {
  if ((world === undefined) === (gravity === undefined)) {
    const came = world === undefined ? 'neither' : 'both';
    return report(list, 'one-gravity', { path: 'world', expected: 'either world or gravity', came });
  }
  if (gravity !== undefined) return readNumber(list, gravity, 'gravity', CAMPAIGN_RANGES.gravity);
  const id = readChoice(
    list,
    world,
    'world',
    WORLDS.map((known) => known.id),
  );
  return id === undefined ? undefined : findWorld(id)?.gravity;
}

function readInputs(list: ProblemList, value: unknown): InputDistributions | undefined {
  if (value === undefined) return undefined;
  const fields = readFields<never, CampaignInput>(list, value, 'inputs', [], CAMPAIGN_INPUTS);
  if (fields === undefined) return undefined;
  const inputs: { [Input in CampaignInput]?: Distribution } = {};
  for (const input of CAMPAIGN_INPUTS) {
    if (fields[input] === undefined) continue;
    const distribution = readDistribution(list, fields[input], fieldPath('inputs', input), input);
    if (distribution !== undefined) inputs[input] = distribution;
  }
  return inputs;
}

function readRequirement(list: ProblemList, value: unknown): CampaignRequirement | undefined {
  if (value === undefined) return undefined;
  const fields = readFields(list, value, 'requirement', ['fraction', 'confidence'], ['outcomes']);
  if (fields === undefined) return undefined;
  const fraction = readNumber(list, fields.fraction, 'requirement.fraction', CAMPAIGN_RANGES.share);
  const confidence = readNumber(list, fields.confidence, 'requirement.confidence', CAMPAIGN_RANGES.share);
  const rule = { least: 1, most: TOUCHDOWN_OUTCOMES.length, of: 'outcomes' };
  const outcomes =
    fields.outcomes === undefined
      ? (['upright'] as const)
      : readList(list, fields.outcomes, 'requirement.outcomes', rule, (item, path) =>
          readChoice(list, item, path, TOUCHDOWN_OUTCOMES),
        );
  if (fraction === undefined || confidence === undefined || outcomes === undefined) return undefined;
  return { fraction, confidence, outcomes };
}

/** What single fields cannot show. */
function checkTogether(list: ProblemList, campaign: Campaign): void {
  const { inputs, pairs, soil, method } = campaign;
  const given = [...CAMPAIGN_INPUTS.filter((input) => inputs[input] !== undefined), ...pairedInputs(pairs)];
  for (const input of CAMPAIGN_INPUTS) {
    const times = given.filter((name) => name === input).length;
    const path = fieldPath('inputs', input);
    if (times > 1) report(list, 'given-twice', { path, expected: 'one distribution', came: `${times}` });
    const isNeeded = INPUT_FACTS[input].fallback === undefined && input !== 'bearingStrength';
    if (times === 0 && isNeeded) report(list, 'input-needed', { path, expected: 'a distribution', came: 'nothing' });
  }
  const polar = given.filter((input) => input === 'horizontalSpeed' || input === 'travelAzimuthDeg');
  const components = given.filter((input) => input === 'downhillSpeed' || input === 'crossSpeed');
  if (polar.length > 0 && components.length > 0)
    report(list, 'two-speeds', {
      path: 'inputs',
      expected: 'horizontalSpeed with travelAzimuthDeg, or downhillSpeed with crossSpeed',
      came: [...polar, ...components].join(', '),
    });
  if (given.includes('bearingStrength') && soil?.kind !== 'bearing')
    report(list, 'soil-needed', {
      path: 'soil',
      expected: 'a soil of kind bearing, since its strength is dispersed',
      came: soil?.kind ?? 'nothing',
    });
  const dimensions = campaignAxes(campaign).length;
  if (method === 'sobol' && dimensions > SOBOL_DIMENSIONS)
    report(list, 'too-many-inputs', {
      path: 'inputs',
      expected: `at most ${SOBOL_DIMENSIONS} dispersed with sobol`,
      came: `${dimensions}`,
    });
}

function pairedInputs(pairs: readonly PairedInputs[]): readonly CampaignInput[] {
  return pairs.flatMap((pair) => pair.inputs);
}
