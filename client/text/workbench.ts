import type { EnvelopeClass } from '../../engine/envelope/index.ts';
import { SHAPE_FACTS, type ShapeField } from '../../engine/study/index.ts';
import type { ArrivalName } from '../workbench/benchState.ts';

/** What a person reads on the workbench. Beside `en.ts`, which has everything else. */

export const BENCH = {
  documentTitle: 'Workbench · Kilter',
  title: 'Workbench',
  lead: 'Change the lander, the ground or the arrival: every answer is worked out while you look, by the engine of the table and the command line.',
  back: 'Start page',
  lander: 'Lander',
  shelf: 'Start from',
  fromFile: (name: string) => `${name}, from a file`,
  openFile: 'Open a lander file',
  saveFile: 'Save the lander',
  asDrawn: 'As drawn',
  asDrawnWhole: 'Put every dimension back',
  changed: 'changed',
  ground: 'Ground and arrival',
  world: 'World',
  missing: 'Legs gone',
  missingLeg: (leg: number) => `leg ${leg}`,
  link: 'Copy the link',
  linkCopied: 'Copied: the link opens exactly this.',
  copyFailed: 'The browser did not let the page copy. The address of this page is the link.',
  drawing: (name: string, slope: string) =>
    `${name} as it arrives, seen across the fall line, on ground that falls ${slope}`,
  dragHint: 'Drag a ring: foot, center of mass, tip of the arrow or the slope. Or type below.',
  wrong: 'No such lander',
  failed: 'A thread of the page failed. Reload the page.',
  reading: 'working …',
  noSuchFile: (name: string, why: string) => `${name} was not opened: ${why}`,
  csv: 'CSV',
  svg: 'SVG',
  copyCommand: 'Copy the command',
  copied: 'Copied.',
  command: 'The same from the command line',
  saveFirst: (file: string) => `Save the lander first: the command reads ${file}.`,
  answers: 'Answers',
  inputs: 'What is asked about',
} as const;

export const FIELD_WORDS: { readonly [Name in ArrivalName | ShapeField]: string } = {
  slopeDeg: 'slope of the ground',
  friction: 'friction',
  descentRate: 'descent rate',
  horizontalSpeed: 'horizontal speed, + downhill',
  legCount: SHAPE_FACTS.legCount.words,
  footRadius: SHAPE_FACTS.footRadius.words,
  crushForce: SHAPE_FACTS.crushForce.words,
  stroke: SHAPE_FACTS.stroke.words,
  mass: SHAPE_FACTS.mass.words,
  fill: SHAPE_FACTS.fill.words,
  centerHeight: SHAPE_FACTS.centerHeight.words,
};

export const TILT_CARD = {
  title: 'Standing still',
  headline: (deg: string) => `Falls at ${deg} of tilt`,
  where: (azimuth: string, from: number, to: number) =>
    `toward ${azimuth}, over the edge between legs ${from} and ${to}. The same on every world.`,
  left: (deg: string) => `${deg} are left on this slope.`,
  none: 'Does not stand on this slope.',
  cannot: (reason: string) => `Does not stand on any slope: ${reason}.`,
  label: 'Static tilt by direction',
  series: 'tilt at which it falls',
  ring: 'slope',
} as const;

export const LIMIT_CARD = {
  title: 'Moving: tip limit',
  headline: (speed: string) => `Tips above ${speed}`,
  headlineSoFar: (speed: string) => `So far: tips above ${speed}`,
  zero: 'Tips at any speed',
  none: (upTo: string) => `Tips at no speed up to ${upTo}`,
  where: (azimuth: string) => `least toward ${azimuth}`,
  gear: (speed: string) => `A leg is used up from ${speed}: that comes first.`,
  gearAtOnce: 'A leg is used up even without drift: that comes first.',
  inside: (share: string) => `The arrival uses ${share} of it.`,
  outside: (share: string) => `The arrival is outside: ${share} of it.`,
  simulated: 'simulated, this lander',
  closed: 'closed form: feet together, rigid legs',
  other: 'beside',
  ring: 'this arrival',
  label: 'Tip limit by direction of travel',
  soFar: (directions: number, step: string) => `${directions} directions simulated${step}`,
  whole: (deg: number) => `, every ${deg}°`,
  slopeNote: 'The ground falls in each direction of travel. Open rings: tips at no speed looked at.',
} as const;

