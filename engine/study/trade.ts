import type { CsvTable } from '../csv.ts';
import { massProperties } from '../lander/index.ts';
import { formatProblem } from '../result.ts';
import { leastLimit } from './limitsRound.ts';
import { reshape, SHAPE_FACTS, shapeOf, type Reshaping, type ShapeField } from './reshape.ts';
import type { StudyCase } from './studyCase.ts';

/** One lander of a trade. */
export interface TradePoint {
  readonly shape: Reshaping;
  /** With propellant [kg]; undefined where there is no such lander. */
  readonly mass: number | undefined;
  /** Least simulated tip limit, horizontal [m/s]; undefined: no such lander, or it tips at no speed looked at. */
  readonly tip: number | undefined;
  /** Least speed at which a leg is used up, up to the tip limit [m/s]; undefined: none. */
  readonly gear: number | undefined;
  /** The lesser of the two: what the arrival has to stay below [m/s]. */
  readonly limit: number | undefined;
  /** That less the speed of the arrival [m/s]. */
  readonly margin: number | undefined;
  /** Why there is no number, or what the number is not. */
  readonly note: string | undefined;
}

/** The case with its lander so shaped. */
export function tradePoint(asked: StudyCase, shape: Reshaping): TradePoint {
  const none = { shape, mass: undefined, tip: undefined, gear: undefined, limit: undefined, margin: undefined };
  const shaped = reshape(asked.lander, shape);
  if (!shaped.ok) return { ...none, note: formatProblem(shaped.error[0]!) };
  // a leg that is missing cannot be missing from a lander with fewer
  const missing = asked.missing.filter((leg) => leg < shaped.value.legs.length);
  const { mass } = massProperties(shaped.value);
  const least = leastLimit({ ...asked, lander: shaped.value, missing });
  if (typeof least === 'string') return { ...none, mass, note: least };
  const [tip, gear] = [least.tip ?? undefined, least.gear ?? undefined];
  const note = tip === undefined ? `tips at no speed up to ${least.tipUpTo.toFixed(2)} m/s` : undefined;
  if (tip === undefined && gear === undefined) return { ...none, mass, note };
  const limit = Math.min(tip ?? Infinity, gear ?? Infinity);
  return { shape, mass, tip, gear, limit, margin: limit - Math.abs(asked.horizontalSpeed), note };
}

/** Shares of its present value at which a field is tried [-]; legs one by one instead. */
const SHARES = [0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.3] as const;

/** One lander of a trade that is still to be looked at. */
interface TradeStep {
  readonly value: number;
  /** Nothing at the present value: the lander as it is. */
  readonly shape: Reshaping;
}

/** What to try of a field, by rising value: the values given and the present one, or else values worth trying. */
export function tradeSteps(
  asked: StudyCase,
  field: ShapeField,
  values: readonly number[] = tradeValues(asked, field),
): readonly TradeStep[] {
  const present = shapeOf(asked.lander)[field];
  const tried = [...new Set([...values, present])].toSorted((a, b) => a - b);
  return tried.map((value) => ({ value, shape: value === present ? {} : { [field]: value } }));
}

/** Values of a field worth trying, within the bounds of the field. */
function tradeValues({ lander }: StudyCase, field: ShapeField): readonly number[] {
  const present = shapeOf(lander)[field];
  const { least, most } = SHAPE_FACTS[field];
  const values =
    field === 'legCount'
      ? [-2, -1, 0, 1, 2].map((more) => present + more)
      : present === 0
        ? [0]
        : SHARES.map((share) => (share === 1 ? present : Number((present * share).toPrecision(4))));
  return values.filter((value) => value >= least && value <= most);
}

export interface Trade {
  readonly field: ShapeField;
  readonly present: number;
  /** By rising value. */
  readonly points: readonly (TradePoint & { readonly value: number })[];
}

/** One field alone: a point a step. */
export function* tradeOf(asked: StudyCase, field: ShapeField): Generator<Trade> {
  const present = shapeOf(asked.lander)[field];
  const points: Trade['points'][number][] = [];
  for (const { value, shape } of tradeSteps(asked, field)) {
    points.push({ value, ...tradePoint(asked, shape) });
    yield { field, present, points: [...points] };
  }
}

/** What one lander has over another: the margin grows as the limit does, since the arrival is the same. */
export interface TradeGain {
  /** [m/s] */
  readonly gain: number;
  /** Change of mass [kg]. */
  readonly added: number;
  /** [m/s per kg]; undefined where no mass is added: by less than a rounding. */
  readonly perKilogram: number | undefined;
}

/** A change of mass below this is none [kg]. */
const NO_MASS = 1e-6;

/** Undefined where either has no limit. */
export function gainOver(now: TradePoint, then: TradePoint): TradeGain | undefined {
  if (now.limit === undefined || now.mass === undefined || then.limit === undefined || then.mass === undefined)
    return undefined;
  const [gain, added] = [then.limit - now.limit, then.mass - now.mass];
  return { gain, added, perKilogram: added > NO_MASS ? gain / added : undefined };
}

/** Every point of trades, a row each. */
export function tradeTable(trades: readonly Trade[]): CsvTable {
  const gains = ['gain', 'addedMass', 'gainPerKilogram'];
  return {
    names: ['field', 'unit', 'value', 'isPresent', 'mass', 'tip', 'gear', 'limit', 'margin', ...gains, 'note'],
    rows: trades.flatMap(({ field, present, points }) => {
      const now = points.find(({ value }) => value === present);
      return points.map((point) => {
        const { value, mass, tip, gear, limit, margin, note } = point;
        const gained = now && gainOver(now, point);
        return [
          field,
          SHAPE_FACTS[field].unit,
          value,
          value === present,
          mass,
          tip,
          gear,
          limit,
          margin,
          gained?.gain,
          gained?.added,
          gained?.perKilogram,
          note,
        ];
      });
    }),
  };
}

export interface Bought extends TradeGain {
  readonly field: ShapeField;
  /** The value tried, and what it gains over the present lander. */
  readonly value: number;
}

/** What the best step of each trade adds to the limit, most first; a dimension that adds nothing is left out. */
export function whatBuysMost(trades: readonly Trade[]): readonly Bought[] {
  return trades
    .flatMap(({ field, present, points }) => {
      const now = points.find(({ value }) => value === present);
      if (now === undefined) return [];
      const gains = points.flatMap((point) => {
        const gained = gainOver(now, point);
        return gained === undefined || gained.gain <= 0 ? [] : [{ field, value: point.value, ...gained }];
      });
      const best = gains.toSorted((a, b) => b.gain - a.gain)[0];
      return best === undefined ? [] : [best];
    })
    .toSorted((a, b) => b.gain - a.gain);
}

/** The step of all trades that gains most for each kilogram it adds. */
export function whatBuysCheapest(bought: readonly Bought[]): Bought | undefined {
  const priced = bought.filter(({ perKilogram }) => perKilogram !== undefined);
  return priced.toSorted((a, b) => b.perKilogram! - a.perKilogram!)[0];
}
