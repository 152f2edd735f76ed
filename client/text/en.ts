import type { Judgment, SourceState } from '../../engine/estimate/index.ts';
import type { VehiclePart } from '../../engine/faults/index.ts';
import type { Source } from '../../engine/sensors/index.ts';
import type {
  Callout,
  CardOutcome,
  Conduct,
  FlightMode,
  NamedCause,
  NoMargin,
  Pace,
  Seat,
} from '../../engine/table/index.ts';
import type { AlertLevel, StandInReason } from '../../engine/talk/index.ts';
import type { Outcome, Phase } from '../../engine/world/index.ts';
import type { Action, ActionOf, KeyScope } from '../settings/keys.ts';
import { stepWords } from './facing.ts';

/** Every string that a person reads after the start page (`index.html` holds its own). English; one file a language. */

const NAME = 'Kilter';

export const EXERCISE = {
  mark: 'Exercise.',
  line: 'Not for operational decisions. Follow your own qualified authority and local rules.',
} as const;

export const SEAT_NAMES: Readonly<Record<Seat, string>> = {
  lead: 'Lead',
  flying: 'Flying',
  sensors: 'Sensors',
  propellant: 'Propellant',
  site: 'Site',
};

/** What each seat does today, for someone who chooses one. */
export const SEAT_TASKS: Readonly<Record<Seat, string>> = {
  lead: 'sees what is open, deals seats, decides: go on, give up, again',
  flying: 'flies: thrust and lean, or orders',
  sensors: 'judges the instruments, names what is wrong with them',
  propellant: 'watches the tanks; sets the thrust ceiling, can cut the engine off',
  site: 'marks the spot to land at, states the speed limit',
};

export const PHASE_NAMES: Readonly<Record<Phase, string>> = {
  approach: 'Approach',
  'terminal descent': 'Terminal descent',
  'final drop': 'Final drop',
  contact: 'Contact',
  settling: 'Settling, until it is still',
  'at rest': 'At rest',
};

export const CALLOUT_WORDS: Readonly<Record<Callout, string>> = {
  inside: 'inside',
  close: 'close',
  outside: 'outside',
};

/** Why no margin is told in flight; nothing where there is nothing to tell. */
export const NO_MARGIN_WORDS: Readonly<Record<NoMargin, string>> = {
  'no table': 'no limits are known ahead for this lander here; the scorecard finds them',
  'not descending': 'not coming down: no margin yet',
  'too fast': 'no margin yet: limits are for slower descents',
  'turned too far': 'no margin while it leans so far',
  'too steep': 'no margin: the ground ahead is steeper than limits are known for',
  'off site': 'on its way off the surveyed ground',
  'on the ground': '',
};

export const READINGS = {
  height: 'height',
  descentRate: 'descent rate',
  drift: 'drift',
  tilt: 'tilt',
  thrust: 'thrust',
  margin: 'margin',
  lasts: 'propellant lasts',
  toSpot: 'spot',
  used: 'in use',
  timeToContact: 'time to contact',
} as const;

export const SOURCE_NAMES: Readonly<Record<Source, string>> = {
  inertialUnit: 'Inertial unit',
  altimeter: 'Altimeter',
  velocityRadar: 'Velocity radar',
  attitudeReference: 'Attitude reference',
  surfaceCamera: 'Surface camera',
  propellantGauge: 'Propellant gauge',
  contactProbes: 'Contact probes',
  legIndications: 'Leg indications',
};

const SOURCE_STATE_WORDS: Readonly<Record<SourceState, string>> = {
  valid: 'valid',
  suspect: 'suspect',
  stale: 'stale',
  failed: 'failed',
  'no data': 'no data',
};

const JUDGMENT_WORDS: Readonly<Record<Judgment, string>> = {
  accepted: 'Accepted',
  'under check': 'Under check',
  rejected: 'Rejected',
};

export const SOURCES_CARD = {
  label: 'Sources',
  yours: 'you judge',
  states: SOURCE_STATE_WORDS,
  notUsed: 'not used',
  used: (used: number, of: number) => `${used} of ${of}`,
  judgments: JUDGMENT_WORDS,
  judge: (source: string) => `${source}: what you make of it`,
  note: (gate: number) => `σ: how far off, against its usual scatter. Past ±${gate}\u202fσ (dashed) it is not used.`,
  apart: 'How far it is off, in standard deviations of what is expected: within ±1 most of the time.',
  notWeighed: (measures: string) => `${measures}; not compared`,
  judgmentsFully: {
    accepted: 'It is used for what is believed, while the check calls it valid.',
    'under check': 'It is not used for now; you go on watching it.',
    rejected: 'It is not used any more, and the crew is told.',
  } satisfies Readonly<Record<Judgment, string>>,
  open: (source: string) => `${source}: judge it`,
  expected: (value: string) => `expected ${value}`,
  measures: {
    altimeter: 'range along its axis',
    velocityRadar: 'in its axes',
    surfaceCamera: 'over the ground',
    attitudeReference: 'lean',
    inertialUnit: 'push in its axes, turn',
    propellantGauge: 'left in the tanks',
    contactProbes: 'contact',
    legIndications: 'locked',
  } satisfies Readonly<Record<Source, string>>,
} as const;

/** What is the same on the card of every seat. */
export const SEAT_CARD = {
  heads: {
    lead: 'The descent as a whole',
    flying: 'Controls',
    sensors: 'Sources',
    propellant: 'Engine and tanks',
    site: 'The ground ahead',
  } satisfies Record<Seat, string>,
  label: (seat: string) => `${seat}: what only you set`,
  yours: 'yours alone',
} as const;

export const PROPELLANT_CARD = {
  left: 'Propellant left',
  gauge: 'gauge',
  gaugeShort: 'gauge',
  reckoned: 'by thrust × time',
  reckonedShort: 'reckoned',
  agree: 'the gauge agrees',
  gaugeLess: (by: string) => `the gauge has ${by} less`,
  gaugeMore: (by: string) => `the gauge has ${by} more`,
  lasts: 'lasts',
  lastsNote: 'in a hover, by the lesser of the two',
  thrust: 'Thrust',
  feltShort: 'felt',
  commandedShort: 'commanded',
  thrustWords: (felt: string, commanded: string) => `felt ${felt}, commanded ${commanded}`,
  engine: 'engine',
  burns: 'burns',
  burnsNot: 'is out',
  engineNote: 'by its chamber pressure',
  lights: 'contact lights',
  noneLit: 'none lit',
  lit: (legs: readonly number[]) => `${legs.length === 1 ? 'leg' : 'legs'} ${legs.join(', ')} lit`,
  nothing: 'no figure',
  swings: (rise: string) => `liquid swings ±\u202f${rise} at the wall`,
  swingQuiet: 'liquid stands still',
  swingNone: 'liquid: no figure',
  swingFelt: (period: string, shift: string | undefined) =>
    `once in ${period}${shift === undefined ? '' : `, center of mass ±\u202f${shift}`}; shown, not felt`,
  swingDrawn: 'A tank from the side with its surface.',
  ceiling: 'Thrust ceiling',
  ceilingLower: '− Lower the thrust ceiling by 5 %',
  ceilingHigher: '+ Raise the thrust ceiling by 5 %',
  cutAtContact: 'Cut at contact',
  on: 'on',
  off: 'off',
  line: 'Feed lines',
  lineOpen: 'both open',
  lineShut: 'one shut',
  lineNote: (most: string) => `One shut: it leaks no more, and the engine then gives ${most} at most.`,
  cutOff: 'Engine cut-off',
  arm: '1. Arm',
  disarm: 'Disarm',
  fire: '2. Fire',
  fired: 'Fired: the engine stays off in this descent.',
} as const;

