import { GATE, JUDGMENTS, type Judgment, type SourceState } from '../../engine/estimate/index.ts';
import type { Source } from '../../engine/sensors/index.ts';
import type { MapView, SourceReading, TableView } from '../../engine/table/index.ts';
import { SOURCE_NAMES, SOURCES_CARD } from '../text/en.ts';
import type { Term } from '../text/glossary.ts';
import { GLYPH, stateGlyph } from '../views/stateGlyph.ts';
import { createAlignment } from './alignment.ts';
import { createCauseChoice } from './causeChoice.ts';
import { DisagreementHistory, heightOnStrip, STRIP } from './disagreementStrip.ts';
import { button, drawing, element, say } from './element.ts';
import { createPressedRow } from './pressedRow.ts';
import type { ActsOf, Ask, SeatCard } from './seatCard.ts';
import { expectedValue } from './sourceExpected.ts';
import { ageWords, disagreementWords, sourceValue } from './sourceWords.ts';
import { term, termed } from '../terms/term.ts';

/** What Sensors judges, the most telling first. */
const LISTED = [
  'altimeter',
  'velocityRadar',
  'surfaceCamera',
  'attitudeReference',
  'inertialUnit',
  'propellantGauge',
] as const satisfies readonly Source[];

type Listed = (typeof LISTED)[number];

const SOURCE_TERMS = {
  altimeter: 'altimeter',
  velocityRadar: 'velocity radar',
  surfaceCamera: 'surface camera',
  attitudeReference: 'attitude reference',
  inertialUnit: 'inertial unit',
  propellantGauge: 'propellant gauge',
} as const satisfies Readonly<Record<Listed, Term>>;

/** One carries the estimate on, the other belongs to Propellant: no reading of theirs is held against what is believed. */
const NEVER_WEIGHED: readonly Source[] = ['inertialUnit', 'propellantGauge'];

/** Every source raw, for the seat that judges them: value, state, age, disagreement with what is believed, and what the crew makes of it. */
export function createSourceList(
  ask: Ask,
  ground: (view: TableView) => Pick<MapView, 'firstX' | 'spacing' | 'heights'>,
): SeatCard & ActsOf<'sensors'> {
  const open = (source: Listed) => {
    for (const row of rows) row.open(row.source === source);
  };
  const rows = LISTED.map((source) => createRow(source, ask, open));
  open(LISTED[0]);
  const alignment = createAlignment(ask);
  const card = element(
    'section',
    { class: 'card sources-card', 'aria-label': SOURCES_CARD.label, hidden: true },
    element(
      'h2',
      { class: 'card-head' },
      element('span', {}, SOURCES_CARD.label),
      element('em', {}, term('accepted, under check, rejected', SOURCES_CARD.yours)),
    ),
    element('ul', { class: 'source-list' }, ...rows.map(({ row }) => row)),
    alignment.line,
    element('p', { class: 'source-note' }, ...termed(SOURCES_CARD.note(GATE), 'sigma (σ)', 'σ')),
  );
  const walk = (by: 1 | -1) => {
    const at = rows.findIndex(({ row }) => row.contains(document.activeElement));
    const next = at < 0 ? 0 : (at + by + rows.length) % rows.length;
    rows[next]?.focus();
  };
  // the one that has the keyboard; the first, where none has
  const inHand = () => rows.find(({ row }) => row.contains(document.activeElement)) ?? rows[0];
  const judge = (one: Judgment) => inHand()?.judge(one);
  return {
    card,
    acts: {
      sourceUp: () => walk(-1),
      sourceDown: () => walk(1),
      accept: () => judge('accepted'),
      check: () => judge('under check'),
      reject: () => judge('rejected'),
      cause: () => inHand()?.cause.open(),
    },
    refresh(view) {
      const { sources } = view;
      card.hidden = sources === undefined;
      alignment.refresh(view);
      for (const row of rows) {
        const reading = sources?.find(({ source }) => source === row.source);
        if (reading !== undefined) row.refresh(reading, view, expectedValue(row.source, view, ground(view)));
      }
    },
  };
}

