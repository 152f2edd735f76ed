import type { Source } from '../sensors/index.ts';
import { GROUND_NOTES } from '../table/siteNotes.ts';
import type { Seat } from '../table/tableTypes.ts';
import type { TableView } from '../table/viewTypes.ts';
import { isSilent } from './lostSource.ts';

/**
 * What each seat can call out with one press, at most nine, in the order of the keys 1 to 9. The words are the client's; here stand the ids, and which
 * numbers of the seat's display go along.
 */
export const SENTENCES_OF = {
  lead: [
    'goForLanding',
    'prepareToAbort',
    'comeDownSlower',
    'takeDriftOut',
    'askHeightAge',
    'askUsable',
    'askLimit',
    'askMotion',
  ],
  flying: ['motion', 'driftNulled', 'leaning', 'makingForSpot', 'cannotHold'],
  sensors: ['noData', 'frozen', 'differs', 'underCheck', 'rejected', 'restored', 'heightAge'],
  propellant: [
    'usable',
    'leaking',
    'gaugeAgrees',
    'ceiling',
    'engineStillOn',
    'engineOut',
    'contactLight',
    'liquidSwings',
  ],
  site: ['limit', 'slope', 'spot', 'ground', 'legs', 'rimAhead'],
} as const satisfies Readonly<Record<Seat, readonly string[]>>;

export type Sentence = (typeof SENTENCES_OF)[Seat][number];

export const SENTENCES: readonly Sentence[] = Object.values(SENTENCES_OF).flat();

/** Those that name a source. */
const OF_A_SOURCE: readonly Sentence[] = ['noData', 'frozen', 'differs', 'underCheck', 'rejected', 'restored'];

export function namesSource(sentence: Sentence): boolean {
  return OF_A_SOURCE.includes(sentence);
}

export function isSentenceOf(seat: Seat, sentence: Sentence): boolean {
  const own: readonly Sentence[] = SENTENCES_OF[seat];
  return own.includes(sentence);
}

/** What a sentence may take its numbers from: what a seat is shown. */
export type SeatDisplay = Pick<
  TableView,
  'flight' | 'spread' | 'sources' | 'propellantReadings' | 'siteReadings' | 'site' | 'engine'
>;

/** The numbers that go along with a sentence, as the display has them (SI); undefined where it has none to give. */
export function fillSentence(
  sentence: Sentence,
  source: Source | undefined,
  display: SeatDisplay,
): readonly number[] | undefined {
  const { flight, propellantReadings, site, engine } = display;
  const reading = display.sources?.find((one) => one.source === source);
  switch (sentence) {
    // age of the last sample [s]
    case 'noData':
      return isSilent(reading?.age) ? all(reading?.age) : undefined;
    // in standard deviations of what the estimate expected [-]
    case 'differs':
      return all(reading?.disagreement);
    // age of the last sample of the altimeter that the height rests on [s], how far the height may be off [m]
    case 'heightAge':
      return all(display.sources?.find((one) => one.source === 'altimeter')?.usedAge, twice(display.spread?.height));
    // height [m], descent rate and drift [m/s]
    case 'motion':
      return [flight.height, -flight.vy, flight.vx];
    case 'driftNulled':
      return [flight.vx];
    case 'leaning':
      return [flight.angle];
    // how far the spot is to the right [m]
    case 'makingForSpot':
    case 'spot':
      return site.spot === undefined ? undefined : [site.spot.meters - flight.x];
    // [s of hover]
    case 'usable':
      return all(propellantReadings?.seconds);
    // by how much the gauge has less than was reckoned [kg]; where it has more nothing can have leaked
    case 'leaking': {
      const gone = difference(propellantReadings?.reckoned, propellantReadings?.gauge);
      return gone !== undefined && gone > 0 ? [gone] : undefined;
    }
    case 'gaugeAgrees':
      return all(propellantReadings?.gauge);
    // how high at the wall [m], once in how long [s]
    case 'liquidSwings':
      return all(propellantReadings?.swing?.rise, propellantReadings?.swing?.period);
    // [%]
    case 'ceiling':
      return [engine.ceilingPercent];
    case 'limit':
      return limitsOf(display);
    // where it meets the ground, and from what to what it may be [rad]
    case 'slope':
      return all(display.siteReadings?.slope, display.siteReadings?.slopeLeast, display.siteReadings?.slopeMost);
    // place in GROUND_NOTES
    case 'ground':
      return [GROUND_NOTES.indexOf(site.ground)];
    // how many are not shown locked
    case 'legs':
      return all(display.siteReadings?.locked.filter((locked) => !locked).length);
    case 'frozen':
    case 'underCheck':
    case 'rejected':
    case 'restored':
    case 'goForLanding':
    case 'prepareToAbort':
    case 'comeDownSlower':
    case 'takeDriftOut':
    case 'askHeightAge':
    case 'askUsable':
    case 'askLimit':
    case 'askMotion':
    case 'cannotHold':
    case 'engineStillOn':
    case 'engineOut':
    case 'contactLight':
    case 'rimAhead':
      return [];
  }
  return sentence satisfies never;
}

/** Tip limits uphill and downhill [m/s], and which way is up: 1 to the right, -1 to the left. */
function limitsOf({ siteReadings }: SeatDisplay): readonly number[] | undefined {
  const { limitLeft, limitRight, slope } = siteReadings ?? {};
  if (slope === undefined) return undefined;
  return slope < 0 ? all(limitLeft, limitRight, -1) : all(limitRight, limitLeft, 1);
}

function all(...values: readonly (number | undefined)[]): readonly number[] | undefined {
  const known = values.filter((value) => value !== undefined);
  return known.length === values.length ? known : undefined;
}

function twice(value: number | undefined): number | undefined {
  return value === undefined ? undefined : 2 * value;
}

function difference(a: number | undefined, b: number | undefined): number | undefined {
  return a === undefined || b === undefined ? undefined : a - b;
}