export const SITE_CARD = {
  markSpot: 'Spot to land at',
  spot: 'spot',
  legend: (level: string, times: number) =>
    `△ lander, ○ where it meets the ground, ⚑ spot. Second line: under ${level} from foot to foot.${times === 1 ? '' : ` Heights ×\u202f${times.toFixed(times < 1 ? 1 : 0)}.`}`,
  spotMarked: 'Spot:',
  noSpot: 'none marked',
  spotLaid: (where: string) => `${where}, face down`,
  below: 'straight below',
  ahead: (far: string, way: 'left' | 'right') => (way === 'right' ? `${far} →` : `← ${far}`),
  here: 'Where it heads',
  clear: 'Clear',
  approach: 'Which way to come at the spot',
  approaches: { 'either way': 'either way', 'to the left': '← to the left', 'to the right': 'to the right →' },
  heading: 'Where it meets the ground',
  slope: 'slope',
  level: 'level',
  rises: (angle: string, way: 'left' | 'right') => `${angle} up to the ${way}`,
  between: (least: string, most: string) => (least === most ? '' : `from ${least} to ${most}`),
  limitsNote: 'Tips from this speed on, to the left and to the right; below it the drift now.',
  limitsInWords: (left: string, right: string) =>
    `It tips from ${left} to the left on, and from ${right} to the right on.`,
  legs: 'legs',
  allLocked: 'all locked',
  notLocked: (legs: readonly number[]) => `${legs.length === 1 ? 'leg' : 'legs'} ${legs.join(', ')} not locked`,
  nothing: 'no figure',
  limitInForce: 'Limit in force',
  limitLess: '− Lower the limit a little',
  limitMore: '+ Raise the limit a little',
  state: 'State it',
  stated: (limit: string) => `in force: ${limit}`,
  notStated: 'none stated',
  groundNote: 'The ground is',
  notes: { 'as mapped': 'as mapped', steeper: 'steeper', softer: 'softer', rougher: 'rougher' },
} as const;

export const LEAD_CARD = {
  planNote: (isDrill: boolean) =>
    `Height against time. Light: as ${isDrill ? 'the brief says' : 'the coach would come down'}. Dark: flown. Dashed: as it comes down now.`,
  odds: 'stays upright',
  oddsNote: 'by what is believed, how far that may be off, and the tip limit; if it goes on as it moves now',
  noOdds: 'no figure now',
  givenUp: 'landing given up',
  over: 'more than 9 in 10',
  under: 'fewer than 1 in 10',
  about: (tenths: number) => `about ${tenths} in 10`,
  open: 'Open',
  nothingOpen: 'nothing',
  inForce: 'In force',
  nothingSet: 'nothing set or said yet',
  dealHead: 'Deal seats',
  person: 'Person',
  seat: 'Seat',
  deal: 'Deal',
} as const;

export const PLAN_DRAWING = {
  height: (unit: string) => `height, ${unit}`,
} as const;

/** What seats have set and said, after 'Propellant:'. */
export const CREW_NOTES = {
  label: 'What the crew has set and said',
  fired: 'engine cut off',
  ceiling: (most: string) => `ceiling ${most}`,
  lineShut: 'one feed line shut',
  noCutAtContact: 'no cut at contact',
  armed: 'cut-off armed',
  spot: (where: string, approach: string) => `spot ${where}${approach}`,
  approaches: { 'either way': '', 'to the left': ', come in to the left', 'to the right': ', come in to the right' },
  limit: (limit: string) => `limit ${limit}`,
  ground: (ground: string) => `ground ${ground} than mapped`,
  named: (source: string, cause: string) => `${source}: ${cause}`,
  rejected: (source: string) => `${source} rejected`,
  causeOpen: (source: string) => `cause of the ${source} not named`,
  aligning: (left: string) => `aligning the inertial unit, ${left} of level flight to go`,
  noSpot: 'no spot marked',
  noLimit: 'no limit stated',
  waits: (name: string) => `${name} waits to be let in`,
} as const;

/** What may be wrong with a source, as Sensors names it. */
export const NAMED_CAUSE_WORDS: Readonly<Record<NamedCause, string>> = {
  nothing: 'cause?',
  noData: 'silent',
  freeze: 'frozen',
  bias: 'off by a steady amount',
  drift: 'drifting off',
  noise: 'noisy',
  delay: 'late',
  spike: 'wild values',
  falseValid: 'wrong, called right',
  falseInvalid: 'right, called wrong',
};

/** Naming a cause, and aligning the inertial unit. */
export const SENSORS_CARD = {
  cause: (source: string) => `${source}: what is wrong with it`,
  align: 'Align the inertial unit',
  alignHint: (takes: string) => `takes ${takes} of level flight`,
  aligning: (left: string) => `${left} of level flight to go`,
  alignWaits: 'waits: it leans or turns',
} as const;

export const TITLE_BLOCK = {
  label: 'Title block',
  programme: 'Lowmoor Surface Program',
  section: (site: string) => `${site}, section A–A`,
  lander: 'lander',
  world: 'world',
  code: 'table code',
  solo: 'own table',
  place: (site: string, lander: string, world: string) => `${site} · ${lander} · ${world}`,
  clock: 'clock',
  clockValue: (time: string, pace: string) => `T+ ${time}${pace === '' ? '' : ` ${pace}`}`,
} as const;

export const CONTROLS = {
  label: 'Controls',
  thrust: 'Thrust',
  more: '+',
  less: '−',
  // what is on a button is in its name, so that it can be asked for by what is seen
  thrustMore: '+ More thrust',
  thrustLess: '− Less thrust',
  thrustOff: 'Engine off',
  tilt: 'Tilt',
  leanLeft: 'Lean left',
  leanRight: 'Lean right',
  off: 'off',
  upright: 'upright',
  standUpright: 'Stand upright',
  hover: 'hover',
  hold: 'Hold',
  resume: 'Resume',
  abort: 'Abort',
  abortFully: 'Abort: give the landing up and climb away',
  abortSure: 'Sure?',
  abortSurely: 'Sure? Press again: give the landing up and climb away',
  again: 'Again',
  startOver: 'Again, from the start',
  leave: 'Leave',
  leaveTable: 'Leave the table',
  heldBy: (seat: string) => `held by ${seat}`,
  keys: 'Keys',
  legend: 'Hollow mark: commanded. Filled mark: actual.',
  degreesLeft: (degrees: number) => `${degrees}° left`,
  degreesRight: (degrees: number) => `${degrees}° right`,
  degreesUpright: 'upright',
  left: 'left',
  right: 'right',
  standInHolds: 'stand-in',
  tanksDry: 'tanks dry',
  cutOff: 'cut off',
} as const;