function createRow(source: Listed, ask: Ask, open: (source: Listed) => void) {
  const name = SOURCE_NAMES[source];
  const state = element('span', {});
  const value = element('span', { class: 'source-value' });
  const age = element('span', { class: 'source-age' });
  const apart = element('span', { class: 'source-apart', title: SOURCES_CARD.apart });
  const strip = element('div', { class: 'source-strip' });
  const measures = element('small', { class: 'source-measures' });
  const judgment = createPressedRow<Judgment>({
    label: SOURCES_CARD.judge(name),
    choices: JUDGMENTS.map((one) => [one, SOURCES_CARD.judgments[one], SOURCES_CARD.judgmentsFully[one]]),
    press: (one) => ask({ kind: 'judgeSource', source, judgment: one }),
  });
  const cause = createCauseChoice(source, ask);
  // a press of its name is one of its line, too
  const named = term(SOURCE_TERMS[source], name);
  named.addEventListener('click', () => open(source));
  const focus = () => {
    open(source);
    judgment.focus();
  };
  // on a phone one source at a time is judged; elsewhere all are open, and this is not shown
  const opener = button('', focus, { class: 'source-open', 'aria-label': SOURCES_CARD.open(name) });
  const history = new DisagreementHistory();
  let shownState = '';
  let shownStrip = '';
  const row = element(
    'li',
    {},
    element(
      'div',
      { class: 'source-figures' },
      element('strong', {}, named),
      element('span', { class: 'source-state' }, state, age),
      element('div', { class: 'source-weighed' }, strip, apart),
      element('div', { class: 'source-says' }, value, measures),
      opener,
    ),
    element('div', { class: 'judgment' }, judgment.group, cause.list),
  );
  return {
    source,
    row,
    cause,
    focus,
    judge: (one: Judgment) => judgment.press(one),
    open(isOpen: boolean) {
      row.toggleAttribute('data-open', isOpen);
      opener.setAttribute('aria-expanded', String(isOpen));
    },
    refresh(reading: SourceReading, { flight, stage, named }: TableView, expected: string) {
      const words = stateWords(reading);
      if (words !== shownState) state.replaceChildren(glyph(reading.state), words);
      shownState = words;
      say(value, sourceValue(reading));
      say(age, ageWords(reading.age));
      say(apart, disagreementWords(reading.disagreement));
      say(measures, measureWords(source, expected));
      // a source that is never weighed has no strip
      strip.hidden = reading.disagreement === undefined && history.lines().length === 0;
      history.take(flight.tick, reading.disagreement);
      const markup = stripMarkup(history.lines());
      if (markup !== shownStrip)
        strip.replaceChildren(
          drawing(markup, { viewBox: `0 0 ${STRIP.width} ${STRIP.height}`, class: 'strip-drawing' }),
        );
      shownStrip = markup;
      judgment.refresh(reading.judgment, stage === 'descending');
      cause.refresh(reading, named, stage === 'descending');
    },
  };
}

/** What its figures are, and what they should be by what is believed. */
function measureWords(source: Source, expected: string): string {
  const measures = SOURCES_CARD.measures[source];
  if (NEVER_WEIGHED.includes(source)) return SOURCES_CARD.notWeighed(measures);
  return expected === '' ? measures : `${measures}; ${SOURCES_CARD.expected(expected)}`;
}

/** A source that is weighed and left out is said to be: that is what judging does. */
function stateWords({ state, isUsed, disagreement }: SourceReading): string {
  const words = SOURCES_CARD.states[state];
  return disagreement === undefined || isUsed ? words : `${words}, ${SOURCES_CARD.notUsed}`;
}

function glyph(state: SourceState): HTMLElement {
  return drawing(stateGlyph(state), { viewBox: `0 0 ${GLYPH} ${GLYPH}`, class: 'state-glyph' });
}

/** The line, over those of no disagreement and of the gate. */
function stripMarkup(lines: readonly string[]): string {
  const drawn = lines.map(
    (points) =>
      `<polyline points="${points}" fill="none" stroke="var(--ink)" stroke-width="1.4" stroke-linejoin="round"/>`,
  );
  return [levelMarkup(0, ''), levelMarkup(GATE, '3 3'), levelMarkup(-GATE, '3 3'), ...drawn].join('');
}

function levelMarkup(value: number, dashes: string): string {
  const y = heightOnStrip(value);
  return `<line x1="0" y1="${y}" x2="${STRIP.width}" y2="${y}" stroke="var(--hatch)" stroke-width="1" stroke-dasharray="${dashes}"/>`;
}
