import {
  CAMPAIGN_INPUTS,
  campaignSimulator,
  createDrawer,
  deviationOf,
  INPUT_FACTS,
  touchdownOf,
  type Campaign,
  type CampaignInput,
} from '../dispersion/index.ts';
import { reshape, SHAPE_FACTS, SHAPE_FIELDS, shapeOf, type ShapeField } from './reshape.ts';
import type { StudyCase } from './studyCase.ts';
import { tradePoint } from './trade.ts';

/** Which input is changed: a dimension of the lander, or what a campaign draws. */
export type SensitivityName = Exclude<ShapeField, 'legCount'> | CampaignInput;

const DIMENSIONS = SHAPE_FIELDS.filter((field) => field !== 'legCount');

/** Drawn all round or not at all: a shift of them is another drawing of the same. */
const ROUND: readonly CampaignInput[] = ['yawDeg', 'travelAzimuthDeg'];

/** What a person may name. */
export const SENSITIVITY_NAMES: readonly SensitivityName[] = [
  ...DIMENSIONS,
  ...CAMPAIGN_INPUTS.filter((input) => !ROUND.includes(input)),
];

/** Fields of the arrival asked about that are inputs of a campaign too. */
const ARRIVAL = ['horizontalSpeed', 'descentRate', 'slopeDeg', 'friction'] as const;
type ArrivalField = (typeof ARRIVAL)[number];

/** Of what has no deviation of its own [-]. */
const SHARE = 0.1;

/** Arrivals drawn for each step: the first ones of the campaign, the same for all. */
const MOST_RUNS = 200;

/** How far one input is changed, less and more. */
export interface SensitivityInput {
  readonly name: SensitivityName;
  readonly words: string;
  readonly unit: string;
  /** Of the arrival or the lander asked about; undefined: it is drawn alone. */
  readonly present: number | undefined;
  readonly by: number;
  /** 'deviation': one standard deviation of the campaign; 'share': a tenth of what it is. */
  readonly rule: 'deviation' | 'share';
}

/** One input changed. */
export interface SensitivityStep {
  readonly name: SensitivityName;
  /** In the unit of the input. */
  readonly change: number;
}

export interface SensitivityPoint {
  /** Least simulated limit, tipping or a leg used up, less the speed of the arrival asked about [m/s]; undefined: there is none, or no such case. */
  readonly margin: number | undefined;
  /** How many of the arrivals drawn stay upright; undefined: no such case. */
  readonly upright: number | undefined;
}

export interface Sensitivities {
  /** As it is; undefined: not known yet. */
  readonly base: SensitivityPoint | undefined;
  /** Arrivals drawn for each. */
  readonly runs: number;
  /** undefined: not known yet. */
  readonly inputs: readonly (SensitivityInput & {
    readonly less: SensitivityPoint | undefined;
    readonly more: SensitivityPoint | undefined;
  })[];
}

/** Every input that can be changed, of those named. */
export function planSensitivities(
  asked: StudyCase,
  campaign: Campaign,
  names: readonly SensitivityName[] = SENSITIVITY_NAMES,
): Sensitivities {
  const shape = shapeOf(asked.lander);
  const dimensions = DIMENSIONS.map((name): SensitivityInput => {
    const { words, unit } = SHAPE_FACTS[name];
    return { name, words, unit, present: shape[name], by: SHARE * shape[name], rule: 'share' };
  });
  const drawn = CAMPAIGN_INPUTS.filter((input) => !ROUND.includes(input)).map((name): SensitivityInput => {
    const { words, unit } = INPUT_FACTS[name];
    const present = isArrival(name) ? asked[name] : undefined;
    const deviation = deviationOf(campaign, name);
    if (deviation !== undefined) return { name, words, unit, present, by: deviation, rule: 'deviation' };
    return { name, words, unit, present, by: SHARE * Math.abs(present ?? 0), rule: 'share' };
  });
  const inputs = [...dimensions, ...drawn].filter(({ name, by }) => by > 0 && names.includes(name));
  return {
    base: undefined,
    runs: Math.min(MOST_RUNS, campaign.runs),
    inputs: inputs.map((input) => ({ ...input, less: undefined, more: undefined })),
  };
}

