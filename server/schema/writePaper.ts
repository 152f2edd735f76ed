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
  type ControlInput,
  type DescentState,
  type TouchdownState,
} from '../../engine/world/index.ts';
import {
  ArrivalPaper,
  ContactPaper,
  CrewPaper,
  FIRST_FEET,
  LegPaper,
  MemberPaper,
  SeatPaper,
  type ControlsPaper,
  type FlightPaper,
  type LimitPaper,
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
    writeArrival((paper.contacts[i] ??= new ArrivalPaper()), arrival);
  });
}

function writeArrival(paper: ArrivalPaper, arrival: Arrival): void {
  copyNumbers(paper, arrival, TOUCHDOWN_NUMBERS);
  paper.firstFoot = FIRST_FEET.indexOf(arrival.firstFoot);
  paper.after = BETWEEN_CONTACTS.indexOf(arrival.after);
}

function writeTouchdown(paper: TouchdownPaper, touchdown: TouchdownState | undefined): void {
  paper.shown = touchdown !== undefined;
  if (touchdown === undefined) return;
  copyNumbers(paper, touchdown, TOUCHDOWN_NUMBERS);
  paper.firstFoot = FIRST_FEET.indexOf(touchdown.firstFoot);
}

function writeMargin(paper: MarginPaper, { predicted, without, tiltLeft }: LiveMargin): void {
  paper.tiltLeft = tiltLeft;
  paper.without = indexOrNone(NO_MARGINS, without);
  paper.predicted.shown = predicted !== undefined;
  if (predicted === undefined) return;
  copyNumbers(paper.predicted, predicted, PREDICTED_NUMBERS);
  paper.predicted.band = MARGIN_BANDS.indexOf(predicted.band);
  paper.predicted.callout = CALLOUTS.indexOf(predicted.callout);
}

function writeScorecard(paper: ScorecardPaper, scorecard: Scorecard | undefined): void {
  paper.shown = scorecard !== undefined;
  if (scorecard === undefined) return;
  paper.outcome = CARD_OUTCOMES.indexOf(scorecard.outcome);
  while (paper.contacts.length > scorecard.contacts.length) paper.contacts.pop();
  scorecard.contacts.forEach((contact, i) => {
    writeContact((paper.contacts[i] ??= new ContactPaper()), contact);
  });
  paper.worst = scorecard.worst;
  paper.staticTilt.shown = scorecard.staticTilt !== undefined;
  if (scorecard.staticTilt !== undefined) copyNumbers(paper.staticTilt, scorecard.staticTilt, TILT_NUMBERS);
  while (paper.strokeUsed.length > scorecard.strokeUsed.length) paper.strokeUsed.pop();
  scorecard.strokeUsed.forEach((share, i) => {
    paper.strokeUsed[i] = share;
  });
  while (paper.crew.length > scorecard.crew.length) paper.crew.pop();
  scorecard.crew.forEach(({ seat, name }, i) => {
    const crewPaper = (paper.crew[i] ??= new CrewPaper());
    crewPaper.seat = SEATS.indexOf(seat);
    crewPaper.name = name;
  });
  copyNumbers(paper, scorecard, CARD_NUMBERS);
}

function writeContact(paper: ContactPaper, contact: JudgedContact): void {
  writeArrival(paper.arrival, contact.arrival);
  writeLimit(paper.limit, contact.limit);
  paper.speedMargin = contact.speedMargin;
  paper.utilisation = contact.utilisation;
  paper.band = MARGIN_BANDS.indexOf(contact.band);
  paper.callout = CALLOUTS.indexOf(contact.callout);
}

function writeLimit(paper: LimitPaper, limit: ArrivalLimit | undefined): void {
  paper.shown = limit !== undefined;
  if (limit === undefined) return;
  copyNumbers(paper, limit, LIMIT_NUMBERS);
  paper.tip = limit.tip;
  paper.gear = limit.gear;
  paper.first = FIRST_LIMITS.indexOf(limit.first);
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
const PREDICTED_NUMBERS = ['limit', 'speedMargin', 'utilisation', 'x', 'seconds', 'descentRate', 'slope'] as const;
const LIMIT_NUMBERS = ['tolerance', 'upTo', 'friction', 'closedForm'] as const;
const CARD_NUMBERS = ['contactCount', 'restTilt', 'propellantLeft', 'physics'] as const;
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