/** In a descent by orders. */
export const ORDERS = {
  descentRate: 'Descent',
  slower: 'slower',
  faster: 'faster',
  level: 'hover',
  slowerFully: 'slower: order a slower descent, then a climb',
  fasterFully: 'faster: order a faster descent',
  levelFully: 'hover: order it to hold its height',
  up: (speed: string) => `${speed} up`,
  across: 'Across the ground: hold a drift, or a lean',
  drift: 'Drift',
  lean: 'Lean',
  toRight: (speed: string) => `${speed} →`,
  toLeft: (speed: string) => `${speed} ←`,
  noDrift: 'none',
  notHeld: 'not held',
  left: { drift: 'left: order more drift to the left', lean: 'left: order it to lean left' },
  right: { drift: 'right: order more drift to the right', lean: 'right: order it to lean right' },
  none: { drift: 'none', lean: 'upright' },
  noneFully: { drift: 'none: order no drift', lean: 'upright: order it to stand upright' },
  actions: {
    thrustMore: 'slower down',
    thrustLess: 'faster down',
    leanLeft: 'drift, or lean, left',
    leanRight: 'drift, or lean, right',
    engineOff: 'hold the height',
    upright: 'no drift, or upright',
    driftOrLean: 'hold a drift, or a lean',
  } satisfies Record<ActionOf<'flying'>, string>,
  legend: 'Hollow mark: ordered. Filled mark: actual.',
  leanLimits: (high: number, from: string, low: number, to: string) =>
    `For a drift it leans up to ${high}°, less from ${from} down, ${low}° from ${to} down. An ordered lean is held to the ground.`,
  orderedBy: (seat: string) => `ordered by ${seat}`,
  orderedByStandIn: 'ordered by the stand-in',
  said: (descentRate: string, across: string) => `Ordered: ${descentRate}, ${across}.`,
  saidDrift: (drift: string) => `drift ${drift}`,
} as const;

/** How fast the clock of a descent runs. */
export const PACE = {
  label: 'Pace',
  short: (pace: number) => `×${pace}`,
  words: { 1: 'real time', 0.5: 'half speed', 0.25: 'quarter speed' } satisfies Record<Pace, string>,
  set: (words: string) => `The clock runs at ${words}.`,
} as const;

export const SETTINGS = {
  title: 'Settings',
  units: 'Units',
  unitSystems: { si: ['SI', 'meters, kilograms'], us: ['US', 'feet, pounds'] },
  motion: 'Movement',
  motions: { system: ['as this device is set', ''], less: ['less', 'nothing moves but the descent'] },
  sound: 'Sound',
  soundSwitch: 'a descent is heard, too',
  volume: 'How loud',
  volumes: { 25: 'soft', 50: 'middling', 100: 'loud' },
  sounds: [
    'Engine: a rush, louder and brighter with thrust. On the cards: thrust.',
    'Contact: a thud. Crushing legs: a crackle. On the cards: contact, and then how far the legs were crushed.',
    'Margin: a tone, the higher the nearer to tipping by what your seat knows. On your card: the margin.',
    'Alerts: two notes that fall for an advisory, two alike for a caution, three that rise for a warning, four for an emergency; never more than one alert in 4 s. On your card: the alert.',
  ],
  soundOn: 'Sound on.',
  soundOff: 'Sound off.',
  keys: 'Keys',
  keyScopes: {
    flying: 'At Flying',
    sensors: 'At Sensors',
    propellant: 'At Propellant',
    site: 'At Site',
    decides: 'At Lead, or whoever decides',
    all: 'Everybody',
  } satisfies Record<KeyScope, string>,
  letters: 'single letters act as keys',
  actions: {
    thrustMore: 'more thrust',
    thrustLess: 'less thrust',
    leanLeft: 'lean left',
    leanRight: 'lean right',
    engineOff: 'engine off',
    upright: 'stand upright',
    driftOrLean: 'by orders: a drift or a lean',
    sourceUp: 'to the source above',
    sourceDown: 'to the source below',
    accept: 'accept the source',
    check: 'put it under check',
    reject: 'reject it',
    cause: 'name what is wrong with it',
    ceilingUp: 'thrust ceiling higher',
    ceilingDown: 'thrust ceiling lower',
    armCutOff: 'arm the cut-off, or not',
    fireCutOff: 'fire the armed cut-off',
    cutAtContact: 'cut at contact, on or off',
    line: 'shut the line, or open it',
    spotLeft: 'spot to the left',
    spotRight: 'spot to the right',
    spotHere: 'mark where it is heading',
    groundNote: 'go through the ground notes; Enter says one',
    stateLimit: 'state the limit',
    turnLeft: 'turn the lander to the left, from above',
    turnRight: 'turn the lander to the right, from above',
    poll: 'ask everybody: go?',
    abort: 'abort, in two presses',
    paceSlower: 'slower clock',
    paceFaster: 'faster clock',
    hold: 'hold, resume',
    readBack: 'read back, or confirm',
    bookmark: 'bookmark this moment for the debrief',
    sound: 'sound on, or off',
  } satisfies Record<Action, string>,
  change: (key: string, action: string) => `${key}: ${action}, change the key`,
  add: (action: string) => `add: another key for ${action}`,
  addShort: 'add',
  press: 'press a key',
  pressFor: (action: string) => `Press the key for: ${action}. Escape leaves it as it is.`,
  bound: (key: string, action: string) => `${key}: ${action}.`,
  left: 'Left as it was.',
  taken: (key: string, action: string) => `${key} is taken: ${action}. Choose another.`,
  kept: 'The page needs that key. Choose another.',
  reset: 'Keys as at first',
  wasReset: 'All keys are as at first.',
  gamepad: 'Gamepad',
  gamepadWords:
    'Left stick: lean. Right stick or triggers: thrust. A: begin, resume. B: hold. X: engine off. Y: stand upright.',
  textSize: 'Letters are as large as your browser is set to show them.',
  done: 'Done',
} as const;

export const SECTION = {
  label: (site: string, lander: string) =>
    `Drawing of the descent: ${lander} over ${site}, seen in section. Its readings are in the cards.`,
  tipLimit: (speed: string) => `tip limit ${speed}`,
  noLimit: 'too fast to touch down',
  speed: (speed: string, direction: string, callout: string | undefined) =>
    `${speed}${direction}${callout === undefined ? '' : ` · ${callout}`}`,
  tiltLeft: (angle: string) => `${angle} to fall`,
  pastBalance: 'past its balance',
  leaning: (angle: string) => `leaning ${angle}`,
  tipsHere: 'tips from here',
  down: (rate: string) => `${rate} down`,
  slope: (angle: string) => `slope ${angle}`,
  slopeAtContact: (angle: string) => `slope ${angle} at contact`,
  gaveWay: 'gave way',
  across: (rate: string) => `${rate} sideways`,
  level: 'level',
  spot: (far: string) => `spot ${far}`,
  times: (times: string) => `lander drawn ×${times}`,
  timesShort: (times: string) => `drawn ×${times}`,
  noMargin: (callout: string) => `${callout}: too fast to touch down`,
  marginWords: (callout: string, by: string, within: boolean) =>
    within ? `${callout}: ${by} to the tip limit` : `${callout}: ${by} over the tip limit`,
  uphill: ' uphill',
  downhill: ' downhill',
} as const;

