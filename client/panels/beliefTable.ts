import type { BelievedArrival, Defect, JudgedContact, Scorecard, SourceFailure } from '../../engine/table/index.ts';
import { BELIEF_CARD, SOURCE_NAMES } from '../text/en.ts';
import { distance, percent, seconds, speed } from '../text/numbers.ts';
import { element } from './element.ts';

/** A height that is wrong by less is right [m]. */
const HEIGHT_RIGHT = 0.5;
/** Shares of the tip limit that differ by less are alike [-]. */
const SHARE_RIGHT = 0.05;
/** Slower than this, there is no direction worth naming [m/s]. */
const NO_DRIFT = 0.05;

/** What the crew believed of the first contact beside what was true of it; nothing without instruments. */
export function beliefTable({ belief, contacts: [contact] }: Scorecard): HTMLElement | undefined {
  if (belief === undefined || contact === undefined) return undefined;
  const rows = beliefRows(belief, contact).map(([name, believed, is]) =>
    element(
      'tr',
      {},
      element('th', { scope: 'row' }, name),
      element('td', { class: 'believed' }, believed),
      element('td', {}, is),
    ),
  );
  const head = element(
    'tr',
    {},
    element('td', {}),
    element('th', { scope: 'col', class: 'believed' }, BELIEF_CARD.believed),
    element('th', { scope: 'col' }, BELIEF_CARD.true),
  );
  return element(
    'table',
    { class: 'belief' },
    element('caption', {}, BELIEF_CARD.caption),
    element('thead', {}, head),
    element('tbody', {}, ...rows),
  );
}

function doubtWords(after: number | undefined): string {
  if (after === undefined) return BELIEF_CARD.neverDoubted;
  return after === 0 ? BELIEF_CARD.inDoubt : BELIEF_CARD.doubted(seconds(after));
}

/** What went wrong with the sources, and how long it took until somebody doubted it; nothing where nothing did. */
export function failureLine({ failures = [], crew }: Scorecard): HTMLElement | undefined {
  if (failures.length === 0) return undefined;
  const isNamed = crew.some(({ seat }) => seat === 'sensors');
  return element('p', { class: 'why' }, failures.map((failure) => failureWords(failure, isNamed)).join(' '));
}

/** What was wrong with the lander, and what was done about it; nothing where nothing was. */
export function defectLine({ defects = [] }: Scorecard): HTMLElement | undefined {
  // a leg that is not shown locked belongs to what is wrong with it
  const told = defects.filter(({ kind }) => kind !== 'indicationAbsent' || defects.length === 1);
  return told.length === 0 ? undefined : element('p', { class: 'why' }, told.map(defectWords).join(' '));
}

export function defectWords({ kind, leg, after, answeredAfter }: Defect): string {
  const what = BELIEF_CARD.defects[kind];
  if (kind === 'leak') {
    const shut = answeredAfter === undefined ? BELIEF_CARD.lineOpen : BELIEF_CARD.lineShut(seconds(answeredAfter));
    return BELIEF_CARD.defect(what, seconds(after)) + shut;
  }
  if (kind === 'cutOffFails') {
    const fired =
      answeredAfter === undefined ? BELIEF_CARD.cutOffUnused : BELIEF_CARD.cutOffFired(seconds(after + answeredAfter));
    return what + fired;
  }
  const which = leg === undefined ? what : BELIEF_CARD.ofLeg(what, leg + 1);
  return after === 0 ? `${which}.` : `${BELIEF_CARD.defect(which, seconds(after))}.`;
}

/** `isNamed`: somebody sat at Sensors, who could name the cause. */
export function failureWords({ source, kind, after, doubtedAfter, namedAfter }: SourceFailure, isNamed = true): string {
  const name = SOURCE_NAMES[source].toLowerCase();
  const failure = BELIEF_CARD.failure(name, BELIEF_CARD.failed[kind], seconds(after));
  const doubt = doubtWords(doubtedAfter);
  if (namedAfter !== undefined) return failure + doubt + BELIEF_CARD.named(seconds(namedAfter));
  // whoever never doubted it had nothing to name
  return failure + doubt + (isNamed && doubtedAfter !== undefined ? BELIEF_CARD.notNamed : '');
}

/** What surprised at the first contact, as a paragraph; nothing without instruments. */
export function surpriseLine({ belief, contacts: [contact] }: Scorecard): HTMLElement | undefined {
  if (belief === undefined || contact === undefined) return undefined;
  return element('p', { class: 'why' }, surpriseWords(belief, contact));
}

type Row = readonly [name: string, believed: string, is: string];

function beliefRows(belief: BelievedArrival, { arrival, utilisation }: JudgedContact): readonly Row[] {
  const rows: Row[] = [
    [BELIEF_CARD.sideways, drift(belief.vx), drift(arrival.vx)],
    [BELIEF_CARD.descentRate, speed(belief.descentRate), speed(arrival.descentRate)],
    [BELIEF_CARD.height, distance(belief.height), distance(0)],
  ];
  if (belief.utilisation !== undefined && utilisation !== undefined)
    rows.push([BELIEF_CARD.share, percent(belief.utilisation), percent(utilisation)]);
  return rows;
}

function drift(vx: number): string {
  return `${speed(Math.abs(vx))}${Math.abs(vx) < NO_DRIFT ? '' : vx > 0 ? ' →' : ' ←'}`;
}

/**
 * The surprise in one sentence: where it was thought to be if that was wrong, else how much nearer to tipping it was than was thought.
 *
 *   surprise = believed − true utilisation             ours, of the first contact
 */
export function surpriseWords(belief: BelievedArrival, { utilisation }: Pick<JudgedContact, 'utilisation'>): string {
  const { height } = belief;
  const share =
    belief.utilisation === undefined || utilisation === undefined
      ? undefined
      : shareWords(belief.utilisation, utilisation);
  if (Math.abs(height) < HEIGHT_RIGHT) return share ?? BELIEF_CARD.heightRight;
  return BELIEF_CARD.heightWrong(distance(Math.abs(height)), height > 0 ? 'above' : 'below');
}

function shareWords(believed: number, is: number): string {
  const surprise = believed - is;
  const words = [percent(believed), percent(is)] as const;
  if (Math.abs(surprise) < SHARE_RIGHT) return BELIEF_CARD.asBelieved(words[1]);
  return surprise < 0 ? BELIEF_CARD.nearer(...words) : BELIEF_CARD.farther(...words);
}
