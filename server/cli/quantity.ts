import { InvalidArgumentError } from 'commander';
import { CONDITION_FIELDS } from '../../engine/condition/index.ts';

/** What an option with a number accepts. Limits keep typing slips (a comma, a unit factor of 1000) out of results. */
export interface Quantity {
  /** As a person writes it: 'm', 'm/s', 'deg'; '' for a ratio. */
  readonly unit: string;
  /** Smallest and largest accepted value, in that unit. */
  readonly least: number;
  readonly most: number;
  /** Only whole numbers. */
  readonly whole?: boolean;
}

export const LENGTH: Quantity = { unit: 'm', least: 0.001, most: 1000 };
/** About the center of mass; 0 is a point mass. */
export const INERTIA: Quantity = { unit: 'kg m^2', least: 0, most: 1e12 };
/** A slope without a direction. */
export const STEEPNESS: Quantity = { unit: 'deg', least: 0, most: 80 };
export const AZIMUTH_STEP: Quantity = { unit: 'deg', least: 1, most: 90 };
/** How many, at equal steps all round. */
export const YAWS: Quantity = { unit: 'yaws', least: 1, most: 360, whole: true };
/** Of a generator. */
export const SEED: Quantity = { unit: '', least: 0, most: Number.MAX_SAFE_INTEGER, whole: true };
export const SPEED: Quantity = { unit: 'm/s', least: 0.001, most: 100 };

const DECIMAL = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** A parser for one option: a decimal number inside the limits of the quantity, given once. */
export function quantityParser(quantity: Quantity): (text: string, earlier: number | undefined) => number {
  return (text, earlier) => {
    refuseSecond(earlier);
    const value = DECIMAL.test(text.trim()) ? Number(text) : Number.NaN;
    const isSound = quantity.whole !== true || Number.isInteger(value);
    if (isSound && value >= quantity.least && value <= quantity.most) return value;
    const unit = quantity.unit === '' ? '' : ` ${quantity.unit}`;
    const kind = quantity.whole === true ? 'a whole number' : 'a number';
    throw new InvalidArgumentError(`Expected ${kind} from ${quantity.least} to ${quantity.most}${unit}.`);
  };
}

/** A parser for an option that takes words: any text, given once. */
export function textParser(text: string, earlier: string | undefined): string {
  refuseSecond(earlier);
  if (text.trim() === '') throw new InvalidArgumentError('Expected some text.');
  return text.trim();
}

/** A parser for an option with a few legal words. */
export function choiceParser<Choice extends string>(
  choices: readonly Choice[],
): (text: string, earlier: Choice | undefined) => Choice {
  return (text, earlier) => {
    refuseSecond(earlier);
    const choice = choices.find((legal) => legal === text.trim().toLowerCase());
    if (choice === undefined) throw new InvalidArgumentError(`Expected one of ${choices.join(', ')}.`);
    return choice;
  };
}

/** A number of yaws, or 'all': every yaw at which the lander travels square to an edge or along a foot. */
export function yawsParser(text: string, earlier: number | 'all' | undefined): number | 'all' {
  if (text.trim().toLowerCase() !== 'all') {
    refuseSecond(earlier);
    return quantityParser(YAWS)(text, undefined);
  }
  refuseSecond(earlier);
  return 'all';
}

/** Whole numbers above 0, separated by commas, each named once. */
export function legNumbersParser(text: string, earlier: readonly number[] | undefined): readonly number[] {
  refuseSecond(earlier);
  const numbers = text.split(',').map((word) => (/^\s*\d{1,3}\s*$/.test(word) ? Number(word) : Number.NaN));
  const sound = numbers.every((number) => number >= 1) && new Set(numbers).size === numbers.length;
  if (!sound) throw new InvalidArgumentError('Expected leg numbers such as 2 or 1,3, each once, counted from 1.');
  return numbers;
}

/** Several numbers inside the limits of the quantity, separated by commas, each once. */
export function numbersParser(
  quantity: Quantity,
): (text: string, earlier: readonly number[] | undefined) => readonly number[] {
  const parse = quantityParser(quantity);
  return (text, earlier) => {
    refuseSecond(earlier);
    const numbers = text.split(',').map((word) => parse(word, undefined));
    if (new Set(numbers).size < numbers.length) throw new InvalidArgumentError('Expected each number once.');
    return numbers;
  };
}

/** How much higher the ground is under the footpad of one leg, counted from 1 [m]. */
export interface PadHeight {
  readonly leg: number;
  readonly height: number;
}

/** Farthest that a rock or a hole may raise or lower the ground [m]. */
const MOST_PAD_HEIGHT = CONDITION_FIELDS.padHeight.most;

/** Legs and heights such as 2:0.3 or 1:0.3,4:-0.1, each leg once. */
export function padHeightsParser(text: string, earlier: readonly PadHeight[] | undefined): readonly PadHeight[] {
  refuseSecond(earlier);
  const spots = text.split(',').map((word) => {
    const [leg = '', height = '', ...rest] = word.split(':').map((part) => part.trim());
    const isSound = rest.length === 0 && /^\d{1,3}$/.test(leg) && DECIMAL.test(height);
    return isSound ? { leg: Number(leg), height: Number(height) } : undefined;
  });
  const sound = spots.filter(
    (spot): spot is PadHeight => spot !== undefined && spot.leg >= 1 && Math.abs(spot.height) <= MOST_PAD_HEIGHT,
  );
  if (sound.length < spots.length || new Set(sound.map(({ leg }) => leg)).size < sound.length)
    throw new InvalidArgumentError(
      `Expected legs and heights from -${MOST_PAD_HEIGHT} to ${MOST_PAD_HEIGHT} m such as 2:0.3 or 1:0.3,4:-0.1, each leg once, counted from 1.`,
    );
  return sound;
}

function refuseSecond(earlier: unknown): void {
  if (earlier !== undefined) throw new InvalidArgumentError('Given more than once.');
}
