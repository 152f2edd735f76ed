import { assert } from '../assert.ts';
import {
  quarterPeriod,
  rock,
  rockingModel,
  slenderOverturningPulse,
  slenderPeakShare,
  slenderQuarterPeriod,
  type PivotBody,
  type RockingModel,
} from '../pivot/index.ts';
import type { OutsideCheck } from './outsideCheck.ts';
import { AT_LEAST, EQUALS_PRINTED } from './tolerances.ts';

const HOUSNER = 'Housner 1963, Bull. Seism. Soc. Am. 53(2) [Housner1963]';

/** Gravity of the examples [m/s²]. */
const EXAMPLE_GRAVITY = 9.81;
/** b 0.2 m, h 1 m, I_P = 2 m L²: the inertia about the center is then m L². */
const SLENDER: PivotBody = { mass: 1, halfStance: 0.2, centerHeight: 1, inertia: 0.2 * 0.2 + 1 };
/** Short against the swing: the rule is of order 4, and its error lies far below the last printed place. */
const STEP = 1 / 512;

const FORM = { source: HOUSNER, kind: 'form', seen: 'no', ...EQUALS_PRINTED } as const;

export const ROCKING_CHECKS: readonly OutsideCheck[] = [
  {
    ...FORM,
    name: 'rocking quarter period, slender',
    expected: '0.60050',
    unit: 's',
    note: 'b 0.2 m, h 1 m, I_P = 2 m L^2, g 9.81 m/s^2, from rest at half the balance tilt',
    compute: () => slenderQuarterPeriod(slenderModel().toward, halfWay(slenderModel())),
  },
  {
    ...FORM,
    name: 'rocking quarter period, exact',
    expected: '0.60118',
    unit: 's',
    note: 'the same body; elliptic integral',
    compute: () => quarterPeriod(slenderModel().toward, halfWay(slenderModel())),
  },
  {
    ...FORM,
    name: 'rocking quarter period, stepped through time',
    expected: '0.60118',
    unit: 's',
    note: 'the same body; first impact of the stepped motion',
    compute: firstImpact,
  },
  restitution(0.25, 1, '0.911765'),
  restitution(1, 2, '0.700000'),
  decay(1, '0.5506'),
  decay(2, '0.4199'),
  decay(3, '0.3303'),
  decay(4, '0.2641'),
  pulse(1.5, '1.098612'),
  pulse(2, '0.693147'),
  pulse(3, '0.405465'),
  measuredRestitution(5, '0.8952', '0.95 of 0.9423'),
  measuredRestitution(3, '0.8245', '0.97 of 0.8500'),
];

/** The model may keep more of the rate than a real block does, and does: by how much stands among the card's uncertainties. */
function measuredRestitution(aspect: number, expected: string, shares: string): OutsideCheck {
  return {
    ...AT_LEAST,
    name: `impact restitution of a block of aspect ${aspect} on concrete: no less than measured`,
    source: 'ElGawady, Butterworth, Ingham and others, measured over predicted [ElGawady]',
    kind: 'measured',
    seen: 'abstract',
    expected,
    unit: '-',
    note: `measured ${shares}, the value predicted after Housner`,
    compute: () => blockRestitution(1, aspect),
  };
}

function restitution(halfWidth: number, halfHeight: number, expected: string): OutsideCheck {
  return {
    ...FORM,
    name: `impact restitution of a rectangle, b ${halfWidth} h ${halfHeight}`,
    expected,
    unit: '-',
    note: 'share of the rate kept; 1 - 1.5 sin^2 alpha',
    compute: () => blockRestitution(halfWidth, halfHeight),
  };
}

function blockRestitution(halfWidth: number, halfHeight: number): number {
  const inertia = (halfWidth * halfWidth + halfHeight * halfHeight) / 3;
  const body = { mass: 1, halfStance: halfWidth, centerHeight: halfHeight, inertia };
  return rockingModel(body, { gravity: EXAMPLE_GRAVITY }).toward.carryOver;
}

function decay(impacts: number, expected: string): OutsideCheck {
  return {
    ...FORM,
    name: `rocking decay, peak after ${impacts} impact${impacts === 1 ? '' : 's'} over the balance tilt`,
    expected,
    unit: '-',
    note: 'share kept 0.911765, start at 0.8 of the balance tilt',
    compute: () => slenderPeakShare(0.8, 0.911765, impacts),
  };
}

function pulse(acceleration: number, expected: string): OutsideCheck {
  return {
    ...FORM,
    name: `overturning by a pulse ${acceleration} times what lifts the body`,
    expected,
    unit: '-',
    note: 'frequency p times the shortest duration, slender body',
    compute: () => slenderOverturningPulse(acceleration),
  };
}

function slenderModel(): RockingModel {
  return rockingModel(SLENDER, { gravity: EXAMPLE_GRAVITY });
}

function halfWay(model: RockingModel): number {
  return model.toward.balance / 2;
}

function firstImpact(): number {
  const model = slenderModel();
  const run = rock(model, { tilt: halfWay(model), rate: 0 }, { duration: 1, step: STEP });
  const impact = run.events.find((event) => event.kind === 'impact');
  assert(impact !== undefined, 'a body let go at half its balance tilt falls back within a second');
  return impact.time;
}
