import type { Callout, MarginBand, Seat } from '../../engine/table/index.ts';
import type { Outcome, Phase } from '../../engine/world/index.ts';

/** Every string that a person reads after the start page (`index.html` holds its own). English; one file a language. */

export const NAME = 'Kilter';

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
  lead: 'watches the whole and decides',
  flying: 'leans the lander, and holds thrust unless Propellant does',
  sensors: 'reads height and speed aloud',
  propellant: 'holds the thrust',
  site: 'watches the slope and the margin',
};

export const PHASE_NAMES: Readonly<Record<Phase, string>> = {
  approach: 'Approach',
  'terminal descent': 'Terminal descent',
  'final drop': 'Final drop',
  contact: 'Contact',
  settling: 'Settling',
  'at rest': 'At rest',
};

export const CALLOUT_WORDS: Readonly<Record<Callout, string>> = {
  inside: 'inside',
  close: 'close',
  outside: 'outside',
};

export const BAND_WORDS: Readonly<Record<MarginBand, string>> = {
  desired: 'desired (60 % or less)',
  adequate: 'adequate (85 % or less)',
  thin: 'thin (over 85 %)',
  outside: 'outside (over 100 %)',
};

export const READINGS = {
  height: 'height',
  descentRate: 'descent rate',
  drift: 'drift',
  tilt: 'tilt',
  thrust: 'thrust',
  margin: 'margin',
  slope: 'slope below',
  tiltLeft: 'tilt left',
  propellant: 'propellant',
  burnLeft: 'burn left',
  timeToContact: 'time to contact',
} as const;

export const TITLE_BLOCK = {
  label: 'Title block',
  programme: 'Lowmoor Surface Programme',
  section: (site: string) => `${site}, section A–A`,
  lander: 'lander',
  world: 'world',
  code: 'table code',
  solo: 'own table',
  place: (site: string, lander: string, world: string) => `${site} · ${lander} · ${world}`,
  clock: 'clock',
  clockValue: (time: string) => `T+ ${time}`,
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
  again: 'Again',
  startOver: 'Again, from the start',
  leave: 'Leave',
  leaveTable: 'Leave the table',
  heldBy: (seat: string) => `held by ${seat}`,
  keys: 'Keys',
  keyList: [
    ['↑ ↓', 'W S', 'thrust'],
    ['← →', 'A D', 'lean'],
    ['X', '', 'engine off'],
    ['C', '', 'upright'],
    ['H', '', 'hold, resume'],
  ],
  legend: 'Hollow mark: commanded. Filled mark: actual.',
  degreesLeft: (degrees: number) => `${degrees}° left`,
  degreesRight: (degrees: number) => `${degrees}° right`,
  degreesUpright: 'upright',
  left: 'left',
  right: 'right',
  standInHolds: 'stand-in',
  tanksDry: 'tanks dry',
  letterKeys: 'letters act as keys',
} as const;

export const SECTION = {
  label: (site: string, lander: string) =>
    `Drawing of the descent: ${lander} over ${site}, seen in section. Its readings are in the cards.`,
  tipLimit: (speed: string) => `tip limit ${speed}`,
  noLimit: 'too fast to touch down',
  speed: (speed: string, direction: string, callout: string) => `${speed}${direction} · ${callout}`,
  tiltLeft: (angle: string) => `${angle} to fall`,
  pastBalance: 'past its balance',
  slope: (angle: string) => `slope ${angle}`,
  level: 'level',
  noMargin: (callout: string) => `${callout}: too fast to touch down`,
  marginWords: (callout: string, by: string, within: boolean) =>
    within ? `${callout}: ${by} to the tip limit` : `${callout}: ${by} over the tip limit`,
  uphill: ' uphill',
  downhill: ' downhill',
} as const;

export const STATUS = {
  reconnecting: 'The line dropped: what you see stands still. Reconnecting; your seat is kept.',
  connected: 'Connected.',
  connectedBack: 'Connected. The controls are yours again.',
  thrustTaken: (seat: string) => `${seat} holds the thrust now.`,
  thrustGiven: (thrust: string) => `You hold the thrust now, at ${thrust}.`,
  closed: 'This table is closed.',
  resumed: 'The descent goes on.',
  held: 'On hold: the clock stands still until someone resumes.',
  margin: (callout: string, limit: string) => `Margin ${callout}. Tip limit ${limit}.`,
} as const;