export const PLANE_CARD = {
  title: 'Which arrivals stay upright',
  headline: (share: string) => `${share} of this plane stands`,
  press: 'Press a place to watch that touchdown.',
  x: 'horizontal speed, + downhill [m/s]',
  y: 'descent rate [m/s]',
  label: 'Plane of horizontal speed and descent rate',
  grid: (step: string, down: string, yaws: number, runs: number) =>
    `Grid ${step} by ${down} m/s, the worst of ${yaws} yaws, ${runs} touchdowns simulated`,
  unknown: 'not known yet',
  finer: 'Finer',
  isFine: 'Coarser',
  point: 'this arrival',
  pressLabel: 'Speeds of the touchdown to watch',
  watch: 'Watch this arrival',
} as const;

export const CLASS_WORDS: { readonly [Class in EnvelopeClass]: string } = {
  inside: 'stays upright',
  clearance: 'hull touches the ground',
  load: 'a load limit is passed',
  'crush exhausted': 'a leg is used up',
  'timed out': 'not decided in time',
  'tip uphill': 'tips uphill',
  'tip downhill': 'tips downhill',
};

export const WATCH = {
  title: 'One touchdown',
  headline: {
    upright: 'Stays upright',
    'tipped downhill': 'Tips downhill',
    'tipped uphill': 'Tips uphill',
    overloaded: 'Stands, with a leg used up',
    'timed out': 'Not decided in time',
  },
  at: (speed: string, descent: string, yaw: string) => `${speed} sideways, ${descent} down, turned ${yaw}`,
  play: 'Play',
  pause: 'Pause',
  again: 'From the start',
  time: 'Time of the touchdown',
  slow: 'at a quarter of the speed',
  tilt: 'tilt [deg]',
  margin: 'plumb line inside [m]',
  load: 'axial load, largest [kN]',
  stroke: 'crush, largest [m]',
  seconds: 'time [s]',
  label: 'The lander of the simulation, seen from the side of travel',
  close: 'Put away',
} as const;

export const WORLDS_CARD = {
  title: 'Three worlds',
  headline: (half: string, more: string) => `On the Moon: ${half}, ${more} times Earth’s`,
  noStance: 'No stance that could be built would do on the Moon',
  meaning: (speed: string) =>
    `Half stance at which ${speed} along the ground is just borne by a rigid body; dashed, what it has. Speed: its own limit on Earth.`,
  axis: 'half stance required [m]',
  label: 'Half stance required on each world',
  tip: (speed: string) => `tips above ${speed}`,
  tipZero: 'tips at any speed',
  tipNone: 'does not tip',
  has: 'as it is',
} as const;

export const LYING_CARD = {
  title: 'Upright or lying down',
  headline: (buys: number, costs: number) => `Lying is better in ${buys} figures, worse in ${costs}`,
  quantity: 'figure',
  upright: 'upright',
  lying: 'lying',
  better: 'better',
  none: 'none',
  not: 'What no figure shows',
} as const;

export const SPREAD_CARD = {
  title: 'If nothing is exact',
  lead: 'Many arrivals drawn around this one. The spreads are invented for exercise; change them to yours.',
  work: 'Draw the arrivals',
  stop: 'Stop',
  headline: (share: string, low: string, high: string) => `${share} stand (95 %: ${low} to ${high})`,
  verdict: {
    met: (fraction: string, confidence: string) => `Shown: at least ${fraction} stand, at ${confidence} confidence.`,
    'not met': (fraction: string, confidence: string) =>
      `Shown: fewer than ${fraction} stand, at ${confidence} confidence.`,
    undecided: (fraction: string, confidence: string) =>
      `Not decided by so many runs: whether at least ${fraction} stand, at ${confidence} confidence.`,
  },
  more: (runs: number) => `${runs} more runs would show it, if not one of them failed.`,
  done: (done: number, runs: number) => `${done} of ${runs} arrivals`,
  stack: 'Margin, spread by spread',
  stackLead: (nominal: string, worst: string, rss: string) =>
    `Margin ${nominal} with every input at its middle; ${worst} with each at its worse end together; ${rss} by the root of the sum of squares.`,
  noStack: 'With every input at its middle it tips at no speed looked at: no stack-up.',
  axis: 'tip limit lost [m/s]',
  label: 'What each spread takes from the tip limit',
  fields: {
    runs: 'arrivals',
    seed: 'seed',
    speedScale: 'sideways speed, scale',
    descentDeviation: 'descent rate, deviation',
    slopeScale: 'slope, scale',
    leanDeviation: 'lean each way, deviation',
    fraction: 'must stand, share',
    confidence: 'at confidence',
  },
  campaign: 'Save the campaign',
} as const;

