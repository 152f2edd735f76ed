import { JUDGMENTS } from '../../../engine/estimate/index.ts';
import { GROUND_NOTES, NAMED_CAUSES, type LaidView } from '../../../engine/table/index.ts';
import { LAID } from '../../text/drill.ts';
import { NAMED_CAUSE_WORDS, SITE_CARD, SOURCE_NAMES, SOURCES_CARD } from '../../text/en.ts';
import { percent, speed } from '../../text/numbers.ts';
import { descentRateWords, driftWords, leanWords } from '../readings.ts';

/** An order that lies face down, in the words of the seat that laid it. */
export function laidWords({ order, source, figure = 0, word }: LaidView): string {
  const name = source === undefined ? '' : SOURCE_NAMES[source];
  switch (order) {
    case 'judgeSource': {
      const judgment = JUDGMENTS.find((one) => one === word);
      return LAID.judged(name, judgment === undefined ? '' : SOURCES_CARD.judgments[judgment].toLowerCase());
    }
    case 'nameCause': {
      const cause = NAMED_CAUSES.find((one) => one === word);
      return LAID.judged(name, cause === undefined ? '' : NAMED_CAUSE_WORDS[cause]);
    }
    case 'realign':
      return LAID.realign;
    case 'setCeiling':
      return LAID.ceiling(percent(figure / 100));
    case 'armCutOff':
      return LAID.armed(figure === 1);
    case 'fireCutOff':
      return LAID.fire;
    case 'setCutAtContact':
      return LAID.cutAtContact(figure === 1);
    case 'shutLine':
      return LAID.line(figure === 1);
    case 'markSpot':
      return LAID.spot;
    case 'clearSpot':
      return LAID.clearSpot;
    case 'declareGround': {
      const ground = GROUND_NOTES.find((one) => one === word);
      return LAID.ground(ground === undefined ? '' : SITE_CARD.notes[ground]);
    }
    case 'stateLimit':
      return LAID.limit(speed(figure / 100));
    case 'orderFacing':
      return LAID.facing(figure);
    case 'orderDescentRate':
      return LAID.descent(descentRateWords(figure / 10));
    case 'orderDrift':
      return LAID.drift(driftWords(figure / 10));
    case 'orderLean':
      return LAID.lean(leanWords(figure));
    case 'abort':
      return LAID.abort;
  }
  return order satisfies never;
}
