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
  /** As the field is called in results, with its unit in the name where it is not SI. */
  readonly quantity: string;
  /** Other fields that are the same input. */
  readonly alsoCalled: readonly string[];
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
    range(
      'stanceOverHeight',
      'half stance over height',
      '-',
      [0.25, 1.108],
      'polygons at 0.25; a road vehicle at 1.1071',
    ),
    range('legs', 'legs', '-', [3, 6], 'regular polygons'),
  ],
  'trip limit': [
    range('gravity', 'gravity', 'm/s^2', [1.62, 9.81], 'derived limits on Moon, Mars and Earth'),
    range(
      'slopeDeg',
      'slope',
      'deg',
      [-12, 12],
      'derived limits to 12 deg downhill; uphill the same formula, its sign turned',
    ),
    range(
      'descentRate',
      'descent rate',
      'm/s',
      [0, 3],
      'the impact worked out apart from the formula; nothing measured',
    ),
    range(
      'rateDegPerSecond',
      'body rate',
      'deg/s',
      [-22, 17],
      'the impact worked out apart from the formula; nothing measured',
    ),
    range(
      'stanceOverHeight',
      'half stance over height',
      '-',
      [0.05, 1.4],
      'point masses from 0.05; blocks in three other engines to 1.4',
    ),
    range('inertiaShare', 'inertia over m L^2', '-', [0, 0.36], 'point masses; blocks at 1/3; a road vehicle at 0.357'),
  ],
  rocking: [
    range('stanceOverHeight', 'half stance over height', '-', [0.2, 0.5], 'blocks of the named form'),
    range('inertiaShare', 'inertia over m L^2', '-', [1 / 3, 1], 'rectangles at 1/3; the slender example at 1'),
    range('startShare', 'start over balance tilt', '-', [0.5, 0.8], 'quarter period from 0.5, decay from 0.8'),
  ],
  slosh: [range('depthOverRadius', 'depth over radius', '-', [0.5, 2], 'the named form at 0.5, 1 and 2')],
  'touchdown simulation': [
    range('gravity', 'gravity', 'm/s^2', [1.62, 9.81], 'drops, slopes and rocking on the Moon and on Earth'),
    range(
      'slopeDeg',
      'slope',
      'deg',
      [-15, 15],
      'trip limits and trends to 12 deg, all-worst corner at 15 deg; sticking and sliding alone at 25 deg',
    ),
    range('descentRate', 'descent rate', 'm/s', [0, 3.05], 'stroke by energy at 3 m/s; design corner at 3.05 m/s'),
    range(
      'horizontalSpeed',
      'horizontal speed',
      'm/s',
      [-4, 4],
      'trip limits; friction trend, which tips below 4 m/s',
      ['downhillSpeed', 'crossSpeed'],
    ),
    range('friction', 'friction', '-', [0, 1], 'frictionless drops; trend from 0.4 to 1.0'),
    range('leanDeg', 'lean', 'deg', [-6, 6], 'design corners', ['pitchDeg', 'rollDeg']),
    range('rateDegPerSecond', 'body rate', 'deg/s', [-19, 19], 'toppling rates of blocks in another engine', [
      'pitchRateDegPerS',
      'rollRateDegPerS',
    ]),
    range('stanceOverHeight', 'half stance over height', '-', [0.2, 1], 'rocking at 0.2; five-legged trend at 1.0'),
  ],
  dispersion: [range('runs', 'runs', '-', [50, 2218], 'interval of 7 in 50; runs without failure to 2218')],
  structure: [
    range('supports', 'stations that carry the beam', '-', [2, 4], 'beam tables'),
    range(
      'lyingDepthOverRadius',
      'depth over radius of a lying tank',
      '-',
      [0.001, 1.8],
      'nearly empty; a printed table to 1.8',
    ),
  ],
};

/** Something that a model can do and that nothing outside it has been compared with. */
interface UncheckedFeature {
  /** As the field is called in results; a number other than 0, a word or a list that is not empty asks for it. */
  readonly asked: string;
  readonly words: string;
}

export const UNCHECKED_FEATURES: { readonly [Model in RangedModel]?: readonly UncheckedFeature[] } = {
  'touchdown simulation': [
    { asked: 'missing', words: 'missing legs' },
    { asked: 'soft', words: 'soft legs' },
    { asked: 'unlatched', words: 'legs that are not latched' },
    { asked: 'gear', words: 'legs that may be missing, soft or not latched' },
    { asked: 'underPad', words: 'a rock or a hole under a footpad' },
    { asked: 'padHeight', words: 'a rock or a hole under a footpad' },
    { asked: 'site', words: 'uneven ground' },
    { asked: 'soilStrength', words: 'soil of even bearing strength' },
    { asked: 'bearingStrength', words: 'soil of even bearing strength' },
    { asked: 'thrust', words: 'thrust after contact' },
    { asked: 'hold', words: 'thrusters that hold after contact' },
    { asked: 'yawRateDegPerSecond', words: 'turning about the vertical' },
    { asked: 'yawRateDegPerS', words: 'turning about the vertical' },
  ],
};

/**
 * What lies outside the range in which a model was checked, one line each; none for a quantity without a range. Then what it
 * does here that was not checked at all.
 */
export function outsideCheckedRange(model: RangedModel, inputs: Readonly<Record<string, unknown>>): readonly string[] {
  const features = (UNCHECKED_FEATURES[model] ?? []).filter(({ asked }) => isAsked(inputs[asked]));
  return [...beyondRanges(model, inputs), ...features.map(({ words }) => `${words}, not checked from outside`)];
}

function isAsked(input: unknown): boolean {
  if (typeof input === 'string') return true;
  if (Array.isArray(input) && input.every((item) => typeof item !== 'number')) return input.length > 0;
  return valuesIn(input).some((value) => value !== 0);
}

function beyondRanges(model: RangedModel, inputs: Readonly<Record<string, unknown>>): readonly string[] {
  return CHECKED_RANGES[model].flatMap(({ quantity, alsoCalled, words, unit, least, most }) => {
    const values = [quantity, ...alsoCalled].flatMap((name) => valuesIn(inputs[name]));
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
 * A number; each of a list; both ends of a stretch of numbers; or, of a distribution, the ends it is cut at or else three deviations to
 * each side (Rayleigh: three scales), which few draws leave.
 */
function valuesIn(input: unknown): readonly number[] {
  if (typeof input === 'number') return [input];
  if (Array.isArray(input)) return input.flatMap(valuesIn);
  if (typeof input !== 'object' || input === null) return [];
  const { from, to, low, high, value, mean, deviation, scale }: Partial<Record<string, unknown>> = { ...input };
  const ends = [from, to, low, high, value].filter((end) => typeof end === 'number');
  if (typeof mean === 'number' && typeof deviation === 'number') {
    if (low === undefined) ends.push(mean - 3 * deviation);
    if (high === undefined) ends.push(mean + 3 * deviation);
  }
  if (typeof scale === 'number' && high === undefined) ends.push(3 * scale);
  return ends;
}

function range(
  quantity: string,
  words: string,
  unit: string,
  [least, most]: readonly [number, number],
  why: string,
  alsoCalled: readonly string[] = [],
): CheckedRange {
  return { quantity, alsoCalled, words, unit, least, most, why };
}