/** Nearer than this is where it is [m]. */
const AS_GOOD_AS_THERE = 0.05;

/** In pencil: believed. In ink: true. */
export const BELIEF = {
  hatch: 'believed: somewhere in the striped box',
  hatchShort: 'believed',
  map: (within: string) => `map ${within}`,
  ground: 'map',
  true: 'true',
  /** `right` and `up` of the true one [m]; `length` writes a length. */
  lander: (
    right: number,
    up: number,
    length: (meters: number) => string,
    what: 'believed' | 'believed at the end' = 'believed at the end',
  ) => {
    const ways = [
      ...(Math.abs(right) < AS_GOOD_AS_THERE ? [] : [`${length(Math.abs(right))} ${right > 0 ? 'right' : 'left'}`]),
      ...(Math.abs(up) < AS_GOOD_AS_THERE ? [] : [`${length(Math.abs(up))} ${up > 0 ? 'higher' : 'lower'}`]),
    ];
    return `${what}: ${ways.length === 0 ? 'just there' : ways.join(', ')}`;
  },
} as const;

/** On the scorecard: believed and true at the first contact. */
export const BELIEF_CARD = {
  caption: 'When it first met the ground',
  /** What went wrong with a source, after 'the altimeter'. */
  failed: {
    noData: 'fell silent',
    freeze: 'froze',
    bias: 'began to read wrong',
    drift: 'began to drift',
    noise: 'grew noisy',
    delay: 'came late',
    spike: 'threw wild values',
    falseValid: 'called wrong values right',
    falseInvalid: 'called right values wrong',
  },
  failure: (source: string, what: string, after: string) => `The ${source} ${what} ${after} after the start`,
  defects: {
    thrustLoss: 'The engine lost thrust',
    thrustOffset: 'The engine gave another thrust than it was told',
    cutOffFails: 'The engine did not shut down when it was told to',
    leak: 'A feed line leaked',
    legSoft: 'was softer than built, and not shown locked',
    legMissing: 'was missing',
    legNotLatched: 'was not latched',
    indicationAbsent: 'was not shown locked, though it was',
  },
  ofLeg: (what: string, leg: number) => `Leg ${leg} ${what}`,
  defect: (what: string, after: string) => `${what}, from ${after} on`,
  lineShut: (after: string) => `; the line was shut ${after} later.`,
  lineOpen: '; nobody shut the line.',
  cutOffFired: (after: string) => `; the cut-off was fired ${after} after the start.`,
  cutOffUnused: '; nobody fired the cut-off.',
  doubted: (after: string) => `; it was doubted ${after} later.`,
  inDoubt: '; it was in doubt already.',
  neverDoubted: '; nobody doubted it.',
  named: (after: string) => ` Its cause was named rightly ${after} after it began.`,
  notNamed: ' Nobody then named its cause rightly.',
  believed: 'believed',
  true: 'true',
  sideways: 'moved sideways',
  descentRate: 'came down at',
  height: 'over the ground',
  share: 'of the speed that tips it',
  heightRight: 'It met the ground where the crew believed the ground to be.',
  heightWrong: (by: string, way: 'above' | 'below') =>
    way === 'above'
      ? `Surprise: when it met the ground, the crew believed it still ${by} up.`
      : `Surprise: when it met the ground, the crew believed it down long since, and ${by} lower than it was.`,
  asBelieved: (is: string) => `It touched down at ${is} of the speed that tips it, about as was believed.`,
  nearer: (believed: string, is: string) =>
    `Surprise: it was nearer to tipping than the crew believed, at ${is} of the speed that tips it and not ${believed}.`,
  farther: (believed: string, is: string) =>
    `Surprise: it was farther from tipping than the crew believed, at ${is} of the speed that tips it and not ${believed}.`,
} as const;

/** The descent flown again with one thing changed; a source such as 'altimeter'. */
export const FORK = {
  title: (what: string) => `And with ${what}?`,
  howFrom:
    'The same descent flown again: this one thing is otherwise, and from that moment on stand-ins hold every seat.',
  howSound:
    'The same descent flown again: this one thing is otherwise. All is done as it was until the lander moves in another way; from then on stand-ins hold every seat.',
  howAnew: 'The same descent flown again from its start: this one thing is otherwise, and stand-ins hold every seat.',
  happened: 'as it was',
  forked: 'flown again',
  outcome: 'how it ended',
  sideways: 'moved sideways',
  descentRate: 'came down at',
  share: 'of the speed that tips it',
  alike: 'Both came down alike: it made a difference from the contact on.',
  crushed: 'leg crushed most, of its stroke',
  noContact: 'no contact',
  fails: 'it fails',
  parts: 'from here',
  doubted: 'doubted',
  heights: (unit: string) => `Height over the ground, ${unit}; time from the start, s`,
  speeds: (unit: string) => `Speed across the ground, to the right positive, ${unit}; time from the start, s`,
  drawn: (what: string, was: string, would: string) =>
    `Two lines over time. As it was: ${was}. With ${what}: ${would}.`,
  arrived: (what: string, outcome: string) => `With ${what} it would have been: ${outcome}.`,
} as const;

/** What of a lander can be out of order. */
export const PART_NAMES: Readonly<Record<VehiclePart, string>> = { engine: 'Engine', tanks: 'Tanks', legs: 'Legs' };

/** What may be otherwise, as it ends "and with ...?". */
export const WHAT_IF = {
  healthy: (source: string) => `a healthy ${source}`,
  sound: { engine: 'an engine in order', tanks: 'tanks that do not leak', legs: 'sound legs' },
  rejected: (source: string, at: string) => `the ${source} rejected at ${at}`,
  descentRate: (rate: string, at: string) => `${rate} ordered at ${at}`,
  world: (name: string) => `the pull of ${name}`,
  stance: (share: string) => `feet at ${share} of their distance`,
} as const;

export const STATUS = {
  reconnecting: 'The line dropped: what you see stands still. Reconnecting; your seat is kept.',
  restarting: 'The server is being restarted. The table comes back by itself; your seat is kept.',
  restarted: 'The server is back, and the table with it.',
  connected: 'Connected.',
  connectedBack: 'Connected. The controls are yours again.',
  closed: 'This table is closed.',
  resumed: 'The descent goes on.',
  held: 'On hold: the clock stands still until someone resumes.',
  margin: (callout: string, limit: string) => `Margin ${callout}. Tip limit ${limit}.`,
  seat: (seat: string) => `You sit at ${seat} now.`,
  noSeat: 'You have no seat now: you watch.',
} as const;

/** At rest, for somebody without a seat. */
export const OFFER = {
  label: 'A seat for you',
  free: 'You have no seat: you watch. Take one for the next descent:',
  noneFree: 'Every seat is taken: you watch. Somebody who sits can hand you theirs.',
} as const;

