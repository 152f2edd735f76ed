import { simulateArrival, type Scorecard } from '../../engine/table/index.ts';
import type { PlayedPlan } from '../plan.ts';
import { BAND_WORDS, SCORECARD, SECTION, SIMULATED, TITLE_BLOCK } from '../text/en.ts';
import { isLevel } from '../text/ground.ts';
import { degrees, kilograms, percent, speed } from '../text/numbers.ts';
import { checkCommand, createCheck } from './checkCommand.ts';
import { againButton, button, drawing, element, entry, leaveButton } from './element.ts';
import { outsideAtTouchdown, outsideInSimulation } from './outsideAtTouchdown.ts';
import { simulateCommand } from './simulateCommand.ts';
import { simulatedWords } from './simulatedWords.ts';
import { drawSpeedScale, SCALE_WIDTH } from './speedScale.ts';
import { drawTiltDial, TILT_DIAL_BOX } from './tiltDial.ts';
import { tableSheet } from './tableSheet.ts';
import { hasFallen, verdictOf } from './verdict.ts';

export interface ScorecardActions {
  readonly again: () => void;
  readonly worlds: () => void;
  readonly look: () => void;
  readonly leave: () => void;
}

/** The sheet that is laid on the table at rest. */
export function createScorecard(
  card: Scorecard,
  attitude: number,
  plan: PlayedPlan,
  actions: ScorecardActions,
): HTMLElement {
  const verdict = verdictOf(card, attitude);
  const place = TITLE_BLOCK.place(plan.siteName, plan.setup.lander.name, plan.world.name);
  const heading = element('h2', { tabindex: -1 }, verdict.headline);
  const worlds = button('', actions.worlds);
  worlds.append(element('span', { class: 'long' }, SCORECARD.worldsLead), SCORECARD.worlds);
  return tableSheet(
    {
      kind: 'scorecard',
      label: SCORECARD.label,
      actions: [
        ...againButton(actions.again),
        ...(card.touchdown === undefined ? [] : [worlds]),
        button(SCORECARD.look, actions.look),
        button(SCORECARD.print, () => window.print()),
        leaveButton(actions.leave),
      ],
    },
    element('p', { class: 'sheet-head' }, element('span', {}, SCORECARD.label), element('span', {}, place)),
    heading,
    element('p', { class: 'why' }, verdict.why),
    element('div', { class: 'scorecard-body' }, speedFinding(card), tiltFinding(card, attitude), facts(card, plan)),
    limitNotes(card, plan),
  );
}

function limitNotes({ limit, touchdown }: Scorecard, plan: PlayedPlan): HTMLElement | undefined {
  if (limit === undefined || touchdown === undefined) return undefined;
  const outside = outsideAtTouchdown(plan.setup, touchdown);
  return element(
    'div',
    {},
    outside.length === 0
      ? undefined
      : element('p', { class: 'footnote' }, SCORECARD.outsideChecked(outside.join('; '))),
    createCheck(
      checkCommand(plan.setup, touchdown),
      simulateCommand(plan, touchdown),
      outsideInSimulation(plan, touchdown),
    ),
  );
}

function speedFinding(card: Scorecard): HTMLElement {
  const { touchdown, limit } = card;
  const figure = element('figure', { class: 'speed-finding' }, element('figcaption', {}, SCORECARD.touchdown));
  if (touchdown === undefined || limit === undefined) {
    figure.append(element('p', {}, touchdown === undefined ? SCORECARD.noContact : SCORECARD.noLimit));
    return figure;
  }
  if (limit.plastic <= 0) {
    figure.append(element('p', {}, SCORECARD.noSpeed(speed(Math.abs(touchdown.vx)))));
    return figure;
  }
  const arrived = Math.abs(touchdown.vx);
  const width = matchMedia('(max-width: 35em)').matches ? SCALE_WIDTH.narrow : SCALE_WIDTH.full;
  const finding = {
    speed: arrived,
    tripping: limit.plastic,
    ...(limit.lossless === undefined ? {} : { cautious: limit.lossless }),
  };
  const label = SCORECARD.speedInWords(
    speed(arrived),
    speed(limit.plastic),
    limit.lossless === undefined ? undefined : speed(limit.lossless),
  );
  const { markup, viewBox } = drawSpeedScale(finding, width);
  figure.append(drawing(markup, { viewBox, label, class: 'speed-scale' }));
  return figure;
}

function tiltFinding(card: Scorecard, attitude: number): HTMLElement | undefined {
  const tilt = card.staticTilt;
  if (tilt === undefined) return undefined;
  if (hasFallen(attitude))
    return element(
      'figure',
      { class: 'tilt-finding' },
      element('figcaption', {}, SCORECARD.staticTilt),
      element('dl', {}, entry(SCORECARD.staticLimit, degrees(tilt.limit), SCORECARD.staticPassed)),
    );
  return element(
    'figure',
    { class: 'tilt-finding' },
    element('figcaption', {}, SCORECARD.staticTilt),
    element(
      'div',
      { class: 'tilt-row' },
      drawing(drawTiltDial(tilt), { viewBox: TILT_DIAL_BOX, class: 'tilt-dial' }),
      element(
        'dl',
        {},
        entry(SCORECARD.staticLeft, degrees(tilt.left)),
        tilt.used < 0
          ? entry(SCORECARD.staticGained, degrees(-tilt.used))
          : entry(SCORECARD.staticUsed, degrees(tilt.used)),
        entry(SCORECARD.staticLimit, degrees(tilt.limit)),
      ),
    ),
  );
}

function facts(card: Scorecard, { setup }: PlayedPlan): HTMLElement {
  const list = element('dl', { class: 'facts' });
  const { touchdown } = card;
  if (card.utilisation !== undefined && card.band !== undefined) {
    list.append(entry(SCORECARD.utilisation, percent(card.utilisation), BAND_WORDS[card.band]));
  }
  if (touchdown !== undefined) {
    list.append(entry(SCORECARD.descentRate, speed(touchdown.descentRate)));
    list.append(entry(SCORECARD.slope, slopeWords(touchdown.slope, touchdown.vx)));
  }
  if (card.strokeUsed.length > 0) list.append(entry(SCORECARD.strokes, card.strokeUsed.map(percent).join(', ')));
  list.append(entry(SCORECARD.propellant, kilograms(card.propellantLeft)));
  const simulated = touchdown && simulateArrival(setup, touchdown);
  if (simulated !== undefined) {
    const { ending, note } = simulatedWords(simulated, card);
    list.append(entry(SIMULATED.label, ending, note));
  }
  return list;
}

function slopeWords(slope: number, vx: number): string {
  if (isLevel(slope)) return SECTION.level;
  const direction = Math.abs(vx) < 0.005 ? '' : vx * slope < 0 ? SCORECARD.movingDown : SCORECARD.movingUp;
  return `${degrees(Math.abs(slope))}${direction}`;
}
