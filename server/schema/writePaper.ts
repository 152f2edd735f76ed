import {
  BETWEEN_CONTACTS,
  CALLOUTS,
  MARGIN_BANDS,
  OUTCOMES,
  PHASES,
  SEATS,
  STAGES,
  type ControlInput,
  type DescentState,
  type LiveMargin,
  type Scorecard,
  type SeatView,
  type TableView,
  type TouchdownState,
} from '../../engine/index.ts';
import {
  ArrivalPaper,
  FIRST_FEET,
  LegPaper,
  MemberPaper,
  SeatPaper,
  type ControlsPaper,
  type FlightPaper,
  type MarginPaper,
  type ScorecardPaper,
  type TouchdownPaper,
} from './memberPaper.ts';

/** A paper with every structure in place, ready for `writePaper` and for a client's view. */
export function createPaper(view: TableView): MemberPaper {
  const paper = new MemberPaper();
  writePaper(paper, view);
  return paper;
}

/** Writes down what a member is shown. Only what differs from what stands there travels. */
export function writePaper(paper: MemberPaper, view: TableView): void {
  paper.stage = STAGES.indexOf(view.stage);
  paper.held = view.held;
  paper.id = view.you.id;
  paper.name = view.you.name;
  paper.seat = indexOrNone(SEATS, view.you.seat);
  paper.standInLeftThrust = view.you.standInLeft?.thrust ?? false;
  paper.standInLeftTilt = view.you.standInLeft?.tilt ?? false;
  view.seats.forEach((seat, i) => {
    writeSeat((paper.seats[i] ??= new SeatPaper()), seat);
  });
  while (paper.watching.length > view.watching.length) paper.watching.pop();
  view.watching.forEach((name, i) => {
    paper.watching[i] = name;
  });
  Object.assign(paper.plan, view.plan);
  writeControls(paper.commanded, view.commanded);
  writeFlight(paper.flight, view.flight);
  writeMargin(paper.margin, view.margin);
  writeScorecard(paper.scorecard, view.scorecard);
}

function writeSeat(paper: SeatPaper, seat: SeatView): void {
  paper.name = seat.name;
  paper.connected = seat.connected;
  paper.holdsThrust = seat.holds.thrust;
  paper.holdsTilt = seat.holds.tilt;
}

function writeControls(paper: ControlsPaper, input: ControlInput): void {
  paper.thrustPercent = input.thrustPercent;
  paper.tiltDeg = input.tiltDeg;
}

function writeFlight(paper: FlightPaper, flight: DescentState): void {
  copyNumbers(paper, flight, FLIGHT_NUMBERS);
  paper.phase = PHASES.indexOf(flight.phase);
  paper.outcome = indexOrNone(OUTCOMES, flight.outcome);
  while (paper.legs.length > flight.legs.length) paper.legs.pop();
  flight.legs.forEach((leg, i) => {
    const legPaper = (paper.legs[i] ??= new LegPaper());
    copyNumbers(legPaper, leg, LEG_NUMBERS);
    legPaper.inContact = leg.inContact;
    legPaper.usedUp = leg.usedUp;
  });
  writeControls(paper.commanded, flight.commanded);
  writeTouchdown(paper.touchdown, flight.touchdown);
  while (paper.contacts.length > flight.contacts.length) paper.contacts.pop();
  flight.contacts.forEach((arrival, i) => {
    const arrivalPaper = (paper.contacts[i] ??= new ArrivalPaper());
    copyNumbers(arrivalPaper, arrival, TOUCHDOWN_NUMBERS);
    arrivalPaper.firstFoot = FIRST_FEET.indexOf(arrival.firstFoot);
    arrivalPaper.after = BETWEEN_CONTACTS.indexOf(arrival.after);
  });
}

function writeTouchdown(paper: TouchdownPaper, touchdown: TouchdownState | undefined): void {
  paper.shown = touchdown !== undefined;
  if (touchdown === undefined) return;
  copyNumbers(paper, touchdown, TOUCHDOWN_NUMBERS);
  paper.firstFoot = FIRST_FEET.indexOf(touchdown.firstFoot);
}

function writeMargin(paper: MarginPaper, margin: LiveMargin): void {
  copyNumbers(paper, margin, MARGIN_NUMBERS);
  paper.callout = CALLOUTS.indexOf(margin.callout);
}

function writeScorecard(paper: ScorecardPaper, scorecard: Scorecard | undefined): void {
  paper.shown = scorecard !== undefined;
  if (scorecard === undefined) return;
  paper.outcome = OUTCOMES.indexOf(scorecard.outcome);
  writeTouchdown(paper.touchdown, scorecard.touchdown);
  paper.plasticLimit = scorecard.limit?.plastic;
  paper.losslessLimit = scorecard.limit?.lossless;
  paper.speedMargin = scorecard.speedMargin;
  paper.utilisation = scorecard.utilisation;
  paper.band = indexOrNone(MARGIN_BANDS, scorecard.band);
  paper.callout = indexOrNone(CALLOUTS, scorecard.callout);
  paper.staticTilt.shown = scorecard.staticTilt !== undefined;
  if (scorecard.staticTilt !== undefined) copyNumbers(paper.staticTilt, scorecard.staticTilt, TILT_NUMBERS);
  while (paper.strokeUsed.length > scorecard.strokeUsed.length) paper.strokeUsed.pop();
  scorecard.strokeUsed.forEach((share, i) => {
    paper.strokeUsed[i] = share;
  });
  paper.propellantLeft = scorecard.propellantLeft;
}

const FLIGHT_NUMBERS = [
  'tick',
  'x',
  'y',
  'vx',
  'vy',
  'angle',
  'rate',
  'thrust',
  'propellant',
  'mass',
  'height',
  'slope',
] as const;
const TOUCHDOWN_NUMBERS = ['tick', 'x', 'vx', 'descentRate', 'angle', 'rate', 'slope', 'mass'] as const;
const LEG_NUMBERS = ['footX', 'footY', 'footZ', 'stroke', 'strokeUsed', 'load'] as const;
const MARGIN_NUMBERS = ['limit', 'speedMargin', 'utilisation', 'tiltLeft'] as const;
const TILT_NUMBERS = ['limit', 'used', 'left'] as const;

function copyNumbers<Key extends string>(
  to: Record<Key, number>,
  from: Readonly<Record<Key, number>>,
  keys: readonly Key[],
): void {
  for (const key of keys) to[key] = from[key];
}

function indexOrNone<Word>(words: readonly Word[], word: Word | undefined): number | undefined {
  return word === undefined ? undefined : words.indexOf(word);
}
