import type { Change, FlownPath, Fork, JudgedContact, JudgedDescent, Scorecard } from '../../engine/table/index.ts';
import { changeWords } from '../text/changeWords.ts';
import { FORK, SCORECARD } from '../text/en.ts';
import { percent, speed, unitOf } from '../text/numbers.ts';
import { drawing, element } from './element.ts';
import { drawFork, type ForkLines, type LinePoint } from './forkDrawing.ts';
import { SCALE_WIDTH } from './speedScale.ts';
import { decidingContact, headlineOf, type LastMotion } from './verdict.ts';

/** The part of the scorecard that comes later: the descent flown again with one thing changed, beside what happened. */
export function createForkPart(fork: Fork, card: Scorecard, last: LastMotion): HTMLElement {
  const what = changeWords(fork.change);
  const [was, would] = [headlineOf(card, last), headlineOf(fork.card, fork.last)];
  const isByHeight = showsInHeight(fork.change);
  const caption = isByHeight ? FORK.heights(unitOf('length').sign) : FORK.speeds(unitOf('speed').sign);
  // alike to the ground, there is nothing to tell two lines apart by
  const isAlike = fork.after >= (fork.happened.contact?.after ?? Infinity);
  const figure = element('figure', {}, element('figcaption', {}, caption));
  if (!isAlike) {
    const width = matchMedia('(max-width: 35em)').matches ? SCALE_WIDTH.narrow : SCALE_WIDTH.full;
    const { markup, viewBox } = drawFork(linesOf(fork, card, isByHeight), width);
    figure.append(drawing(markup, { viewBox, label: FORK.drawn(what, was, would), class: 'fork-drawing' }));
  }
  return element(
    'section',
    { class: 'fork', 'aria-label': FORK.title(what) },
    element('h3', {}, FORK.title(what)),
    element('p', { class: 'why' }, howWords(fork)),
    compare(card, fork, [was, would]),
    isAlike ? element('p', { class: 'why' }, FORK.alike) : figure,
  );
}

function howWords({ change, after }: Fork): string {
  if (change.kind === 'part sound') return FORK.howSound;
  return after > 0 ? FORK.howFrom : FORK.howAnew;
}

/** What a fork showed, in a sentence to be read aloud. */
export function forkWords({ change, card, last }: Fork): string {
  return FORK.arrived(changeWords(change), headlineOf(card, last));
}

/** A wrong altimeter shows in how it comes down; what measures motion shows in how it drifts. */
function showsInHeight({ source }: Change): boolean {
  return source !== 'velocityRadar' && source !== 'surfaceCamera' && source !== 'inertialUnit';
}

function linesOf(fork: Fork, { failures = [] }: Scorecard, isByHeight: boolean): ForkLines {
  const failure = failures.find((one) => one.source === fork.change.source);
  return {
    happened: lineOf(fork.happened, isByHeight),
    forked: lineOf(fork.forked, isByHeight),
    parted: fork.after,
    partedWords: fork.change.kind === 'source healthy' ? FORK.fails : FORK.parts,
    doubted: failure?.doubtedAfter === undefined ? undefined : failure.after + failure.doubtedAfter,
    forkedName: changeWords(fork.change).replace(/^an? /, ''),
  };
}

/** To the ground, where it met it; in the units of this viewer. */
function lineOf({ heights, speeds, spacing, contact }: FlownPath, isByHeight: boolean): readonly LinePoint[] {
  const { size } = unitOf(isByHeight ? 'length' : 'speed');
  const points = (isByHeight ? heights : speeds).map((value, i) => ({ time: i * spacing, value: value / size }));
  if (contact !== undefined) points.push({ time: contact.after, value: isByHeight ? 0 : contact.speed / size });
  return points;
}

function compare(was: JudgedDescent, { change, card: would }: Fork, headlines: readonly [string, string]): HTMLElement {
  const [figuresWas, figuresWould] = [figuresOf(was), figuresOf(would)];
  const rows = [
    [FORK.outcome, ...headlines] as const,
    ...[FORK.sideways, FORK.descentRate, FORK.share].map(
      (name, i) => [name, figuresWas[i] ?? '', figuresWould[i] ?? ''] as const,
    ),
    ...(change.part === 'legs' ? [[FORK.crushed, crushWords(was), crushWords(would)] as const] : []),
  ];
  const head = element(
    'tr',
    {},
    element('td', {}),
    element('th', { scope: 'col' }, FORK.happened),
    element('th', { scope: 'col', class: 'forked' }, FORK.forked),
  );
  const body = rows.map(([name, happened, forked]) =>
    element(
      'tr',
      {},
      element('th', { scope: 'row' }, name),
      element('td', {}, happened),
      element('td', { class: 'forked' }, forked),
    ),
  );
  return element('table', {}, element('thead', {}, head), element('tbody', {}, ...body));
}

/** Of the contact that decided: sideways, down, and share of its limit. */
function figuresOf(card: JudgedDescent): readonly string[] {
  const contact = decidingContact(card)?.contact;
  if (contact === undefined) return [FORK.noContact, FORK.noContact, FORK.noContact];
  const { arrival } = contact;
  return [speed(Math.abs(arrival.vx)), speed(arrival.descentRate), shareWords(contact)];
}

function crushWords({ strokeUsed }: JudgedDescent): string {
  return percent(Math.max(0, ...strokeUsed));
}

function shareWords({ limit, utilisation }: JudgedContact): string {
  if (utilisation !== undefined) return percent(utilisation);
  if (limit === undefined) return SCORECARD.limitUnknown;
  return limit.tip === 0 ? SCORECARD.tipsAlways : SCORECARD.neverUpTo(speed(limit.upTo, 1));
}
