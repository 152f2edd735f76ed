import { schema, t, type SchemaType } from '@colyseus/schema';

/**
 * The paper in front of one member: `TableView` as it travels. One paper a member, visible to that member's client alone.
 *
 * Widths are explicit. Quantities of the engine travel as float64, so that a member reads the very bits that the authority
 * computed, and two scorecards are equal, not nearly equal. Words travel as uint8 indexes into the literal tuples of the engine.
 *
 * Every structure exists from the start: what is attached after a client's view was given the paper would reach that client
 * without its own collections. So an absent structure has `shown` false instead of not being there.
 */

export const ControlsPaper = schema({ thrustPercent: t.uint8(), tiltDeg: t.int8() }, 'ControlsPaper');
export type ControlsPaper = SchemaType<typeof ControlsPaper>;

export const TouchdownPaper = schema(
  {
    shown: t.boolean().default(false),
    tick: t.uint32(),
    x: t.float64(),
    vx: t.float64(),
    descentRate: t.float64(),
    angle: t.float64(),
    rate: t.float64(),
    slope: t.float64(),
    mass: t.float64(),
    /** Index into FIRST_FEET. */
    firstFoot: t.uint8(),
  },
  'TouchdownPaper',
);
export type TouchdownPaper = SchemaType<typeof TouchdownPaper>;

export const ArrivalPaper = schema(
  {
    tick: t.uint32(),
    x: t.float64(),
    vx: t.float64(),
    descentRate: t.float64(),
    angle: t.float64(),
    rate: t.float64(),
    slope: t.float64(),
    mass: t.float64(),
    /** Index into FIRST_FEET. */
    firstFoot: t.uint8(),
    /** Index into BETWEEN_CONTACTS. */
    after: t.uint8(),
  },
  'ArrivalPaper',
);
export type ArrivalPaper = SchemaType<typeof ArrivalPaper>;

/** Order in which `firstFoot` is numbered on the wire. */
export const FIRST_FEET = ['left', 'right', 'both'] as const;

export const LegPaper = schema(
  {
    footX: t.float64(),
    footY: t.float64(),
    footZ: t.float64(),
    inContact: t.boolean(),
    stroke: t.float64(),
    strokeUsed: t.float64(),
    usedUp: t.boolean(),
    load: t.float64(),
  },
  'LegPaper',
);
export type LegPaper = SchemaType<typeof LegPaper>;

export const FlightPaper = schema(
  {
    tick: t.uint32(),
    /** Index into PHASES. */
    phase: t.uint8(),
    x: t.float64(),
    y: t.float64(),
    vx: t.float64(),
    vy: t.float64(),
    angle: t.float64(),
    rate: t.float64(),
    thrust: t.float64(),
    propellant: t.float64(),
    mass: t.float64(),
    height: t.float64(),
    slope: t.float64(),
    legs: t.array(LegPaper),
    commanded: t.ref(ControlsPaper),
    touchdown: t.ref(TouchdownPaper),
    contacts: t.array(ArrivalPaper),
    /** Index into OUTCOMES. */
    outcome: t.uint8().optional(),
  },
  'FlightPaper',
);
export type FlightPaper = SchemaType<typeof FlightPaper>;

export const PredictedPaper = schema(
  {
    shown: t.boolean().default(false),
    limit: t.float64(),
    speedMargin: t.float64(),
    utilisation: t.float64(),
    /** Index into MARGIN_BANDS. */
    band: t.uint8(),
    /** Index into CALLOUTS. */
    callout: t.uint8(),
    x: t.float64(),
    seconds: t.float64(),
    descentRate: t.float64(),
    slope: t.float64(),
  },
  'PredictedPaper',
);
export type PredictedPaper = SchemaType<typeof PredictedPaper>;

export const MarginPaper = schema(
  {
    predicted: t.ref(PredictedPaper),
    /** Index into NO_MARGINS. */
    without: t.uint8().optional(),
    tiltLeft: t.float64(),
  },
  'MarginPaper',
);
export type MarginPaper = SchemaType<typeof MarginPaper>;

const StaticTiltPaper = schema(
  { shown: t.boolean().default(false), limit: t.float64(), used: t.float64(), left: t.float64() },
  'StaticTiltPaper',
);
type StaticTiltPaper = SchemaType<typeof StaticTiltPaper>;

export const LimitPaper = schema(
  {
    shown: t.boolean().default(false),
    tip: t.float64().optional(),
    tolerance: t.float64(),
    upTo: t.float64(),
    friction: t.float64(),
    gear: t.float64().optional(),
    /** Index into FIRST_LIMITS. */
    first: t.uint8(),
    closedForm: t.float64(),
  },
  'LimitPaper',
);
export type LimitPaper = SchemaType<typeof LimitPaper>;

export const ContactPaper = schema(
  {
    arrival: t.ref(ArrivalPaper),
    limit: t.ref(LimitPaper),
    speedMargin: t.float64().optional(),
    utilisation: t.float64().optional(),
    /** Index into MARGIN_BANDS. */
    band: t.uint8(),
    /** Index into CALLOUTS. */
    callout: t.uint8(),
  },
  'ContactPaper',
);
export type ContactPaper = SchemaType<typeof ContactPaper>;

export const CrewPaper = schema(
  {
    /** Index into SEATS. */
    seat: t.uint8(),
    name: t.string(),
  },
  'CrewPaper',
);
export type CrewPaper = SchemaType<typeof CrewPaper>;

export const ScorecardPaper = schema(
  {
    shown: t.boolean().default(false),
    /** Index into CARD_OUTCOMES. */
    outcome: t.uint8(),
    contacts: t.array(ContactPaper),
    contactCount: t.uint32(),
    /** Index into `contacts`. */
    worst: t.uint32().optional(),
    staticTilt: t.ref(StaticTiltPaper),
    restTilt: t.float64(),
    strokeUsed: t.array('float64'),
    propellantLeft: t.float64(),
    crew: t.array(CrewPaper),
    physics: t.uint32(),
  },
  'ScorecardPaper',
);
export type ScorecardPaper = SchemaType<typeof ScorecardPaper>;

/** One card of the five round the table; which seat it is follows from its place in SEATS. */
export const SeatPaper = schema(
  { name: t.string().optional(), connected: t.boolean(), holdsThrust: t.boolean(), holdsTilt: t.boolean() },
  'SeatPaper',
);
export type SeatPaper = SchemaType<typeof SeatPaper>;

const PlanPaper = schema(
  { title: t.string(), landerId: t.string(), siteId: t.string(), worldId: t.string(), seed: t.float64() },
  'PlanPaper',
);
type PlanPaper = SchemaType<typeof PlanPaper>;

export const MemberPaper = schema(
  {
    /** Index into STAGES. */
    stage: t.uint8(),
    held: t.boolean(),
    id: t.string(),
    name: t.string(),
    /** Index into SEATS. */
    seat: t.uint8().optional(),
    standInLeftThrust: t.boolean(),
    standInLeftTilt: t.boolean(),
    seats: t.array(SeatPaper),
    watching: t.array('string'),
    plan: t.ref(PlanPaper),
    commanded: t.ref(ControlsPaper),
    flight: t.ref(FlightPaper),
    margin: t.ref(MarginPaper),
    scorecard: t.ref(ScorecardPaper),
  },
  'MemberPaper',
);
export type MemberPaper = SchemaType<typeof MemberPaper>;

/** What a room holds: the papers by member, each of which only its own member's client is sent. */
export const TablePapers = schema({ papers: t.map(MemberPaper).view() }, 'TablePapers');
export type TablePapers = SchemaType<typeof TablePapers>;
