import { figure } from '../figures.ts';
import { SHAPE_FACTS, type ShapeField } from './reshape.ts';
import { whatBuysCheapest, whatBuysMost, type Bought, type Trade, type TradeGain } from './trade.ts';
import { bestOfGrid, type TradeGrid } from './tradeGrid.ts';

/** What the masses of a trade are: said wherever they stand. */
export const MASS_RULE =
  'Masses of legs: the heavier of a law of strength and one of buckling, both through the mass of the legs as they are; ' +
  'common practice, no source.';

/** What is traded. */
export const LIMIT_RULE =
  'The limit: the least speed at which it tips or a leg is used up, whichever comes first; simulated, least of all directions.';

/** Which dimension buys most, which most for its mass, in a sentence each. */
export function whatBuysLines(trades: readonly Trade[]): readonly string[] {
  const bought = whatBuysMost(trades);
  const [most] = bought;
  if (most === undefined) return ['No change tried raises the limit.'];
  const cheapest = whatBuysCheapest(bought);
  return [
    `Most: ${boughtWords(most, trades)}.`,
    ...(cheapest === undefined || cheapest === most
      ? []
      : [`Most for each kilogram: ${boughtWords(cheapest, trades)}.`]),
  ];
}

function boughtWords({ field, value, ...gained }: Bought, trades: readonly Trade[]): string {
  const present = trades.find((trade) => trade.field === field)?.present ?? value;
  return `${SHAPE_FACTS[field].words} from ${valueWords(field, present)} to ${valueWords(field, value)} raises the limit by ${gainWords(gained)}`;
}

/** '0.21 m/s for 12 kg, 17.50 mm/s for each kilogram'. */
function gainWords({ gain, added, perKilogram }: TradeGain): string {
  if (perKilogram === undefined)
    return `${figure(gain, 2)} m/s, ${added < -0.5 ? `${figure(-added, 0)} kg lighter` : 'with no mass in this model'}`;
  return `${figure(gain, 2)} m/s for ${figure(added, 0)} kg, ${figure(1000 * perKilogram, 2)} mm/s for each kilogram`;
}

/** The highest limit of a grid, and the pair that gains most for its mass, in a sentence each. */
export function gridLines(grid: TradeGrid): readonly string[] {
  const { most, cheapest } = bestOfGrid(grid);
  if (most === undefined) return ['No lander tried has a limit.'];
  const pair = ({ value, second }: { readonly value: number; readonly second: number }): string =>
    `${SHAPE_FACTS[grid.vary].words} ${valueWords(grid.vary, value)} and ${SHAPE_FACTS[grid.against].words} ${valueWords(grid.against, second)}`;
  return [
    `Highest: ${figure(most.point.limit, 3)} m/s with ${pair(most)}, ${figure(most.point.mass, 0)} kg.`,
    ...(cheapest?.gain === undefined
      ? []
      : [`Most for each kilogram: ${pair(cheapest)} gains ${gainWords(cheapest.gain)}.`]),
  ];
}

export function valueWords(field: ShapeField, value: number): string {
  const { unit } = SHAPE_FACTS[field];
  return `${Number(value.toPrecision(4))}${unit === '-' ? '' : ` ${unit}`}`;
}

/** A dimension with its unit, as an axis names it. */
export function axisOf(field: ShapeField): string {
  const { words, unit } = SHAPE_FACTS[field];
  return unit === '-' ? words : `${words} [${unit}]`;
}
