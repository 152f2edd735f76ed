/** Legs: plausible lengths and forces, and a footprint that the lander stands on. */
import { report, type ProblemList } from '../fieldReader.ts';
import { length3, subtract3 } from '../math/index.ts';
import { supportPolygon } from '../statics/supportPolygon.ts';
import { checkBound, round } from './checkBound.ts';
import type { BodyPoint, Lander, Leg } from './lander.ts';
import { LEAST_STANCE } from './landerRanges.ts';
import type { MassProperties } from './massProperties.ts';

export function checkLegs(list: ProblemList, lander: Lander, bulk: MassProperties): void {
  lander.legs.forEach((leg, index) => checkLegLengths(list, leg, index));
  checkLegForces(list, lander, bulk.mass);
  checkProbe(list, lander);
  checkFootpadsApart(list, lander.legs);
  checkFootprint(list, lander, bulk.center);
}

function legLength(leg: Leg): number {
  return length3(subtract3(leg.hip, leg.footpad));
}

function strokeOf(leg: Leg): number {
  return leg.stages.reduce((sum, stage) => sum + stage.stroke, 0);
}

function checkLegLengths(list: ProblemList, leg: Leg, index: number): void {
  const length = legLength(leg);
  const of = `over length of leg ${index}`;
  checkBound(list, strokeOf(leg) / length, 'strokeShare', { path: 'legs.stages', what: `stroke of all stages ${of}` });
  const diameter = { path: 'legs.footpadDiameter', what: `footpad diameter ${of}` };
  checkBound(list, leg.footpadDiameter / length, 'footpadShare', diameter);
  if (leg.secondary === undefined) return;
  const secondary = { path: 'legs.secondary.stroke', what: `stroke ${of}` };
  checkBound(list, leg.secondary.stroke / length, 'strokeShare', secondary);
}

/** All legs are built alike, so the first stands for all. */
function checkLegForces(list: ProblemList, lander: Lander, mass: number): void {
  const [leg] = lander.legs;
  const [first] = leg?.stages ?? [];
  if (leg === undefined || first === undefined) return;
  leg.stages.forEach((stage, index) => {
    const path = `legs.stages[${index}].force`;
    checkBound(list, (lander.legs.length * stage.force) / mass, 'crushDeceleration', {
      path,
      what: 'crush force of all legs over mass',
    });
    const before = leg.stages[index - 1]?.force ?? 0;
    if (stage.force < before)
      report(list, 'falling-stages', {
        path,
        expected: `at least the stage before, ${before} N`,
        came: `${stage.force} N`,
      });
  });
  const shortening = 'elastic shortening under the first crush force, over the stroke';
  checkBound(list, first.force / leg.stiffness / strokeOf(leg), 'elasticShare', {
    path: 'legs.stiffness',
    what: shortening,
  });
  const bottomed = { path: 'legs.bottomedStiffness', what: 'stiffness over that before crushing' };
  checkBound(list, leg.bottomedStiffness / leg.stiffness, 'bottomedStiffening', bottomed);
  if (leg.secondary === undefined) return;
  const { force, stroke, stiffness } = leg.secondary;
  checkBound(list, force / first.force, 'secondaryForce', {
    path: 'legs.secondary.force',
    what: 'force over that of the first stage',
  });
  checkBound(list, force / stiffness / stroke, 'elasticShare', { path: 'legs.secondary.stiffness', what: shortening });
}

function checkProbe(list: ProblemList, lander: Lander): void {
  const [leg] = lander.legs;
  if (leg === undefined || lander.probeLength === 0) return;
  checkBound(list, lander.probeLength / legLength(leg), 'probeShare', {
    path: 'probeLength',
    what: '0, or probe length over length of a leg',
  });
}

/** The lander stands on level ground: its footpads span an area and the center of mass lies above it. */
function checkFootprint(list: ProblemList, lander: Lander, center: BodyPoint): void {
  const feet = lander.legs.map((leg) => [leg.footpad[0], leg.footpad[1]] as const);
  const polygon = supportPolygon(feet, [center[0], center[1]]);
  if (polygon.kind === 'line') {
    report(list, 'footpads-in-line', { path: 'legs', expected: 'footpads that span an area', came: 'all in one line' });
    return;
  }
  const nearest = polygon.edges.reduce((least, edge) => (edge.distance < least.distance ? edge : least));
  if (nearest.distance >= LEAST_STANCE) return;
  report(list, 'center-outside-footprint', {
    path: 'legs',
    expected: 'a footprint with the center of mass above it, so that the lander stands on level ground',
    came: `center of mass at ${round(center[0])}, ${round(center[1])}, ${round(-nearest.distance)} m outside the edge from footpad ${nearest.from} to ${nearest.to}`,
  });
}

function checkFootpadsApart(list: ProblemList, legs: readonly Leg[]): void {
  legs.forEach((leg, index) => {
    for (const [other, earlier] of legs.slice(0, index).entries()) {
      const apart = length3(subtract3(leg.footpad, earlier.footpad));
      if (apart >= leg.footpadDiameter) continue;
      report(list, 'duplicate-footpad', {
        path: 'legs',
        expected: `footpads at least a diameter apart, ${leg.footpadDiameter} m`,
        came: `footpads ${other} and ${index}, ${round(apart)} m apart`,
      });
    }
  });
}
