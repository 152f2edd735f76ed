import { GROUND_NOTES, type GroundNote, type SiteReadings, type TableView } from '../../engine/table/index.ts';
import type { Profile } from '../../engine/ground/index.ts';
import type { DescentSetup } from '../../engine/world/index.ts';
import { SITE_CARD } from '../text/en.ts';
import { speed } from '../text/numbers.ts';
import { createLimitInForce } from './limitInForce.ts';
import { createLiveDrawing, createStateMark, cardPart, figureLine, seatCardFrame } from './seatCard.ts';
import type { ActsOf, Ask, SeatCard } from './seatCard.ts';
import { drawLimits } from './limitDrawing.ts';
import { createPressedRow } from './pressedRow.ts';
import { legWords, slopeRangeWords, slopeWords } from './siteWords.ts';
import { createSpotMarker } from './spotMarker.ts';
import { createTurnPart } from './turnPart.ts';
import { element } from './element.ts';
import { term, termed } from '../terms/term.ts';

/** For Site: the ground ahead from the side with the spot to be marked on it, what is known of it, and what is said of it. */
export function createSiteCard(
  ask: Ask,
  known: {
    /** The ground as it is known: that of the map, or the true one. */
    readonly ground: (view: TableView) => Profile;
    /** Of the lander's feet [m]. */
    readonly halfStance: number;
    readonly setup: DescentSetup;
  },
): SeatCard & ActsOf<'site'> {
  const marker = createSpotMarker(ask, known.halfStance);
  const figures = createFigures();
  const note = createPressedRow<GroundNote>({
    label: SITE_CARD.groundNote,
    choices: GROUND_NOTES.map((ground) => [ground, SITE_CARD.notes[ground]]),
    press: (ground) => ask({ kind: 'declareGround', ground }),
  });
  const limit = createLimitInForce(ask);
  const turn = createTurnPart(ask, known.setup);
  const card = seatCardFrame(
    'site',
    ...marker.nodes,
    cardPart(SITE_CARD.heading, ...figures.nodes),
    turn.part,
    element(
      'div',
      { class: 'action-row' },
      element('span', {}, term('limit in force', SITE_CARD.limitInForce)),
      limit.group,
    ),
    element('div', { class: 'action-column' }, element('span', {}, SITE_CARD.groundNote), note.group),
  );
  return {
    card,
    acts: {
      spotLeft: () => marker.step(-1),
      spotRight: () => marker.step(1),
      spotHere: () => marker.here(),
      groundNote: () => note.focusNext(),
      stateLimit: () => limit.state(),
      turnLeft: () => turn.left(),
      turnRight: () => turn.right(),
    },
    refresh(view) {
      const { siteReadings: readings, site, stage } = view;
      card.hidden = view.you.seat !== 'site' || readings === undefined;
      if (readings === undefined) return;
      const isOpen = stage === 'descending';
      marker.refresh(view, known.ground(view), isOpen);
      figures.show(view, readings);
      note.refresh(site.ground, isOpen);
      limit.refresh(readings, site.limitHundredths, isOpen);
      turn.refresh(view, readings, isOpen);
    },
  };
}

/** Slope, limits and legs. */
function createFigures() {
  const slope = figureLine(SITE_CARD.slope);
  const limits = createLiveDrawing('limits');
  const legs = figureLine(SITE_CARD.legs);
  const mark = createStateMark();
  legs.line.append(mark.mark);
  return {
    nodes: [
      slope.line,
      element('p', { class: 'card-note' }, ...termed(SITE_CARD.limitsNote, 'tip limit', 'Tips')),
      limits.holder,
      legs.line,
    ],
    show({ flight, site }: TableView, readings: SiteReadings) {
      const { limitLeft, limitRight, locked, legsState, legsAge } = readings;
      slope.show(slopeWords(readings.slope), slopeRangeWords(readings));
      const inForce = site.limitHundredths === undefined ? undefined : site.limitHundredths / 100;
      const { markup, viewBox } = drawLimits({ left: limitLeft, right: limitRight, drift: flight.vx, inForce });
      limits.show(markup, viewBox, SITE_CARD.limitsInWords(limitOf(limitLeft), limitOf(limitRight)));
      legs.show(legWords(locked));
      mark.show(legsState, legsAge);
    },
  };
}

function limitOf(limit: number | undefined): string {
  return limit === undefined ? SITE_CARD.nothing : speed(limit);
}
