import { GROUND_NOTES, type Seat } from '../../engine/table/index.ts';
import type { Addressee, CallView, Sentence } from '../../engine/talk/index.ts';
import type { Source } from '../../engine/sensors/index.ts';
import { SEAT_NAMES, SOURCE_NAMES, TALK } from '../text/en.ts';
import { degrees, distance, mass, percent, seconds, speed, tenthsOfSeconds, within } from '../text/numbers.ts';
import { driftWords } from './readings.ts';
import { aheadWords, slopeWords } from './siteWords.ts';
import { disagreementWords } from './sourceWords.ts';

/** Stands where a number was not to be had. */
const NOTHING = '–';
/** Below this tenths count [m]. */
const NEAR_GROUND = 10;

/** A sentence as it is said: with its figures, in the units of whoever reads it. */
export function sentenceWords(sentence: Sentence, source: Source | undefined, values: readonly number[]): string {
  const [first, second, third] = values;
  const name = source === undefined ? '' : SOURCE_NAMES[source];
  const { sentences } = TALK;
  switch (sentence) {
    case 'noData':
      return sentences.noData(figure(first, seconds), name);
    case 'differs':
      return sentences.differs(figure(first, disagreementWords), name);
    case 'frozen':
    case 'underCheck':
    case 'rejected':
    case 'restored':
      return sentences[sentence](name);
    case 'heightAge':
      return sentences.heightAge(figure(first, seconds), figure(second, within));
    case 'motion':
      return sentences.motion(figure(first, heightOf), figure(second, tenths), figure(third, driftOf));
    case 'driftNulled':
      return sentences.driftNulled(figure(first, driftOf));
    case 'leaning':
      return sentences.leaning(figure(first, (lean) => `${degrees(Math.abs(lean))}${lean > 0 ? ' ←' : ' →'}`));
    case 'makingForSpot':
    case 'spot':
      return sentences[sentence](figure(first, (ahead) => aheadWords(ahead, 0)));
    case 'usable':
      return sentences.usable(figure(first, (left) => seconds(Math.floor(left))));
    case 'leaking':
    case 'gaugeAgrees':
      return sentences[sentence](figure(first, mass));
    case 'ceiling':
      return sentences.ceiling(figure(first, (most) => percent(most / 100)));
    case 'limit':
      return sentences.limit(
        figure(first, (up) => `${speed(up)}${third === -1 ? ' ←' : ' →'}`),
        figure(second, (down) => `${speed(down)}${third === -1 ? ' →' : ' ←'}`),
      );
    case 'liquidSwings':
      return sentences.liquidSwings(
        figure(first, (rise) => distance(rise, 2)),
        figure(second, tenthsOfSeconds),
      );
    case 'slope':
      return sentences.slope(figure(first, slopeWords));
    case 'ground':
      return groundWords(GROUND_NOTES[first ?? 0] ?? 'as mapped');
    case 'legs':
      return sentences.legs(first ?? 0);
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
      return sentences[sentence]();
  }
  return sentence satisfies never;
}

/** What was said, a prepared sentence or a typed line. */
export function callWords({ sentence, source, values, text }: CallView): string {
  return sentence === undefined ? (text ?? '') : sentenceWords(sentence, source, values);
}

/** From whom to whom, for somebody at a seat. */
export function whoWords({ from, to }: Pick<CallView, 'from' | 'to'>, seat: Seat | undefined): string {
  const sender = from === seat ? TALK.you : SEAT_NAMES[from];
  return TALK.from(`${sender[0]?.toUpperCase()}${sender.slice(1)}`, to === seat ? TALK.you : addresseeWords(to));
}

export function addresseeWords(to: Addressee): string {
  return to === 'all' ? TALK.all : SEAT_NAMES[to];
}

export function groundWords(ground: (typeof GROUND_NOTES)[number]): string {
  return ground === 'as mapped' ? TALK.sentences.ground(ground) : TALK.sentences.groundThanMapped(ground);
}

function figure(value: number | undefined, words: (value: number) => string): string {
  return value === undefined ? NOTHING : words(value);
}

/** Whole units, but near the ground. */
function heightOf(height: number): string {
  return height < NEAR_GROUND ? distance(height) : distance(height, 0);
}

function tenths(rate: number): string {
  return speed(rate, 1);
}

/** Two figures after the point: where a drift is nulled they count. */
function driftOf(drift: number): string {
  return Math.abs(drift) < 0.005 ? driftWords(0) : `${speed(Math.abs(drift))}${drift > 0 ? ' →' : ' ←'}`;
}
