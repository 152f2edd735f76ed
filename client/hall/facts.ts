import { toRadians } from '../../engine/math/index.ts';
import { findWorld } from '../../engine/worlds.ts';
import { isLying } from '../../engine/structure/index.ts';
import { shapeOf, type StudyCase } from '../../engine/study/index.ts';
import {
  findLander,
  findSite,
  findStart,
  type DialScene,
  type FlightScene,
  type HallArrival,
} from '../../levels/index.ts';
import { FACTS, FLIGHT } from '../text/hall.ts';
import { degreesOf, metersPerSecond, quantity } from '../workbench/figures.ts';
import type { FilmedTouchdown } from '../workbench/studies.ts';

/** The case of the engine that an arrival asks about. */
function caseOf(arrival: HallArrival): StudyCase {
  const { lander, missing, slopeDeg, descentRate, horizontalSpeed, friction } = arrival;
  return { lander, missing, slopeDeg, descentRate, horizontalSpeed, friction, gravity: gravityOf(arrival.world) };
}

/** The touchdown that a film shows. */
export function touchdownOf(arrival: HallArrival): FilmedTouchdown {
  const { horizontalSpeed, descentRate, yawDeg } = arrival;
  return { asked: caseOf(arrival), touchdown: { horizontalSpeed, descentRate, yaw: toRadians(yawDeg) } };
}

export function gravityOf(world: string): number {
  const found = findWorld(world);
  if (found === undefined) throw new Error(`There is no world named ${world}`);
  return found.gravity;
}

/** What is given for all arrivals of a film, and what each has of its own. */
export function factsOf(arrivals: readonly HallArrival[]): {
  readonly shared: string;
  readonly own: readonly string[];
} {
  const lists = arrivals.map((arrival) => [...givenOf(arrival), ...detailsOf(arrival)]);
  const [first = []] = lists;
  const always = givenOf(arrivals[0]!).length;
  const isShared = (i: number) => lists.every((list) => list[i] === first[i]);
  return {
    // what is the same everywhere is said of the touchdown, not of how the lander is built
    shared: first.filter((_, i) => i < always && isShared(i)).join(', '),
    own: lists.map((list) => list.filter((words, i) => words !== '' && !isShared(i)).join(', ')),
  };
}

function givenOf({ lander, world, slopeDeg, descentRate, horizontalSpeed }: HallArrival): readonly string[] {
  return [
    lander.name,
    FACTS.gravity(findWorld(world)?.name ?? world, quantity(gravityOf(world), 'm/s²')),
    FACTS.slope(degreesOf(slopeDeg, 0)),
    FACTS.down(metersPerSecond(descentRate, 1)),
    FACTS.sideways(metersPerSecond(horizontalSpeed, 1)),
  ];
}

function detailsOf({ lander, missing, friction, yawDeg }: HallArrival): readonly string[] {
  const { footRadius, centerHeight } = shapeOf(lander);
  return [
    // the farthest foot of a lander on its side says nothing about how wide it stands
    isLying(lander) ? '' : FACTS.feet(quantity(footRadius, 'm')),
    FACTS.center(quantity(centerHeight, 'm')),
    FACTS.legsGone(missing),
    FACTS.friction(friction),
    FACTS.turned(degreesOf(yawDeg, 0)),
  ];
}

export function factsOfDial({ lander, slopeDeg, descentRate, friction }: DialScene): string {
  const ground = FACTS.slope(degreesOf(slopeDeg, 0));
  return [lander.name, ground, FACTS.down(metersPerSecond(descentRate, 1)), FACTS.friction(friction)].join(', ');
}

export function factsOfFlight({ descent: { lander, site, world, start } }: FlightScene): string {
  const { height = 0, drift = 0, descentRate = 0 } = findStart(start) ?? {};
  return [
    findLander(lander)?.name,
    findSite(site)?.name,
    FACTS.gravity(findWorld(world)?.name ?? world, quantity(gravityOf(world), 'm/s²')),
    FLIGHT.up(quantity(height, 'm')),
    FACTS.down(metersPerSecond(descentRate, 1)),
    FACTS.sideways(metersPerSecond(drift, 1)),
  ].join(', ');
}
