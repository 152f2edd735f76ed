import type { Source } from '../sensors/index.ts';
import { isCovered } from '../table/attendance.ts';
import type { Table } from '../table/table.ts';
import type { DescentState } from '../world/descent.ts';
import { displayAt } from './callout.ts';
import { fillSentence } from './sentences.ts';
import { isLost } from './lostSource.ts';
import { memoryOf, remember } from './standInMemory.ts';
import { speakUp } from './standIns.ts';

/**
 * What stand-ins call out by themselves, in a descent by instruments: each what its seat sees, to whoever decides. Where everything is shown as it is there
 * is nothing to tell, and a first landing stays quiet.
 */

/** Ticks between two looks: half a second. */
export const LOOKOUT = 30;
/** Looks in a row after which a source is called out as wrong, and as restored: two seconds and five. */
const LOOKS_WRONG = 4;
const LOOKS_RIGHT = 10;
/** Round numbers of seconds of hover that are called out [s]. */
const SECONDS = [60, 30, 15] as const;
/** Silent for so long, or off by so much, it is said with the figure [s], [standard deviations]. */
const WORTH_SAYING = 1;
/** Lower than this no more heights are called out: there is no time to read back [m]. */
const TOO_LOW = 5;

/** One look of every seat where nobody is. */
export function lookOut(table: Table, known: DescentState): void {
  const { state, plan } = table;
  if (plan.instruments === undefined || plan.instruments.standIns === 'asleep') return;
  if (known.phase !== 'approach' && known.phase !== 'terminal descent' && known.phase !== 'final drop') return;
  if (isCovered(state, 'sensors')) lookAtSources(table);
  if (isCovered(state, 'propellant')) lookAtSeconds(table);
  if (isCovered(state, 'site')) lookAtGround(table);
  if (isCovered(state, 'flying')) lookAtHeight(table, known);
}

function lookAtSources(table: Table): void {
  const { sources = [] } = displayAt(table, 'sensors');
  for (const { source, state, age } of sources) {
    if (age === undefined) continue;
    const { wrong, right, told } = memoryOf(table);
    const isWrong = state === 'suspect' || isLost({ state, age });
    const wrongFor = isWrong ? (wrong[source] ?? 0) + 1 : 0;
    const rightFor = isWrong ? 0 : (right[source] ?? 0) + 1;
    remember(table, { wrong: { ...wrong, [source]: wrongFor }, right: { ...right, [source]: rightFor } });
    if (wrongFor === LOOKS_WRONG && !told.includes(source)) callWrong(table, source);
    if (rightFor === LOOKS_RIGHT && told.includes(source)) {
      remember(table, { told: told.filter((one) => one !== source) });
      speakUp(table, 'sensors', { sentence: 'restored', source });
    }
  }
}

/** The first of what can be said of it with a figure; else that it is looked at. */
function callWrong(table: Table, source: Source): void {
  remember(table, { told: [...memoryOf(table).told, source] });
  const display = displayAt(table, 'sensors');
  const filled = (['noData', 'differs'] as const).find(
    (sentence) => Math.abs(fillSentence(sentence, source, display)?.[0] ?? 0) >= WORTH_SAYING,
  );
  speakUp(table, 'sensors', { sentence: filled ?? 'underCheck', source });
}

function lookAtSeconds(table: Table): void {
  const seconds = displayAt(table, 'propellant').propellantReadings?.seconds ?? Infinity;
  const passed = SECONDS.findLast((round) => seconds <= round);
  if (passed === undefined || passed >= (memoryOf(table).seconds ?? Infinity)) return;
  remember(table, { seconds: passed });
  speakUp(table, 'propellant', { sentence: 'usable' });
}

/** The limit when there is one, and at the next look the slope. */
function lookAtGround(table: Table): void {
  const { toldLimit, toldSlope } = memoryOf(table);
  if (toldSlope) return;
  const sentence = toldLimit ? 'slope' : 'limit';
  if (fillSentence(sentence, undefined, displayAt(table, 'site')) === undefined) return;
  remember(table, toldLimit ? { toldSlope: true } : { toldLimit: true });
  speakUp(table, 'site', { sentence });
}

/** At every halving of the height. */
function lookAtHeight(table: Table, { height }: DescentState): void {
  const last = memoryOf(table).height;
  if (last === undefined) return remember(table, { height });
  if (height > last / 2 || height < TOO_LOW) return;
  remember(table, { height });
  speakUp(table, 'flying', { sentence: 'motion' });
}