export const TRADE_CARD = {
  title: 'What buys margin',
  work: 'Try each dimension',
  stop: 'Stop',
  lead: 'The limit is the least speed at which it tips or a leg is used up, whichever comes first. Each dimension alone, from 70 to 130 % of what it is; legs by number. Masses of legs follow two laws of strength and buckling, stated as common practice; everything else keeps its mass.',
  headline: (what: string, to: string, gain: string, mass: string) => `Most: ${what} to ${to} buys ${gain}${mass}`,
  cheapest: (what: string, to: string, gain: string, mass: string) =>
    `Most for each kilogram: ${what} to ${to} buys ${gain}${mass}.`,
  nothing: 'No change tried buys any',
  added: (kilograms: string, per: string) => ` for ${kilograms}, ${per}`,
  noMass: ', with no mass in this model',
  dimension: 'dimension',
  best: 'best tried',
  gain: 'gains',
  adds: 'adds',
  per: 'for each kg',
  soFar: (tried: number) => `${tried} landers simulated`,
} as const;

export const MATRIX_CARD = {
  title: 'How fast sideways, by world and slope',
  headline: (speed: string, world: string, slope: string) => `Least: ${speed} (${world}, ${slope})`,
  hint: 'Least tip limit of all directions, the ground falling the way it travels; descent rate, friction and legs as on the left.',
  soFar: (known: number, all: number) => `${known} of ${all} cases simulated.`,
  world: 'world',
  slope: (deg: string) => `slope ${deg}`,
  none: (upTo: string) => `none to ${upTo}`,
  tips: 'this arrival tips',
  leg: (speed: string) => `leg used up from ${speed}`,
  legAtOnce: 'leg used up at once',
  x: 'slope of the ground [deg]',
  y: 'tips above [m/s]',
  level: 'this arrival',
} as const;

export const GRID_CARD = {
  title: 'Two dimensions against each other',
  work: 'Try the pairs',
  stop: 'Stop',
  lead: 'The limit of each pair, from 70 to 130 % of what each is: ends and middle first, then between.',
  vary: 'Across',
  against: 'Up',
  table: 'As a table, with what each pair gains for its mass',
  limit: 'limit',
  mass: 'mass',
  gain: 'gains',
  per: 'for each kg',
  soFar: (known: number, all: number, across: number, up: number) =>
    `${known} of ${all} landers simulated, a grid of ${across} by ${up}.`,
} as const;

export const SENSITIVITY_CARD = {
  title: 'What each input changes',
  work: 'Change each input',
  stop: 'Stop',
  lead: 'Each input of lander, arrival and spread, a little less and a little more: what it does to the margin, and to the share of the arrivals drawn that stays upright.',
  soFar: (known: number, all: number, runs: number) => `${known} of ${all} changes, ${runs} arrivals drawn for each.`,
} as const;

export const BESIDE = {
  title: 'Two cases side by side',
  keep: 'Keep this one beside',
  swap: 'Swap',
  drop: 'Put it away',
  now: 'now',
  beside: 'beside',
  what: 'what differs',
  same: 'The two are the same.',
  hint: 'Keep the present case, then change something: both are drawn, and what differs is named.',
  tilt: 'least static tilt',
  limit: 'least tip limit',
  halfStance: 'half stance',
} as const;

export const BOARD = {
  title: 'To hand over',
  lead: 'One page with everything about this lander and arrival, to print and hand over: limits, plots, requirement, worst cases, assumptions. The command line makes it.',
  show: 'Report for a board',
  needs: (files: string) => `Save ${files} beside the command first: it reads them.`,
} as const;