export const LEAVING = {
  left: (code: string | undefined) =>
    code === undefined ? 'You left the flight.' : `You left table ${code}. Its code leads back while others are there.`,
  title: 'Leave the descent?',
  alone: 'It is on hold, and will be given up.',
  crew: 'The others go on. A stand-in covers your seat.',
  watching: 'The others go on.',
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
  observer: 'Observer',
  takeSeat: (seat: string) => `Take ${seat}`,
  yours: (name: string) => `${name}, you`,
  away: 'line dropped, seat kept',
  begin: 'Begin the descent',
  beginHint: 'Take a seat first; anyone seated can begin.',
  standIn: 'stand-in',
  you: 'you',
  withoutSeat: 'Here without a seat',
  nobody: 'nobody',
} as const;

export const SCORECARD = {
  label: 'Scorecard',
  again: 'Again',
  againHint: 'Someone with a seat starts it.',
  worldsLead: 'Same touchdown on ',
  worlds: 'Earth, Mars, Moon',
  look: 'Look at the section',
  back: 'Back to the scorecard',
  print: 'Print',
  touchdown: 'Horizontal speed at touchdown',
  trippingLimit: 'tripping limit',
  cautiousLimit: 'cautious limit',
  descentRate: 'Descent rate',
  utilisation: 'Speed used of the limit',
  staticTilt: 'Static tilt at rest',
  staticUsed: 'used',
  staticGained: 'gained',
  staticLeft: 'left',
  staticPassed: 'passed: it fell',
  staticLimit: 'limit',
  slope: 'Slope under the feet',
  strokes: 'Legs crushed, left, right',
  propellant: 'Propellant left',
  arrived: 'touchdown',
  movingDown: ', moving downhill',
  movingUp: ', moving uphill',
  noLimit: 'No limit: in this attitude, on this slope, it could not have stood.',
  speedInWords: (arrived: string, tripping: string, cautious: string | undefined) =>
    `Touchdown at ${arrived}. Tripping limit ${tripping}.${cautious === undefined ? '' : ` Cautious limit ${cautious}.`}`,
  noContact: 'It never touched the ground, so there is no margin to report.',
  outsideChecked: (what: string) => `Outside checked range: ${what}.`,
  noSpeed: (arrived: string) =>
    `${arrived}. In this attitude, turning as it did, no speed would have been slow enough.`,
  check: 'What these limits mean, and how to check them',
  checkLead: 'The same on the command line, with every digit:',
  footnote:
    'Tripping limit: a foot catches, and what is left of the motion along the ground turns the lander over it. Cautious limit: as if nothing were lost when it catches. The legs take up the descent. Both are for this very contact; crushing or sliding feet often let a lander stand beyond them.',
} as const;

/** Which way a lander fell, where the ground has no downhill: as it moved, against that, or neither. */
export type FallOnLevel = 'along' | 'against' | 'still';

const FELL_ON_LEVEL: Readonly<Record<FallOnLevel, string>> = {
  along: 'Tipped over, the way it was moving',
  against: 'Tipped over, against the way it was moving',
  still: 'Tipped over',
};

/** The same arrival in six degrees of freedom, beside what was played. */
export const SIMULATED = {
  label: 'Simulated with every leg',
  checkLead: 'This arrival with every leg, engine off, on the same ground:',
  upright: 'stays upright',
  overloaded: 'stands, a leg used up',
  tipped: 'tips over',
  timedOut: 'still moving',
  inside: (margin: string) => `at least ${margin} inside its feet`,
  alike: 'as it did here',
  playStood: 'here it stood, on legs merged into two',
  playFell: 'here it fell, on legs merged into two',
} as const;

/** The outcome in the words of a newcomer. `spare` is a speed such as '0.67 m/s'; `onLevel` is there on level ground only. */
export function outcomeHeadline(
  outcome: Outcome,
  { spare, onLevel }: { readonly spare?: string | undefined; readonly onLevel?: FallOnLevel | undefined },
): string {
  switch (outcome) {
    case 'upright inside limit':
      return spare === undefined ? 'Stayed upright' : `Stayed upright, with ${spare} to spare`;
    case 'upright outside limit':
      return 'Stayed upright, but over the tip limit';
    case 'tipped downhill':
      return onLevel === undefined ? 'Tipped over, downhill' : FELL_ON_LEVEL[onLevel];
    case 'tipped uphill':
      return onLevel === undefined ? 'Tipped over, uphill' : FELL_ON_LEVEL[onLevel];
    case 'gear overload':
      return 'The legs gave way';
    case 'off site':
      return 'Left the site';
    case 'propellant exhausted':
      return 'Ran out of propellant';
    case 'aborted':
      return 'Aborted';
    case 'stopped':
      return 'Stopped';
  }
  return outcome satisfies never;
}