function isArrival(name: SensitivityName): name is ArrivalField {
  return ARRIVAL.some((field) => field === name);
}

function isDimension(name: SensitivityName): name is Exclude<ShapeField, 'legCount'> {
  return DIMENSIONS.some((field) => field === name);
}

/** The case and the campaign with one input changed; without a step, as they are. */
export function sensitivityPoint(asked: StudyCase, campaign: Campaign, step?: SensitivityStep): SensitivityPoint {
  if (step !== undefined && isDimension(step.name)) {
    const shaped = reshape(asked.lander, { [step.name]: shapeOf(asked.lander)[step.name] + step.change });
    if (!shaped.ok) return { margin: undefined, upright: undefined };
    return sensitivityPoint({ ...asked, lander: shaped.value }, { ...campaign, lander: shaped.value });
  }
  return { margin: marginOf(asked, step), upright: uprightOf(campaign, step) };
}

function marginOf(asked: StudyCase, step: SensitivityStep | undefined): number | undefined {
  if (step === undefined) return tradePoint(asked, {}).margin;
  const { name, change } = step;
  if (!isArrival(name)) return undefined;
  const value = asked[name] + change;
  // a ground that rises, a lander that ascends: other questions than the one asked
  if (name !== 'horizontalSpeed' && value < 0) return undefined;
  return tradePoint({ ...asked, [name]: value }, {}).margin;
}

/** Of the first arrivals of the campaign, each with the input changed alike. */
function uprightOf(campaign: Campaign, step: SensitivityStep | undefined): number | undefined {
  const simulate = campaignSimulator(campaign.lander);
  if (!simulate.ok) return undefined;
  const draw = createDrawer(campaign);
  let upright = 0;
  for (let i = 0; i < Math.min(MOST_RUNS, campaign.runs); i++) {
    const drawn = draw(i);
    const values = step === undefined ? drawn.values : changed(campaign, drawn.values, step);
    if (values === undefined) return undefined;
    if (simulate.value(touchdownOf(campaign, { ...drawn, values })).outcome === 'upright') upright++;
  }
  return upright;
}

/** Undefined where an input would leave what it may be: nothing is pulled back inside. */
function changed(
  { inputs }: Campaign,
  values: ReturnType<ReturnType<typeof createDrawer>>['values'],
  { name, change }: SensitivityStep,
): typeof values | undefined {
  if (isDimension(name)) return values;
  const { low, high, fallback } = INPUT_FACTS[name];
  const value = (values[name] ?? fallback ?? 0) + change;
  // the length of a vector has no sign
  const least = inputs[name]?.kind === 'rayleigh' ? Math.max(0, low) : low;
  return value < least || value > high ? undefined : { ...values, [name]: value };
}

/** Each step with its place, the case as it is first. */
export function sensitivitySteps({ inputs }: Sensitivities): readonly SensitivityPlace[] {
  return [
    { side: 'base' },
    ...inputs.flatMap(({ name, by }, place) => [
      { side: 'less' as const, place, step: { name, change: -by } },
      { side: 'more' as const, place, step: { name, change: by } },
    ]),
  ];
}

type SensitivityPlace =
  | { readonly side: 'base'; readonly step?: undefined }
  | { readonly side: 'less' | 'more'; readonly place: number; readonly step: SensitivityStep };

export function enterSensitivity(known: Sensitivities, at: SensitivityPlace, point: SensitivityPoint): Sensitivities {
  if (at.side === 'base') return { ...known, base: point };
  return { ...known, inputs: known.inputs.with(at.place, { ...known.inputs[at.place]!, [at.side]: point }) };
}

/** One step at a time. */
export function* sensitivitiesOf(asked: StudyCase, campaign: Campaign): Generator<Sensitivities> {
  let known = planSensitivities(asked, campaign);
  for (const at of sensitivitySteps(known)) {
    known = enterSensitivity(known, at, sensitivityPoint(asked, campaign, at.step));
    yield known;
  }
}