/** Before the next descent of a crew. */
export const COUNTDOWN = {
  rules: 'Brief and rules',
  label: 'Next descent',
  begins: (left: string) => `The next descent begins in ${left}.`,
  wait: 'Wait',
  over: 'The countdown has ended.',
} as const;

export const LEAVING = {
  left: (code: string | undefined) =>
    code === undefined
      ? 'You left the flight. Nothing of it is kept.'
      : `You left table ${code}. Its code leads back while others are there.`,
  title: 'Leave the descent?',
  alone: 'It is on hold, and will be given up.',
  crew: 'The others go on. A stand-in covers your seat.',
  watching: 'The others go on.',
  facilitatorTitle: 'Leave the table that you run?',
  facilitator: 'Hand the table over first, under People: otherwise Lead goes on alone, and you come back as crew.',
  stay: 'Stay',
  leave: 'Leave',
} as const;

export const TABLE = {
  title: (title: string) => `${title} · ${NAME}`,
  heading: (title: string) => `Kilter table: ${title}`,
} as const;

export const LOBBY = {
  title: 'Open table',
  codeLabel: 'Table code',
  invite: 'Others join with this code, or straight from the link.',
  inviteFrom: (origin: string) =>
    `Others in this network open ${origin} and join with this code, or straight from the link.`,
  onlyHere:
    'This address, localhost, leads every other device to itself. Open Kilter by the name or address of this computer in your network; the link then leads others here.',
  copy: 'Copy link',
  copied: 'Link copied',
  copyByHand: 'Copy this link',
  qr: 'Code of the link, to be read by a camera',
  seats: 'Seats',
  take: 'take',
  choose: 'Change the landing',
  playThis: 'Play this landing',
  start: (name: string) => `${name} start`,
  plan: (title: string, byInstruments: boolean) =>
    byInstruments ? `${title}, flown by instruments: one of them will go wrong.` : `${title}.`,
  waiting: 'Waiting for a seat',
  waits: 'came just now',
  letIn: 'let in',
  letInName: (name: string) => `Let ${name} take a seat`,
  observer: 'Observer',
  takeSeat: (seat: string) => `Take ${seat}`,
  yours: (name: string) => `${name}, you`,
  away: 'line dropped, seat kept',
  begin: 'Begin the descent',
  beginHint: 'Take a seat first; anyone seated can begin.',
  standIn: 'stand-in',
  you: 'you',
  yourSeat: 'Your seat: stand up, hand over',
  standUp: 'Stand up',
  handOver: 'Hand over',
  handOverTo: 'Hand your seat to',
  withoutSeat: 'Here without a seat',
  nobody: 'nobody',
} as const;

/** Who may be at a table. */
export const MODERATION = {
  summary: 'Lock the table, send someone away',
  here: 'Others here',
  lock: 'Lock the table',
  unlock: 'Open the table again',
  locked: 'Locked: nobody else can join.',
  sendAway: 'Send away',
  sendAwayName: (name: string) => `Send ${name} away`,
  sure: 'Sure? Send away',
  sureOf: (name: string) => `Sure? Send ${name} away`,
} as const;

export const CHOICE = {
  title: 'Choose the landing',
  troubleTitle: 'Fly with a failure',
  lander: 'Lander',
  site: 'Site (▽ where the descent begins)',
  world: 'World',
  start: 'Start',
  ground: 'Ground number',
  groundHint: 'The same number gives the same ground.',
  trouble: 'Instruments',
  troubles: { none: 'All is well', seeded: 'A source fails', engine: 'Engine or tank', legs: 'A leg' },
  troubleWords: {
    none: 'you see what is true',
    seeded: 'what Sensors could find out',
    engine: 'what Propellant could find out',
    legs: 'what Site could find out',
  },
  mode: 'Flying',
  modes: { 'by hand': 'By hand', 'by orders': 'By orders' },
  modeWords: {
    'by hand': 'you set thrust and tilt',
    'by orders': 'you say what to hold, and it is flown so',
  } satisfies Record<FlightMode, string>,
  seat: 'Your seat',
  startWords: (height: string, drift: string, descentRate: string) =>
    `${height} up, ${drift} across, ${descentRate} down`,
  worldHint: (lander: string) =>
    `Grayed: its engine cannot hold ${lander} there or cannot let it down, or the air is too thick to be left out.`,
  otherWorld: (world: string, why: string) => `${world} now, in place of ${why}.`,
  fly: 'Fly this landing',
  open: 'Open a table for it',
  close: 'Back',
  wrongLink: (problems: string) => `The link names no landing that can be flown; this is the first one. ${problems}`,
} as const;

export const SCORECARD = {
  label: 'Scorecard',
  again: 'Again',
  another: 'Another failure',
  save: 'Save',
  saveWhat: ' the record',
  againHint: (who: string) => `${who} starts it.`,
  againNobody: 'Someone with a seat',
  worldsLead: 'Same touchdown on ',
  worlds: 'Earth, Mars, Moon',
  look: 'Look at the section',
  back: 'Back to the scorecard',
  print: 'Print',
  /** What is drawn of the contact that decided. */
  contactDrawn: (which: string) => `${which}, as it met the ground`,
  contact: 'The contact',
  nthContact: (nth: string) => `${nth} contact`,
  after: { first: '', hop: ' · after a bounce', 're-light': ' · after its engine lifted it' },
  first: 'First',
  second: 'Second',
  later: 'Later',
  last: 'Last',
  decided: 'it was decided here',
  closest: 'nearest to tipping',
  against: { inside: '', close: ': only just did not', outside: ': too fast' },
  tooHard: 'too hard for its legs',
  movedAt: 'sideways',
  stated: (limit: string) => `Site's limit was ${limit}`,
  tipsFrom: (limit: string) => `tips from ${limit}`,
  neverUpTo: (limit: string) => `tips at none up to ${limit}`,
  tipsAlways: 'tips at any speed',
  limitUnknown: 'too hard for any limit',
  down: (rate: string) => `${rate} down`,
  speedInWords: (arrived: string, limit: string) => `It moved ${arrived} sideways; ${limit}.`,
  descentRate: 'came down at',
  slope: 'ground slopes',
  lean: 'leaned at contact',
  upright: 'upright',
  strokes: 'legs crushed',
  legsGoneNote: 'crushed to the end',
  strokesNote: (legs: number) => `of what it can take, the most of ${legs} legs`,
  legsGone: (gone: number, legs: number) => `${gone} of ${legs} gave way`,
  propellant: 'propellant left',
  spot: 'spot that Site marked',
  atSpot: 'where it is',
  besideSpot: (far: string, way: 'left' | 'right') => `${far} to its ${way}`,
  groundSaid: 'ground, by Site',
  thanMapped: (ground: string) => `${ground} than mapped`,
  rest: 'leans now',
  lies: 'on its side',
  stillMoving: 'still bouncing: a crash is called before it comes to rest',
  restLeft: (angle: string) => `could turn ${angle} more before it falls`,
  gearFirst: (limit: string) => `A leg is used up from ${limit} sideways on, before it tips.`,
  gearAlways: 'Coming down so fast, a leg is used up however little it moves sideways.',
  movingDown: ', moved downhill',
  movingUp: ', moved uphill',
  outsideChecked: (what: string) => `Outside checked range: ${what}.`,
  check: 'How this was found, and how to check it',
  footnote: (friction: string, tolerance: string) =>
    `The tip limit is the least sideways speed at which this very arrival tips over in the simulation of the whole lander, all else unchanged: the worse of two grounds, this one and a rougher one (friction ${friction}), to ${tolerance}. Each contact is judged with fresh legs.`,
  closedForm: 'Feet together, rigid legs',
  closedFormNote: (limit: string) =>
    `A formula for a body whose feet meet the ground together on legs that do not give: ${limit}. It is a reference for the books, not a limit of this lander.`,
  simulateLead: 'Simulates this arrival, with every digit:',
  checkLead: 'Computes the formula:',
  printed: {
    label: 'Record',
    date: 'date',
    crew: 'crew',
    alone: 'one person, alone',
    nobody: 'stand-ins only',
    table: 'table',
    landing: 'site, lander, world',
    version: 'version',
    versionValue: (physics: number) => `Kilter, physics ${physics}`,
    drawing: 'The section at rest',
  },
} as const;