/** After an outcome that does not say so itself. */
export const AND_FELL = 'and it fell over';

export const WHY = {
  level: 'It met the ground squarely and stands.',
  farInside: (speed: string, limit: string) =>
    `It met the ground at ${speed} sideways and could have tripped from ${limit} on: most of the drift was gone before contact.`,
  inside: (speed: string, limit: string, spare: string) =>
    `It met the ground at ${speed} sideways and could have tripped from ${limit} on: ${spare} was left.`,
  luck: (speed: string, limit: string) =>
    `It met the ground at ${speed} sideways, over its limit of ${limit}. This time its feet slid or its legs crushed enough of that away; do not count on it.`,
  tipped: (speed: string, limit: string) =>
    `It met the ground at ${speed} sideways. At ${limit} or less it would have stayed upright: lean against the drift earlier.`,
  tippedAnyway: (speed: string, limit: string) =>
    `Its ${speed} sideways was within the limit of ${limit}, yet it turned over: look at the attitude and the engine at contact.`,
  cannotStand: 'On this slope, in this attitude, it could not have stood at any speed.',
  overload: (rate: string) =>
    `It came down at ${rate}. A slower descent keeps the load within what the legs can absorb.`,
  offSite: 'It left the surveyed ground. Null the drift while there is height to do it.',
  exhausted: 'The tanks ran dry before contact. A steadier, shorter descent leaves a reserve.',
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
  utilisation: 'used of it',
  of: (speed: string) => `by ${speed}`,
  over: 'all of it',
  replay: 'Play once more',
  noSpeed: 'none would do',
  outcome: (outcome: Outcome, fell: boolean) => {
    if (outcome.startsWith('upright')) return 'Stays upright';
    if (outcome.startsWith('tipped')) return 'Falls over';
    if (outcome === 'gear overload') return fell ? 'The legs give way, it falls' : 'The legs give way, it stands';
    return 'Ends otherwise';
  },
} as const;

/** Alerts: how grave, in the trade's own words, and what is the matter. */
export const ALERT = {
  caution: 'Caution',
  warning: 'Warning',
  propellantLow: (seconds: string) => `propellant for ${seconds} of hover`,
  tanksDry: 'tanks dry, the engine no longer answers',
} as const;

export const COACH = {
  label: 'Coach',
  welcome: 'You have the lander. ↑ ↓ for thrust, ← → to lean, or press the buttons.',
  held: 'On hold. The clock stands still until someone presses Resume, H.',
  handedOver: (when: 'again' | 'now', left: readonly string[]) =>
    `You have the controls ${when}. The stand-in left ${left.join(' and ')}.`,
  leftThrust: (thrust: string) => `thrust at ${thrust}`,
  leftUpright: 'the lander upright',
  leftLeaning: (lean: string) => `the lander leaning ${lean}`,
  fall: (percent: number) => `Falling too fast. More thrust, ↑, until the mark is above “hover”, ${percent} %.`,
  slow: (rate: string, target: string) => `Falling at ${rate}: slow to about ${target} at this height. More thrust, ↑.`,
  climb: 'You are climbing. Ease the thrust, ↓, to just under “hover”.',
  linger: 'You are barely sinking. Ease the thrust a little, ↓.',
  driftRight: (speed: string) => `Drifting right at ${speed}. Lean left, ←, to push against it.`,
  driftLeft: (speed: string) => `Drifting left at ${speed}. Lean right, →, to push against it.`,
  straighten: 'The drift is going. Stand upright again, C, before it is gone.',
  outside: 'The arrow is too near the blue tick: come down softer, or take out more drift.',
  leaning: 'It leans too far for any thrust to hold it up. Stand upright, C.',
  watchLean: 'It leans too far for any thrust to hold it up. Say so: it must stand upright first.',
  steady: 'Good. Keep the arrow inside the blue tick, and sink slowly.',
  upright: 'Nearly down. Stand upright, C.',
  dry: 'The tanks are dry: the engine no longer answers. Stand upright, C; the legs take the rest.',
  engineOff: 'Nearly down. At first touch the engine shuts down by itself; the legs take the rest.',
  contact: 'Contact. Engine off, X, and let the legs take it.',
  settle: 'Hands off. It is settling.',
  crewFlies: (pilot: string) => `${pilot} flies. Say what you read.`,
  fallen: 'It has fallen over.',
  watching: 'A stand-in flies. Take Flying to have the controls.',
} as const;
