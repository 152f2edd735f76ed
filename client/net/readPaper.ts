import {
  CALLOUTS,
  CARD_OUTCOMES,
  MARGIN_BANDS,
  NO_MARGINS,
  SEATS,
  STAGES,
  type ArrivalLimit,
  type JudgedContact,
  type LiveMargin,
  type PredictedMargin,
  type Scorecard,
  type SeatView,
  type TableView,
} from '../../engine/table/index.ts';
import { FIRST_LIMITS } from '../../engine/touchdown/index.ts';
import {
  BETWEEN_CONTACTS,
  OUTCOMES,
  PHASES,
  type Arrival,
  type DescentState,
  type LegState,
  type TouchdownState,
} from '../../engine/world/index.ts';
import {
  FIRST_FEET,
  type ContactPaper,
  type ArrivalPaper,
  type FlightPaper,
  type LegPaper,
  type LimitPaper,
  type MarginPaper,
  type MemberPaper,
  type PredictedPaper,
  type ScorecardPaper,
  type TouchdownPaper,
} from '../../server/schema/index.ts';

/** The view that a paper carries: plain data of its own, which later patches do not touch. */
export function readPaper(paper: MemberPaper): TableView {
  const seats = paper.seats.map((seatPaper, i): SeatView => {
    const { name, connected, holdsThrust, holdsTilt } = seatPaper;
    const holds = { thrust: holdsThrust, tilt: holdsTilt };
    return { seat: wordAt(SEATS, i), ...(name === undefined ? {} : { name }), connected, holds };
  });
  const seat = paper.seat === undefined ? undefined : wordAt(SEATS, paper.seat);
  const holds = seats.find((candidate) => candidate.seat === seat)?.holds ?? { thrust: false, tilt: false };
  const standInLeft = { thrust: paper.standInLeftThrust, tilt: paper.standInLeftTilt };
  const { title, landerId, siteId, worldId, seed } = paper.plan;
  return {
    stage: wordAt(STAGES, paper.stage),
    held: paper.held,
    you: {
      id: paper.id,
      name: paper.name,
      ...(seat === undefined ? {} : { seat }),
      holds,
      ...(standInLeft.thrust || standInLeft.tilt ? { standInLeft } : {}),
    },
    seats,
    watching: [...paper.watching],
    plan: { title, landerId, siteId, worldId, seed },
    commanded: { thrustPercent: paper.commanded.thrustPercent, tiltDeg: paper.commanded.tiltDeg },
    flight: readFlight(paper.flight),
    margin: readMargin(paper.margin),
    ...(paper.scorecard.shown ? { scorecard: readScorecard(paper.scorecard) } : {}),
  };
}

function readFlight(paper: FlightPaper): DescentState {
  const { tick, x, y, vx, vy, angle, rate, thrust, propellant, mass, height, slope } = paper;
  return {
    tick,
    phase: wordAt(PHASES, paper.phase),
    x,
    y,
    vx,
    vy,
    angle,
    rate,
    thrust,
    propellant,
    mass,
    height,
    slope,
    legs: paper.legs.map(readLeg),
    commanded: { thrustPercent: paper.commanded.thrustPercent, tiltDeg: paper.commanded.tiltDeg },
    contacts: paper.contacts.map(readArrival),
    ...(paper.touchdown.shown ? { touchdown: readTouchdown(paper.touchdown) } : {}),
    ...(paper.outcome === undefined ? {} : { outcome: wordAt(OUTCOMES, paper.outcome) }),
  };
}

function readLeg({ footX, footY, footZ, inContact, stroke, strokeUsed, usedUp, load }: LegPaper): LegState {
  return { footX, footY, footZ, inContact, stroke, strokeUsed, usedUp, load };
}

function readTouchdown(paper: TouchdownPaper): TouchdownState {
  const { tick, x, vx, descentRate, angle, rate, slope, mass } = paper;
  return { tick, x, vx, descentRate, angle, rate, slope, mass, firstFoot: wordAt(FIRST_FEET, paper.firstFoot) };
}

function readMargin({ predicted, without, tiltLeft }: MarginPaper): LiveMargin {
  return {
    ...(predicted.shown ? { predicted: readPredicted(predicted) } : {}),
    ...(without === undefined ? {} : { without: wordAt(NO_MARGINS, without) }),
    tiltLeft,
  };
}

function readPredicted(paper: PredictedPaper): PredictedMargin {
  const { limit, speedMargin, utilisation, x, seconds, descentRate, slope } = paper;
  const words = { band: wordAt(MARGIN_BANDS, paper.band), callout: wordAt(CALLOUTS, paper.callout) };
  return { limit, speedMargin, utilisation, ...words, x, seconds, descentRate, slope };
}

function readArrival(paper: ArrivalPaper): Arrival {
  const { tick, x, vx, descentRate, angle, rate, slope, mass } = paper;
  const firstFoot = wordAt(FIRST_FEET, paper.firstFoot);
  const after = wordAt(BETWEEN_CONTACTS, paper.after);
  return { tick, x, vx, descentRate, angle, rate, slope, mass, firstFoot, after };
}

function readScorecard(paper: ScorecardPaper): Scorecard {
  const { worst, staticTilt, restTilt, propellantLeft, physics } = paper;
  return {
    outcome: wordAt(CARD_OUTCOMES, paper.outcome),
    contacts: paper.contacts.map(readContact),
    contactCount: paper.contactCount,
    ...(worst === undefined ? {} : { worst }),
    ...(staticTilt.shown
      ? { staticTilt: { limit: staticTilt.limit, used: staticTilt.used, left: staticTilt.left } }
      : {}),
    restTilt,
    strokeUsed: [...paper.strokeUsed],
    propellantLeft,
    crew: paper.crew.map(({ seat, name }) => ({ seat: wordAt(SEATS, seat), name })),
    physics,
  };
}

function readContact(paper: ContactPaper): JudgedContact {
  const { speedMargin, utilisation } = paper;
  return {
    arrival: readArrival(paper.arrival),
    ...(paper.limit.shown ? { limit: readLimit(paper.limit) } : {}),
    ...(speedMargin === undefined ? {} : { speedMargin }),
    ...(utilisation === undefined ? {} : { utilisation }),
    band: wordAt(MARGIN_BANDS, paper.band),
    callout: wordAt(CALLOUTS, paper.callout),
  };
}

function readLimit({ tip, tolerance, upTo, friction, gear, first, closedForm }: LimitPaper): ArrivalLimit {
  return {
    ...(tip === undefined ? {} : { tip }),
    tolerance,
    upTo,
    friction,
    ...(gear === undefined ? {} : { gear }),
    first: wordAt(FIRST_LIMITS, first),
    closedForm,
  };
}

function wordAt<Word extends string>(words: readonly Word[], index: number): Word {
  const word = words[index];
  if (word === undefined) throw new Error(`the server numbers a word ${index}; this page knows ${words.join(', ')}`);
  return word;
}