/** Which way a lander fell, where the ground has no downhill: as it moved, against that, or neither. */
export type FallOnLevel = 'along' | 'against' | 'still';

const FELL_ON_LEVEL: Readonly<Record<FallOnLevel, string>> = {
  along: 'Tipped over, the way it was moving',
  against: 'Tipped over, against the way it was moving',
  still: 'Tipped over',
};

export const HEADLINE = {
  exhausted: 'Crashed: out of propellant',
  upright: 'Landed upright',
  thin: 'Landed upright, only just',
  luck: 'Stands, but by luck',
  gaveWay: 'Crashed: its legs gave way',
} as const;

/** After a headline: it met the ground more than once. */
export const AFTER = { hop: 'after a bounce', 're-light': 'after its engine lifted it again' } as const;

/** The other outcomes in the words of a newcomer. `onLevel` is there on level ground only. */
export function outcomeHeadline(
  outcome: Exclude<CardOutcome, 'upright inside limit' | 'upright outside limit' | 'gear overload'>,
  onLevel: FallOnLevel | undefined,
): string {
  switch (outcome) {
    case 'tipped downhill':
      return onLevel === undefined ? 'Tipped over, downhill' : FELL_ON_LEVEL[onLevel];
    case 'tipped uphill':
      return onLevel === undefined ? 'Tipped over, uphill' : FELL_ON_LEVEL[onLevel];
    case 'off site':
      return 'Lost: it left the site';
    case 'propellant exhausted':
      return 'Ran out of propellant';
    case 'aborted':
      return 'Landing given up';
    case 'stopped':
      return 'Stopped before it came to rest';
  }
  return outcome satisfies never;
}

/** After an outcome that does not say so itself. */
export const AND_FELL = 'and it fell over';
export const BUT_STANDS = 'but it still stands';
/** Called before it came to rest. */
export const ON_IMPACT = ' on impact';

/** How it met the ground again. */
const AGAIN = { hop: 'bounced', 're-light': 'was lifted again by its engine' } as const;
/** Why it met the ground again; `down`: how fast it first came down. */
const AGAIN_BY = {
  hop: (down: string) => `It came down at ${down} and bounced.`,
  're-light': () => 'Its engine was on after it had touched, and lifted it off again.',
} as const;
const WHEN = { first: 'first contact', second: 'second contact', later: 'later contact' } as const;

/** The reason in one sentence. Speeds such as '0.67 m/s'; `lean` such as '12°', absent where it stood straight. */
export const WHY = {
  inside: (arrived: string, tip: string) =>
    `It moved sideways at only ${arrived}; it would take ${tip} to tip it over.`,
  thin: (arrived: string, tip: string) => `It moved sideways at ${arrived}, just under the ${tip} that tip it over.`,
  never: (arrived: string, upTo: string) => `It moved sideways at only ${arrived}; here not even ${upTo} tips it over.`,
  again: (
    { how, down }: { readonly how: 'hop' | 're-light'; readonly down: string },
    when: 'first' | 'second' | 'later',
    { arrived, limit, isFar }: { readonly arrived: string; readonly limit: string; readonly isFar: boolean },
  ) =>
    `${AGAIN_BY[how](down)} At its ${WHEN[when]}${isFar ? ' it moved sideways at only' : ', the nearest to tipping, it moved sideways at'} ${arrived}; ${limit}.`,
  luck: (arrived: string, tip: string) =>
    `It moved sideways at ${arrived}; from ${tip} on it can tip over. This time it did not: do not count on it.`,
  luckAtAnySpeed: (lean: string | undefined) =>
    `${lean === undefined ? 'Coming down like that on this slope' : `Leaning ${lean} on this ground`}, it can tip over at any speed. This time it did not.`,
  tipped: (
    how: 'hop' | 're-light' | undefined,
    { arrived, tip, where }: { readonly arrived: string; readonly tip: string; readonly where: 'slope' | 'level' },
  ) =>
    `${how === undefined ? 'Its feet caught' : `It ${AGAIN[how]}; when it came down its feet caught`} while it moved sideways at ${arrived}; ${where === 'slope' ? 'on this slope' : 'here'} it tips from ${tip} on.`,
  tipsAtAnySpeed: (lean: string | undefined, { slope, down }: { readonly slope: string; readonly down: string }) =>
    `${lean === undefined ? `The slope, ${slope}, is too steep for it` : `It met the ground leaning ${lean}`}: coming down at ${down} it tips over however slowly it moves sideways.`,
  tippedAnyway: (arrived: string, limit: string) =>
    `It met the ground at ${arrived} sideways (${limit}); what it did after that turned it over.`,
  tipsFrom: (tip: string) => `it would take ${tip} to tip it over`,
  notUpTo: (upTo: string) => `not even ${upTo} tips it over`,
  noLimit: (down: string, across: string) =>
    `It met the ground at ${down} down and ${across} sideways: far too fast for anything to hold.`,
  overload: (down: string) => `It came down at ${down}: faster than its legs can take up.`,
  overloadAskew: (down: string, across: string, lean: string | undefined) =>
    `It met the ground at ${down} down and ${across} sideways${lean === undefined ? '' : `, leaning ${lean}`}: harder than its legs can take.`,
  overloadByDrift: (down: string, across: string, gear: string) =>
    `It hit too hard: ${down} down and ${across} sideways. Coming down so fast, its legs hold only below ${gear} sideways.`,
  offSite: (height: string) => `It never came down: ${height} up it drifted past the edge of the surveyed ground.`,
  climbed: (height: string, isDry: boolean) =>
    `It climbed instead of coming down: its engine pushed harder than its weight${isDry ? ' until the tanks were dry' : ''}, and ${height} up it left the surveyed ground.`,
  offSiteAfter: 'After it had touched the ground it went on, off the surveyed ground.',
  exhausted: (down: string, isTooHard: boolean) =>
    `Its tanks ran dry in flight and it fell: it met the ground at ${down}${isTooHard ? ', harder than its legs can take' : ''}.`,
  exhaustedAloft: 'Its tanks ran dry in flight.',
  aborted: 'The crew gave up the landing.',
  stopped: 'The run was stopped before it came to rest.',
} as const;

