/** The models whose inputs have a checked range. Statics is exact geometry and needs none. */
export const RANGED_MODELS = ['trip limit', 'touchdown simulation'] as const;
export type RangedModel = (typeof RANGED_MODELS)[number];

/** Between which values of one input a model has been compared with something outside it. */
export interface CheckedRange {
  /** As the field is called in results, with its unit in the name where it is not SI. */
  readonly quantity: string;
  readonly words: string;
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  /** What was compared there. */
  readonly why: string;
}

/** Read off the outside checks and the validation tests; wider only when a check at the new end has been added. */
export const CHECKED_RANGES: Readonly<Record<RangedModel, readonly CheckedRange[]>> = {
  'trip limit': [
    range('gravity', 'gravity', 'm/s^2', [1.62, 9.81], 'published and derived limits on Moon, Mars and Earth'),
    range(
      'slopeDeg',
      'slope',
      'deg',
      [-12, 12],
      'derived limits at 5, 8 and 12 deg; uphill by symmetry of the same formula',
    ),
    range('descentRate', 'descent rate', 'm/s', [0, 3], 'worked cases of the section, none published'),
    range('rateDegPerSecond', 'body rate', 'deg/s', [-25, 25], 'worked cases of the section, none published'),
  ],
  'touchdown simulation': [
    range('gravity', 'gravity', 'm/s^2', [1.62, 9.81], 'drops, slopes and rocking on the Moon and on Earth'),
    range('slopeDeg', 'slope', 'deg', [-20, 20], 'sticking, sliding and the trend of descent rate on 20 deg'),
    range('descentRate', 'descent rate', 'm/s', [0, 3.05], 'stroke by energy at 3 m/s; design corner at 3.05 m/s'),
    range('horizontalSpeed', 'horizontal speed', 'm/s', [-4, 4], 'trip limits and friction trend'),
    range('friction', 'friction', '-', [0, 1], 'trend from 0.4 to 1.0; frictionless drops'),
  ],
};

/** What lies outside the range in which a model was checked, one line each; none for a quantity without a range. */
export function outsideCheckedRange(model: RangedModel, inputs: Readonly<Record<string, unknown>>): readonly string[] {
  return CHECKED_RANGES[model].flatMap(({ quantity, words, unit, least, most }) => {
    const beyond = valuesIn(inputs[quantity]).find((value) => value < least || value > most);
    return beyond === undefined ? [] : [`${words} ${beyond} ${unit}, checked from ${least} to ${most}`];
  });
}

/**
 * A number; both ends of a stretch of numbers; or, of a distribution, the ends it is cut at or else three deviations to
 * each side (Rayleigh: three scales), which few draws leave.
 */
function valuesIn(input: unknown): readonly number[] {
  if (typeof input === 'number') return [input];
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
): CheckedRange {
  return { quantity, words, unit, least, most, why };
}
