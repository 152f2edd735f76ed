import { fieldNamed, namesOf, rangedField, type FieldName, type RangedField } from '../condition/index.ts';

/** The models whose inputs have a checked range. */
export const RANGED_MODELS = [
  'statics',
  'trip limit',
  'rocking',
  'slosh',
  'touchdown simulation',
  'dispersion',
  'structure',
] as const;
export type RangedModel = (typeof RANGED_MODELS)[number];

/** Between which values of one input a model has been compared with something outside it. */
interface CheckedRange {
  /** Its field, and others that are the same input. */
  readonly fields: readonly RangedField[];
  /** Of the first. */
  readonly words: string;
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  /** What was compared there. */
  readonly why: string;
}

/** Read off the outside checks and the validation tests; wider only when a check at the new end has been added. */
export const CHECKED_RANGES: Readonly<Record<RangedModel, readonly CheckedRange[]>> = {
  statics: [
    range('stanceOverHeight', [0.25, 1.108], 'polygons at 0.25; a road vehicle at 1.1071'),
    range('legs', [3, 6], 'regular polygons'),
  ],
  'trip limit': [
    range('gravity', [1.62, 9.81], 'derived limits on Moon, Mars and Earth'),
    range('slopeDeg', [-12, 12], 'derived limits to 12 deg downhill; uphill the same formula, its sign turned'),
    range('descentRate', [0, 3], 'the impact worked out apart from the formula; nothing measured'),
    range('rateDegPerSecond', [-22, 17], 'the impact worked out apart from the formula; nothing measured'),
    range('stanceOverHeight', [0.05, 1.4], 'point masses from 0.05; blocks in three other engines to 1.4'),
    range('inertiaShare', [0, 0.36], 'point masses; blocks at 1/3; a road vehicle at 0.357'),
  ],
  rocking: [
    range('stanceOverHeight', [0.2, 0.5], 'blocks of the named form'),
    range('inertiaShare', [1 / 3, 1], 'rectangles at 1/3; the slender example at 1'),
    range('startShare', [0.5, 0.8], 'quarter period from 0.5, decay from 0.8'),
  ],
  slosh: [range('depthOverRadius', [0.5, 2], 'the named form at 0.5, 1 and 2')],
  'touchdown simulation': [
    range('gravity', [1.62, 9.81], 'drops, slopes and rocking on the Moon and on Earth'),
    range(
      'slopeDeg',
      [-15, 15],
      'trip limits and trends to 12 deg, all-worst corner at 15 deg; sticking and sliding alone at 25 deg',
    ),
    range('descentRate', [0, 3.05], 'stroke by energy at 3 m/s; design corner at 3.05 m/s'),
    range('horizontalSpeed', [-4, 4], 'trip limits; friction trend, which tips below 4 m/s', [
      'downhillSpeed',
      'crossSpeed',
    ]),
    range('friction', [0, 1], 'frictionless drops; trend from 0.4 to 1.0'),
    range('leanDeg', [-6, 6], 'design corners', ['pitchDeg', 'rollDeg']),
    range('rateDegPerSecond', [-19, 19], 'toppling rates of blocks in another engine', [
      'pitchRateDegPerSecond',
      'rollRateDegPerSecond',
    ]),
    range('stanceOverHeight', [0.2, 1], 'rocking at 0.2; five-legged trend at 1.0'),
  ],
  dispersion: [range('runs', [50, 2218], 'interval of 7 in 50; runs without failure to 2218')],
  structure: [
    range('supports', [2, 4], 'beam tables'),
    range('lyingDepthOverRadius', [0.001, 1.8], 'nearly empty; a printed table to 1.8'),
  ],
};

/** Something that a model can do and that nothing outside it has been compared with. */
interface UncheckedFeature {
  /** Its field; a number other than 0, a word or a list that is not empty asks for it. */
  readonly field: FieldName;
  readonly words: string;
}

export const UNCHECKED_FEATURES: { readonly [Model in RangedModel]?: readonly UncheckedFeature[] } = {
  'touchdown simulation': [
    unchecked('missing'),
    unchecked('soft'),
    unchecked('unlatched'),
    unchecked('gear'),
    unchecked('underPad'),
    unchecked('padHeight', fieldNamed('underPad').words),
    unchecked('site'),
    unchecked('soilStrength', 'soil of even bearing strength'),
    unchecked('thrust', 'thrust after contact'),
    unchecked('hold', 'thrusters that hold after contact'),
    unchecked('yawRateDegPerSecond', 'turning about the vertical'),
  ],
};

/** What was asked, by the names of fields, those of a campaign among them. Other names are passed over. */
type Asked = Readonly<Record<string, unknown>>;

/**
 * What lies outside the range in which a model was checked, one line each; none for a quantity without a range. Then what it
 * does here that was not checked at all.
 */
export function outsideCheckedRange(model: RangedModel, inputs: Asked): readonly string[] {
  const features = (UNCHECKED_FEATURES[model] ?? []).filter(({ field }) =>
    namesOf(field).some((name) => isAsked(inputs[name])),
  );
  return [...beyondRanges(model, inputs), ...features.map(({ words }) => `${words}, not checked from outside`)];
}

function isAsked(input: unknown): boolean {
  if (typeof input === 'string') return true;
  if (Array.isArray(input) && input.every((item) => typeof item !== 'number')) return input.length > 0;
  return valuesIn(input).some((value) => value !== 0);
}

function beyondRanges(model: RangedModel, inputs: Asked): readonly string[] {
  return CHECKED_RANGES[model].flatMap(({ fields, words, unit, least, most }) => {
    const values = fields.flatMap(namesOf).flatMap((name) => valuesIn(inputs[name]));
    const beyond = values.find((value) => value < least || value > most);
    if (beyond === undefined) return [];
    const named = unit === '-' ? shortened(beyond) : `${shortened(beyond)} ${unit}`;
    return [`${words} ${named}, checked from ${shortened(least)} to ${shortened(most)}`];
  });
}

/** Four significant figures, without trailing zeros. */
export function shortened(value: number): string {
  return String(Number(value.toPrecision(4)));
}

/**
 * A number; each of a list or of the choices of a draw; both ends of a stretch of numbers; or, of a distribution, the ends it is cut
 * at or else three deviations to each side (Rayleigh: three scales), which few draws leave.
 */
function valuesIn(input: unknown): readonly number[] {
  if (typeof input === 'number') return [input];
  if (Array.isArray(input)) return input.flatMap(valuesIn);
  if (typeof input !== 'object' || input === null) return [];
  const { from, to, low, high, value, choices, mean, deviation, scale }: Partial<Record<string, unknown>> = {
    ...input,
  };
  const ends = [from, to, low, high, value].filter((end) => typeof end === 'number');
  if (Array.isArray(choices)) ends.push(...choices.flatMap(valuesIn));
  if (typeof mean === 'number' && typeof deviation === 'number') {
    if (low === undefined) ends.push(mean - 3 * deviation);
    if (high === undefined) ends.push(mean + 3 * deviation);
  }
  if (typeof scale === 'number' && high === undefined) ends.push(3 * scale);
  return ends;
}

function range(
  field: RangedField,
  [least, most]: readonly [number, number],
  why: string,
  others: readonly RangedField[] = [],
): CheckedRange {
  const { words, unit } = rangedField(field);
  return { fields: [field, ...others], words, unit, least, most, why };
}

function unchecked(field: FieldName, words: string = fieldNamed(field).words): UncheckedFeature {
  return { field, words };
}