export const WORLDS_VIEW = {
  title: 'The same touchdown on three worlds',
  lead: (drift: string, rate: string) =>
    `Same lander, same ground, ${drift} sideways and ${rate} down: played again from that contact alone, engine off, on unused legs. Only gravity differs.`,
  staticTilt: 'static tilt limit',
  staticSame: 'the same everywhere',
  tipLimit: 'tip limit',
  share: 'speed against it',
  over: 'over it',
  neverUpTo: (limit: string) => `none up to ${limit}`,
  replay: 'Play once more',
  noSpeed: 'none would do',
  outcome: (outcome: CardOutcome | Outcome, fell: boolean) => {
    if (outcome.startsWith('upright')) return 'Stays upright';
    if (outcome.startsWith('tipped')) return 'Falls over';
    if (outcome === 'gear overload') return fell ? 'The legs give way, it falls' : 'The legs give way, it stands';
    return 'Ends otherwise';
  },
} as const;

/** Alerts: how grave, in the trade's own words, and what is the matter. */
/** Of an alert how grave it is, and what is the matter. */
export const ALERT = {
  label: 'Alerts',
  levels: {
    emergency: 'Emergency',
    warning: 'Warning',
    caution: 'Caution',
    advisory: 'Advisory',
  } satisfies Record<AlertLevel, string>,
  cleared: 'Cleared',
  acknowledge: 'Got it',
  acknowledgeFully: (words: string) => `Got it: ${words}`,
  sourceLost: (source: string) => `${source} is lost`,
  marginOutside: 'it would come down outside the limit',
  propellantLow: {
    caution: 'propellant for less than 20\u202fs of hover',
    warning: 'propellant for less than 10\u202fs of hover',
  },
  dry: 'tanks dry, the engine no longer answers',
  cutOff: 'engine cut off, it stays out in this descent',
} as const;

/** What seats say to each other. A sentence is filled with figures that have their units. */
export const TALK = {
  label: 'Talk',
  open: 'Say',
  hide: 'Fold',
  say: (seat: string) => `${seat}: say`,
  to: 'to',
  toWhom: 'To whom',
  all: 'all',
  you: 'you',
  source: 'Source',
  line: 'One line of your own',
  send: 'Send',
  noFigure: 'no figure now',
  keyHint: (key: string) => `key ${key}`,
  slips: 'Said to you, and by you',
  nothing: 'Nothing open.',
  from: (from: string, to: string) => `${from} to ${to}`,
  standIn: 'stand-in',
  readBack: 'Read back',
  confirm: 'Confirm',
  readBackFully: (words: string) => `Read back: ${words}`,
  confirmFully: (words: string) => `Confirm: ${words}`,
  waitsFor: (seats: string) => `waits for ${seats} to read back`,
  waitsForAll: (count: number) => `waits for ${count} to read back`,
  isReadBack: 'read back: confirm it',
  waitsForConfirm: 'read back',
  loops: (count: number) => (count === 0 ? 'all confirmed' : `${count} not yet confirmed`),
  loopsFully: 'What was said is closed once it was read back and confirmed.',
  more: (count: number) => `${count} more`,
  moreWait: (count: number) => (count === 1 ? '1 more waits' : `${count} more wait`),
  fewer: 'Fewer',
  loop: (to: string, since: string, isReadBack: boolean) =>
    `said to ${to} ${since} ago, ${isReadBack ? 'read back, not confirmed' : 'not read back'}`,
  heard: (from: string, to: string, words: string) => `${from} to ${to}: ${words}.`,
  readBackWith: 'Read back with {readBack}.',
  sentences: {
    goForLanding: () => 'go for landing',
    prepareToAbort: () => 'prepare to abort',
    comeDownSlower: () => 'come down slower',
    takeDriftOut: () => 'take the drift out',
    askHeightAge: () => 'how old is the height?',
    askUsable: () => 'how long does it last?',
    askLimit: () => 'what is the limit?',
    askMotion: () => 'height and drift?',
    motion: (height: string, rate: string, drift: string) => `height ${height}, down ${rate}, drift ${drift}`,
    driftNulled: (drift: string) => `drift nulled, ${drift}`,
    leaning: (lean: string) => `leaning ${lean}`,
    makingForSpot: (where: string) => `making for the spot, ${where}`,
    cannotHold: () => 'cannot hold it',
    noData: (age: string, source: string) => `${source}: no data for ${age}`,
    frozen: (source: string) => `${source} is frozen`,
    differs: (by: string, source: string) => `${source} off by ${by}`,
    underCheck: (source: string) => `${source} under check`,
    rejected: (source: string) => `${source} rejected`,
    restored: (source: string) => `${source} is back`,
    heightAge: (age: string, within: string) => `height measured ${age} ago, good to ${within}`,
    usable: (left: string) => `usable ${left}`,
    leaking: (gone: string) => `propellant is leaking, ${gone} gone`,
    gaugeAgrees: (left: string) => `gauge agrees, ${left}`,
    ceiling: (most: string) => `ceiling ${most}`,
    engineStillOn: () => 'engine still on',
    engineOut: () => 'engine is out',
    contactLight: () => 'contact light',
    liquidSwings: (rise: string, period: string) => `liquid swings, ±\u202f${rise}, once in ${period}`,
    limit: (up: string, down: string) => `limit uphill ${up}, downhill ${down}`,
    slope: (slope: string) => `slope where it comes down ${slope}`,
    spot: (where: string) => `spot ${where}`,
    ground: (ground: string) => `ground ${ground}`,
    groundThanMapped: (ground: string) => `ground ${ground} than mapped`,
    legs: (open: number) =>
      open === 0 ? 'all legs locked' : open === 1 ? '1 leg not locked' : `${open} legs not locked`,
    rimAhead: () => 'an edge lies ahead',
  },
  log: 'Log',
  logEmpty: 'Nothing yet.',
} as const;

/** Go or not, stay or not. */
export const POLL = {
  label: 'Poll',
  call: { go: 'Ask: go?', stay: 'Ask: stay?' },
  callFully: { go: 'Ask: go? Every seat answers go or no-go', stay: 'Ask: stay? Every seat answers stay or no-stay' },
  asks: { go: 'Go for landing?', stay: 'Stay where we are?' },
  by: (seat: string) => `${seat} asks`,
  answers: { go: 'Go', noGo: 'No-go', stay: 'Stay', noStay: 'No-stay' },
  reason: 'Why, in a few words',
  waits: (seats: string) => `Waits for ${seats}.`,
  isIn: 'All answers are in.',
  yours: (answer: string) => `You: ${answer}. The others show when all are in.`,
  decide: 'You decide',
  decided: (answer: string) => `Decided: ${answer}.`,
  told: (seat: string, question: string) => `${seat} asks: ${question}`,
  toldIn: (counts: string) => `All answers are in: ${counts}.`,
  line: (seat: string, answer: string) => `${seat}: ${answer}`,
  because: {
    sourceWrong: 'a source looks wrong and is believed',
    marginOutside: 'outside the limit',
    propellantLow: 'too little propellant',
    leaning: 'it leans',
  } satisfies Record<StandInReason, string>,
} as const;

