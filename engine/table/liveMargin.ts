import { staticTiltOf } from '../pivot/tripLimit.ts';
import type { DescentSetup, DescentState } from '../world/descent.ts';
import { layOutSection } from '../world/layOutSection.ts';
import type { SectionLander } from '../world/sectionLander.ts';
import { pivotBodyAt, travelOf } from './closedForm.ts';
import { leastLimit, type BeyondTable, type LimitTable, type Span } from './limitTable.ts';
import { bandOf, calloutOf } from './marginBand.ts';
import { predictContact, type PredictedContact } from './predictContact.ts';
import type { LiveMargin, NoMargin, PredictedMargin } from './scorecardTypes.ts';
import type { TablePlan } from './tableTypes.ts';

/**
 * A gauge of the margin at the contact that is coming: where the lander will meet the ground, how fast, on which slope, at the attitude that it has or is
 * told to take, against the table of limits that the plan brings. Laid out once a descent; reading it simulates nothing.
 */
export function createMarginGauge({ setup, limits }: TablePlan): (state: DescentState) => LiveMargin {
  const sectionOf = createSections(setup);
  return (state) => {
    const section = sectionOf(state);
    const tiltLeft = staticTiltOf(pivotBodyAt(section, state.mass)) + travelOf(state) * state.angle;
    const read = isDown(state) ? 'on the ground' : predict(state, section);
    return typeof read === 'string' ? { without: read, tiltLeft } : { predicted: read, tiltLeft };
  };

  function predict(state: DescentState, section: SectionLander): PredictedMargin | NoMargin {
    if (limits === undefined) return 'no table';
    const contact = predictContact(setup, section.halfStance, state);
    return typeof contact === 'string' ? contact : marginAt(limits, state, contact);
  }
}

/** Tip limits of a contact that is predicted, for travel to either side [m/s]; absent beyond the table. */
export interface SideLimits {
  readonly left?: number;
  readonly right?: number;
  readonly contact: PredictedContact;
}

/** A gauge of the limits to both sides where the lander will come down if it goes on as it moves now; undefined where nothing can be said. */
export function createSideGauge({ setup, limits }: TablePlan): (state: DescentState) => SideLimits | undefined {
  const sectionOf = createSections(setup);
  return (state) => {
    if (limits === undefined || isDown(state)) return undefined;
    const contact = predictContact(setup, sectionOf(state).halfStance, state);
    if (typeof contact === 'string') return undefined;
    const [left, right] = ([-1, 1] as const).map((direction) => limitToward(limits, state, contact, direction));
    return {
      ...(typeof left === 'number' && { left }),
      ...(typeof right === 'number' && { right }),
      contact,
    };
  };
}

/** The section of a descent as far as it has turned: each is laid out when it is first asked for. */
function createSections({ lander, propellant }: DescentSetup): (state: DescentState) => SectionLander {
  const laid = new Map([[0, layOutSection(lander, propellant)]]);
  return ({ facing }) => {
    const steps = facing?.steps ?? 0;
    const section = laid.get(steps) ?? layOutSection(lander, propellant, steps);
    laid.set(steps, section);
    return section;
  };
}

const BEYOND: Readonly<Record<BeyondTable, NoMargin>> = {
  slope: 'too steep',
  descentRate: 'too fast',
  lean: 'turned too far',
  mass: 'no table',
};

function marginAt(table: LimitTable, state: DescentState, contact: PredictedContact): PredictedMargin | NoMargin {
  const { x, seconds, descentRate, slope } = contact;
  const limit = limitToward(table, state, contact, travelOf({ vx: state.vx, slope }));
  if (typeof limit === 'string') return BEYOND[limit];
  const speed = Math.abs(state.vx);
  const utilisation = limit > 0 ? speed / limit : Infinity;
  const band = bandOf(utilisation);
  const margin = { limit, speedMargin: limit - speed, utilisation, band, callout: calloutOf(band) };
  return { ...margin, x, seconds, descentRate, slope };
}

function limitToward(
  table: LimitTable,
  state: DescentState,
  { descentRate, slopes }: PredictedContact,
  direction: 1 | -1,
): number | BeyondTable {
  const told = (state.commanded.tiltDeg * Math.PI) / 180;
  return leastLimit(table, {
    slope: toward(direction, slopes),
    descentRate: [descentRate, descentRate],
    lean: toward(direction, [Math.min(state.angle, told), Math.max(state.angle, told)]),
    mass: [state.mass, state.mass],
  });
}

/** Counter-clockwise angles as falls, or leans, toward the travel. */
function toward(direction: 1 | -1, [least, most]: Span): Span {
  return direction === 1 ? [-most, -least] : [least, most];
}

function isDown({ phase }: DescentState): boolean {
  return phase === 'contact' || phase === 'settling' || phase === 'at rest';
}
