import type { Role } from '../../engine/table/index.ts';
import { stepWords } from './facing.ts';

/** What a person reads of drills: choosing one, its brief, and how it is played. Beside `en.ts`, which has everything else. */

export const DRILL_CHOICE = {
  title: 'Run a drill',
  lead: 'A crew comes down by instruments, and something goes wrong. Run it for a crew, or fly it alone.',
  level: (level: number) => `level ${level} of 4`,
  minutes: (minutes: number) => `about ${minutes} min with brief and talk`,
  flown: (lander: string, site: string, world: string) => `${lander}, ${site}, ${world}`,
  open: 'Open a table and run it',
  openHint: 'You see what is true and deal what goes wrong. The crew joins with a code.',
  alone: 'Fly it alone',
  aloneHint: 'From one seat. Stand-ins take the others, and events come by themselves.',
  seat: 'Your seat',
  back: 'Back',
} as const;

export const ROLE_NAMES: Readonly<Record<Role, string>> = {
  crew: 'crew',
  facilitator: 'facilitator',
  evaluator: 'evaluator',
  observer: 'observer',
  'room screen': 'room screen',
};

export const BRIEF = {
  label: 'Brief',
  kind: 'Drill',
  situation: 'Situation',
  objectives: 'What to learn',
  rules: 'Rule card',
  rulesNote: 'Yours to hold the crew to.',
  again: 'The brief once more',
  people: 'Who is here',
  read: 'I have read it',
  readIt: 'has read it',
  reads: 'is reading',
  begins: (name: string) => `${name} begins the descent.`,
  ready: (read: number, of: number) =>
    of === 0 ? 'No crew is here yet.' : `${read} of ${of} in the crew have read it.`,
  flown: (lander: string, site: string) => `${lander} over ${site}`,
  instruments: (plan: string) => `${plan}, flown by instruments.`,
} as const;

export const REAL_STOP = {
  button: 'Real-world stop',
  why: 'Only for what is real: somebody is unwell, an alarm, a fire. Everything stands, for everybody.',
  act: 'Stop everything',
  no: 'No, go on',
  title: 'Real-world stop',
  calledBy: (name: string) => `${name} called it. This is no part of the exercise.`,
  stands: 'Everything stands. See to what is real first.',
  lift: 'Lift the stop',
  liftHint: 'A descent that ran is then on hold.',
  waits: (name: string) => `${name} lifts it when all is well.`,
  waitsRunner: 'Whoever runs the table',
  end: 'End the descent',
} as const;

export const TURN = {
  label: 'Turn',
  laying: 'The clock stands. Lay your orders.',
  layingAlone: 'The clock stands until the orders are turned over.',
  faceDown: 'Your orders, face down',
  awaited: (seats: string) => `Awaited: ${seats}.`,
  allIn: 'Every seat has laid an order.',
  takeBack: 'Take back',
  takeBackFully: 'Take back: pick up the orders that you laid',
  turnOver: 'Turn over',
  turnOverFully: 'Turn over: play the orders for four seconds',
  playing: (left: string) => `Orders turned over: ${left} to play.`,
  aloud: 'The orders are turned over.',
} as const;

export const LAID = {
  judged: (source: string, judgment: string) => `${source}: ${judgment}`,
  realign: 'align the inertial unit',
  ceiling: (most: string) => `thrust ceiling ${most}`,
  armed: (on: boolean) => (on ? 'arm the cut-off' : 'disarm the cut-off'),
  fire: 'fire the cut-off',
  cutAtContact: (on: boolean) => `cut at contact ${on ? 'on' : 'off'}`,
  line: (shut: boolean) => (shut ? 'shut a feed line' : 'open the feed line'),
  spot: 'mark a spot',
  clearSpot: 'clear the spot',
  ground: (ground: string) => `the ground is ${ground}`,
  limit: (limit: string) => `limit ${limit}`,
  facing: (steps: number) => `turn the lander: ${stepWords(steps)}`,
  descent: (rate: string) => `descent ${rate}`,
  drift: (drift: string) => `drift ${drift}`,
  lean: (lean: string) => `lean ${lean}`,
  abort: 'give the landing up',
} as const;

export const DEALT = {
  label: 'Cards dealt to you',
  aside: 'Lay aside',
  asideFully: (text: string) => `Lay aside: ${text}`,
  aloud: (text: string) => `A card for you: ${text}`,
} as const;