/** Lines of the log of the crew, after who did it; what was called out stands there as it was said. */
export const LOG = {
  readBack: (words: string) => `reads back: ${words}`,
  confirm: (words: string) => `confirms: ${words}`,
  callPoll: (question: string) => `asks: ${question}`,
  answerPoll: (answer: string) => `answers: ${answer}`,
  decide: (answer: string) => `decides: ${answer}`,
  acknowledge: 'has seen an alert',
  judged: (source: string, judgment: string) => `${source}: ${judgment}`,
  realign: 'aligns the inertial unit',
  ceiling: (most: string) => `thrust ceiling ${most}`,
  armed: (on: boolean) => (on ? 'arms the cut-off' : 'disarms the cut-off'),
  fired: 'fires the cut-off',
  cutAtContact: (on: boolean) => (on ? 'cut at contact on' : 'cut at contact off'),
  line: (shut: boolean) => (shut ? 'shuts a feed line' : 'opens the feed line'),
  facing: (steps: number) => `turns the lander: ${stepWords(steps)}`,
  spot: 'marks a spot',
  noSpot: 'takes the spot away',
  ground: (ground: string) => `ground ${ground}`,
  limit: (limit: string) => `states the limit ${limit}`,
  abort: 'gives the landing up',
  hold: 'holds',
  resume: 'resumes',
  stop: 'calls a real-world stop',
  liftStop: 'lifts the stop',
  pace: (pace: string) => `sets the clock to ${pace}`,
  conduct: {
    continuous: 'lets the clock run',
    'stop and talk': 'plays to stop and talk',
    turns: 'plays in turns',
  } satisfies Record<Conduct, string>,
  /** Nobody: the machine that runs it was away. */
  table: 'The table',
} as const;

export const COACH = {
  // a name in braces is an action, in whose place its key is put
  label: 'Coach',
  welcome:
    'You have the lander. {thrustMore} {thrustLess} for thrust, {leanLeft} {leanRight} to lean, or press the buttons.',
  held: 'On hold. The clock stands still until someone presses Resume, {hold}.',
  observing: 'You watch. You see what the crew believes; what is true comes at rest.',
  heldUntil: (name: string) => `On hold. The clock stands still until ${name} resumes.`,
  handedOver: (when: 'again' | 'now', left: readonly string[]) =>
    `You have the controls ${when}. The stand-in left ${left.join(' and ')}.`,
  leftThrust: (thrust: string) => `thrust at ${thrust}`,
  leftUpright: 'the lander upright',
  leftLeaning: (lean: string) => `the lander leaning ${lean}`,
  fall: (percent: number) =>
    `Falling too fast. More thrust, {thrustMore}, until the mark is above “hover”, ${percent} %.`,
  slow: (rate: string, target: string) =>
    `Falling at ${rate}: slow to about ${target} at this height. More thrust, {thrustMore}.`,
  climb: 'You are climbing. Ease the thrust, {thrustLess}, to just under “hover”.',
  linger: 'You are barely sinking. Ease the thrust a little, {thrustLess}.',
  driftRight: (speed: string) => `Drifting right at ${speed}. Lean left, {leanLeft}, to push against it.`,
  driftLeft: (speed: string) => `Drifting left at ${speed}. Lean right, {leanRight}, to push against it.`,
  straighten: 'The drift is going. Stand upright again, {upright}, before it is gone.',
  outside: 'The arrow is too near the blue tick: come down softer, or take out more drift.',
  leaning: 'It leans too far for any thrust to hold it up. Stand upright, {upright}.',
  watchLean: 'It leans too far for any thrust to hold it up. Say so: it must stand upright first.',
  steadyHigh: 'Good. Sink slower the lower it is; how far the arrow may reach is shown lower down.',
  steady: 'Good. Keep the arrow inside the blue tick, and sink slowly.',
  upright: 'Nearly down. Stand upright, {upright}.',
  dry: 'The tanks are dry: the engine no longer answers. Stand upright, {upright}; the legs take the rest.',
  engineOff: 'Nearly down. At first touch the engine shuts down by itself; the legs take the rest.',
  contact: 'Contact. Engine off, {engineOff}, and let the legs take it.',
  settle: 'Hands off. It settles: the card comes when it is still.',
  /** `isBelieved`: by what the crew knows. */
  watchSettle: (isBelieved: boolean) =>
    `${isBelieved ? 'By the instruments it is down' : 'It is down'} and settles. The card comes when it is still.`,
  crewFlies: (pilot: string) => `${pilot} flies. Say what you read.`,
  fallen: 'It has fallen over.',
  gaveWay: (rate: string) => `A leg gave way: it came down at ${rate}, more than the legs can take up.`,
  sources: 'Watch the sources; reject the one that no longer fits. The pilot flies what is believed.',
  sourceWrong: (name: string) => `${name}: something is wrong. Check it; reject it if it does not fit.`,
  sourceRejected: (name: string) => `Sensors has rejected a source: ${name}. What is believed goes on without it.`,
  blind: 'Nothing measures height and speed any more: what you see is a guess.',
  welcomeOrders: 'Order it down, {thrustLess}, and the drift away, {upright}. A stand-in flies it.',
  orderDown: (aim: string) => `It does not come down. Order it down, {thrustLess}, to about ${aim}.`,
  orderSlower: (aim: string) => `Ordered too fast for this height. Order it slower, {thrustMore}: about ${aim}.`,
  orderNoDrift: (drift: string) => `It is to drift at ${drift}. Order no drift, {upright}: it leans by itself.`,
  orderDrift:
    'It drifts, and the lean you hold does not stop that. Hold a drift instead, {driftOrLean}, and none of it, {upright}.',
  orderUpright: 'Nearly down. Order it to stand upright, {upright}.',
  orderSofter: 'The arrow is too near the blue tick: order it slower, {thrustMore}.',
  orderSteady: 'Good. It does as ordered; order it slower as it comes down.',
  orderDry: 'The tanks are dry: nothing you order is flown any more.',
  obeying: 'It is doing as ordered. Give it time.',
  leftDescent: (rate: string) => `the descent ordered at ${rate}`,
  leftDrift: (drift: string) => `the drift at ${drift}`,
  aborting: 'Landing given up. It climbs away by itself.',
  cutOff: 'Propellant has cut the engine off for good. Stand upright, {upright}; the legs take the rest.',
  leadTask: 'Watch the plan of the descent and what is open. You decide: go on, hold, or Abort.',
  propellantTask:
    'Hold the gauge against what was reckoned, and felt thrust against commanded. Set the ceiling; cut off an engine that does not obey.',
  siteTask: 'Mark the spot to land at, and state the speed limit that holds there.',
  watching: 'A stand-in flies. Take Flying to have the controls.',
  waiting: 'A descent is running. Watch it; whoever sits at the table can let you take a seat.',
} as const;
