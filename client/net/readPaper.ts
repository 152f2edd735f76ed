import {
  BETWEEN_CONTACTS,
  CALLOUTS,
  MARGIN_BANDS,
  OUTCOMES,
  PHASES,
  SEATS,
  STAGES,
  type Arrival,
  type DescentState,
  type LegState,
  type LiveMargin,
  type Scorecard,
  type SeatView,
  type TableView,
  type TouchdownState,
} from '../../engine/index.ts';
import {
  FIRST_FEET,
  type ArrivalPaper,
  type FlightPaper,
  type LegPaper,
  type MarginPaper,
  type MemberPaper,
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

function readArrival(paper: ArrivalPaper): Arrival {
  const { tick, x, vx, descentRate, angle, rate, slope, mass } = paper;
  const firstFoot = wordAt(FIRST_FEET, paper.firstFoot);
  const after = wordAt(BETWEEN_CONTACTS, paper.after);
  return { tick, x, vx, descentRate, angle, rate, slope, mass, firstFoot, after };
}

function readMargin({ limit, speedMargin, utilisation, callout, tiltLeft }: MarginPaper): LiveMargin {
  return { limit, speedMargin, utilisation, callout: wordAt(CALLOUTS, callout), tiltLeft };
}

function readScorecard(paper: ScorecardPaper): Scorecard {
  const { plasticLimit, losslessLimit, speedMargin, utilisation, band, callout, staticTilt } = paper;
  return {
    outcome: wordAt(OUTCOMES, paper.outcome),
    ...(paper.touchdown.shown ? { touchdown: readTouchdown(paper.touchdown) } : {}),
    ...(plasticLimit === undefined
      ? {}
      : { limit: { plastic: plasticLimit, ...(losslessLimit === undefined ? {} : { lossless: losslessLimit }) } }),
    ...(speedMargin === undefined ? {} : { speedMargin }),
    ...(utilisation === undefined ? {} : { utilisation }),
    ...(band === undefined ? {} : { band: wordAt(MARGIN_BANDS, band) }),
    ...(callout === undefined ? {} : { callout: wordAt(CALLOUTS, callout) }),
    ...(staticTilt.shown
      ? { staticTilt: { limit: staticTilt.limit, used: staticTilt.used, left: staticTilt.left } }
      : {}),
    strokeUsed: [...paper.strokeUsed],
    propellantLeft: paper.propellantLeft,
  };
}

function wordAt<Word extends string>(words: readonly Word[], index: number): Word {
  const word = words[index];
  if (word === undefined) throw new Error(`the server numbers a word ${index}; this page knows ${words.join(', ')}`);
  return word;
}
