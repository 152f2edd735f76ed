import type { TouchdownOutcome } from '../../engine/touchdown/index.ts';

/** What a hall reads on its screen. Beside `en.ts`, which has everything else. */

export const HALL_PAGE = {
  documentTitle: (title: string) => `${title} · Kilter`,
  back: 'Start page',
  fullScreen: 'Full screen',
  place: (at: number, of: number) => `${at} of ${of}`,
  previous: 'Back',
  next: 'Next',
  again: 'From the start',
  keys: 'Space on, ← back, ↑↓ change',
  failed: 'A thread of the page failed. Reload the page.',
  working: 'working …',
  expect: 'What I expect, and why:',
  seen: 'What happened:',
} as const;

export const OWN_SCENES = {
  title: 'Own scenes',
  how: [
    'Scenes are a file of text. Save these, change the file in any editor, open it here.',
    '“npx kilter hall check FILE” says what is wrong, with line and field. The form is levels/schemas/hall.schema.json.',
  ],
  save: 'Save these scenes',
  fileName: 'scenes.json',
  openFile: 'Open a file of scenes',
  notOpened: (name: string, why: string, more: number) =>
    `${name} was not opened: ${why}${more > 0 ? `; and ${more} more` : ''}`,
} as const;

export const HANDOUT = {
  print: 'Handouts',
  printFully: 'Handouts: print one page for each scene',
  head: (title: string, at: number, of: number) => `${title}, ${at} of ${of}`,
  range: (field: string, from: string, to: string, worlds: string) => `${field} from ${from} to ${to}, on ${worlds}`,
} as const;

export const FACTS = {
  feet: (out: string) => `feet ${out} out`,
  center: (up: string) => `center ${up} up`,
  gravity: (world: string, value: string) => `gravity ${value} (${world})`,
  slope: (deg: string) => `ground falls ${deg}`,
  down: (speed: string) => `${speed} down`,
  sideways: (speed: string) => `${speed} sideways`,
  friction: (value: number) => `friction ${value}`,
  turned: (deg: string) => `turned ${deg}`,
  legsGone: (legs: readonly number[]) =>
    legs.length === 0
      ? 'all legs'
      : `${legs.length === 1 ? 'leg' : 'legs'} ${legs.map((leg) => leg + 1).join(', ')} gone`,
} as const;

export const FILM = {
  play: 'Play',
  toEnd: 'To the end',
  time: 'Time since the start',
  clock: (seconds: string) => `${seconds} s`,
  pace: (pace: number) =>
    pace === 1 ? 'at true speed' : pace < 1 ? `slowed ${Number((1 / pace).toFixed(1))} times` : `${pace} times as fast`,
  drawing: (name: string, verdict: string) => `${name}: the lander seen from the side. ${verdict}`,
  notYet: 'Not shown yet how it ends.',
  verdict: {
    upright: 'Stands',
    'tipped downhill': 'Falls, downhill',
    'tipped uphill': 'Falls, uphill',
    overloaded: 'Stands, a leg is used up',
    'timed out': 'Still moving when time was up',
  } satisfies Readonly<Record<TouchdownOutcome, string>>,
} as const;

export const DIAL = {
  ring: 'Drag the ring, press ↑ or ↓, or move the slider.',
  bars: 'Sideways speed at which it tips',
  rigid: (speed: string) => `rigid legs ${speed}`,
  simulated: (speed: string) => `tips from ${speed}`,
  neverUpTo: (speed: string) => `not up to ${speed}`,
  always: 'falls without moving',
  noStance: 'does not stand',
  answer: 'Answer',
  legend: 'Full: simulated, toward its weakest side. Dashed: rigid legs, by formula.',
} as const;

export const FLIGHT = {
  fly: 'I fly',
  watch: 'I watch',
  begin: 'Begin',
  ready: (count: number) => (count === 1 ? '1 phone is ready' : `${count} phones are ready`),
  startsIn: (seconds: number) => `Starts in ${seconds} s`,
  inAir: (count: number) => (count === 0 ? 'All are down' : `${count} in the air`),
  left: (count: number) => (count === 1 ? '1 phone has left' : `${count} phones have left`),
  scan: 'Scan to fly',
  up: (height: string) => `${height} up`,
  paths: (sum: string) => `Section of the ground with the path of every landing. ${sum}`,
  dots: 'Sideways speed at touchdown',
  dotsDrawing: (below: number, above: number) =>
    `${below} touched down below the speed at which they tip, ${above} above it.`,
  tipLimit: 'tips from here',
  beyond: 'twice that',
  none: 'No landing yet',
  endings: {
    stands: (count: number) => (count === 1 ? '1 stands' : `${count} stand`),
    falls: (count: number) => (count === 1 ? '1 falls over' : `${count} fall over`),
    breaks: (count: number) => (count === 1 ? '1 breaks a leg' : `${count} break a leg`),
    elsewhere: (count: number) => `${count} did not land here`,
  },
  // on the phone
  waits: 'You fly. Keep this page open: it begins for everybody at once.',
  watches: 'You watch. Press “I fly” to fly too.',
  asks: 'Do you fly?',
  together: 'The hall flies together: nobody holds it or begins anew.',
  hasBegun: 'The flight has begun. Look at the large screen.',
  leftIt: 'You left the flight. Look at the large screen.',
  tells: 'You are down. Telling the large screen …',
  untold: 'No answer from the server: your landing is not on the large screen.',
  yours: (sum: string) => `${sum} Look at the large screen.`,
  own: {
    stands: 'You stand.',
    falls: 'You fell over.',
    breaks: 'A leg broke.',
    elsewhere: 'You did not land there.',
  },
  speed: (speed: string) => `Sideways at touchdown: ${speed}.`,
  tip: (speed: string) => `It tips from ${speed}.`,
} as const;

export const VOTE = {
  documentTitle: 'Vote · Kilter',
  title: 'Vote',
  none: 'None of them',
  scan: 'Scan to vote',
  typed: (address: string) => `or open ${address}`,
  voted: (count: number) => (count === 1 ? '1 vote' : `${count} votes`),
  handsUp: 'No server here: vote by show of hands.',
  wait: 'Wait for the next question on the large screen.',
  over: 'The vote is over. Look at the large screen.',
  yours: (choice: string) => `Your vote: ${choice}. You can change it until it is shown.`,
  press: 'Press one.',
  lost: 'No answer from the server. Trying again.',
} as const;
