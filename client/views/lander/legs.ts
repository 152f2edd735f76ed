import type { Stencil } from '../../ink/stencil.ts';
import type { Figure } from './figure.ts';

interface BodySpot {
  readonly x: number;
  readonly z: number;
}

/** Shares of a leg's length, from the foot up: bare rod, then the crush cartridge, then the housing. */
const ROD = 0.16;
/** Folds of the crush cartridge. */
const FOLDS = 9;

/**
 * One leg: a housing that narrows from the hip, and between its mouth and a collar on the rod the crush cartridge, a
 * folded sleeve whose folds close up as it is used. What is crushed is seen, not only told.
 */
export function drawLeg(
  stencil: Stencil,
  figure: Figure,
  leg: { readonly side: -1 | 1; readonly foot: BodySpot; readonly padTilt: number; readonly broken: boolean },
): void {
  const hip = { x: leg.side * figure.hip.x, z: figure.hip.z };
  const fresh = Math.hypot(figure.halfStance - figure.hip.x, figure.hip.z);
  const length = Math.hypot(leg.foot.x - hip.x, leg.foot.z - hip.z);
  if (length === 0) return;
  if (leg.broken) {
    drawSnapped(stencil, figure, { ...leg, hip, length, size: fresh * 0.042 });
    return;
  }
  const along = { x: (hip.x - leg.foot.x) / length, z: (hip.z - leg.foot.z) / length };
  const across = { x: -along.z, z: along.x };
  const at = (distance: number, offset: number): [number, number] => [
    leg.foot.x + along.x * distance + across.x * offset,
    leg.foot.z + along.z * distance + across.z * offset,
  ];
  const size = fresh * 0.042;
  const collar = ROD * fresh;
  // the housing keeps its length, so the cartridge takes up what the leg has lost
  const housing = Math.max(0.3 * fresh, (1 - ROD) * fresh - 1.25 * Math.max(figure.stroke, 0.12 * fresh));
  const mouth = Math.max(collar + 0.02 * fresh, length - housing);

  // brace from the body's lower rim to the middle of the housing
  const knee = at(mouth + 0.42 * (length - mouth), 0);
  const low = figure.profile.filter((point) => point.z < 0.8 * figure.hip.z);
  const floor = low.toSorted((a, b) => b.half - a.half)[0] ?? { half: figure.hip.x, z: 0.5 * figure.hip.z };
  const rim: [number, number] = [leg.side * 0.55 * floor.half, floor.z + 0.04 * fresh];
  stencil.outline([rim, knee], false).paint({ stroke: 'ink', width: 'thick' });
  stencil.outline([rim, knee], false).paint({ stroke: 'card', width: 'thin' });
  // rod
  stencil.outline([at(0, -size * 0.42), at(mouth, -size * 0.42), at(mouth, size * 0.42), at(0, size * 0.42)]);
  stencil.paint({ fill: 'card', stroke: 'ink', width: 'edge' });
  drawCartridge(stencil, at, { collar, mouth, size });
  // housing, with holes that lighten it
  stencil.outline([at(mouth, -size), at(length, -size * 1.75), at(length, size * 1.75), at(mouth, size)]);
  stencil.paint({ fill: 'card', stroke: 'ink', width: 'outline' });
  for (const share of [0.2, 0.45, 0.72]) {
    const [x, z] = at(mouth + share * (length - mouth), 0);
    stencil.circle(x, z, size * (0.42 + 0.5 * share)).paint({ fill: 'paper', stroke: 'ink', width: 'thin' });
  }
  stencil.outline([at(mouth, -size * 1.25), at(mouth, size * 1.25)], false).paint({ stroke: 'ink', width: 'thick' });
  drawPad(stencil, figure, leg.foot, leg.padTilt, size);
}

/** A leg that gave way: the stump at the hip, a jagged break, and the lower part hanging off it, bent outward. */
function drawSnapped(
  stencil: Stencil,
  figure: Figure,
  leg: {
    readonly side: -1 | 1;
    readonly foot: BodySpot;
    readonly padTilt: number;
    readonly hip: BodySpot;
    readonly length: number;
    readonly size: number;
  },
): void {
  const { side, foot, hip, size } = leg;
  const bend = Math.max(0.35 * leg.length, 3.5 * size);
  const knee = { x: (hip.x + foot.x) / 2 + side * bend * 0.6, z: (hip.z + foot.z) / 2 + bend * 0.55 };
  const bar = (from: BodySpot, to: BodySpot, half: number) => {
    const long = Math.max(1e-6, Math.hypot(to.x - from.x, to.z - from.z));
    const across = { x: (-(to.z - from.z) / long) * half, z: ((to.x - from.x) / long) * half };
    stencil.outline([
      [from.x - across.x, from.z - across.z],
      [to.x - across.x, to.z - across.z],
      [to.x + across.x, to.z + across.z],
      [from.x + across.x, from.z + across.z],
    ]);
    stencil.paint({ fill: 'card', stroke: 'ink', width: 'outline' });
  };
  bar(hip, knee, 1.4 * size);
  bar(knee, foot, 0.7 * size);
  drawPad(stencil, figure, foot, leg.padTilt, size);
  const jagged: [number, number][] = [-2, -1, 0, 1, 2].map((step) => [
    knee.x + step * 1.3 * size,
    knee.z + (step % 2 === 0 ? 1.6 : -1.6) * size,
  ]);
  stencil.outline(jagged, false).paint({ stroke: 'card', width: 'heavy' });
  stencil.outline(jagged, false).paint({ stroke: 'ink', width: 'thick' });
}

function drawCartridge(
  stencil: Stencil,
  at: (distance: number, offset: number) => [number, number],
  extent: { readonly collar: number; readonly mouth: number; readonly size: number },
): void {
  const { collar, mouth, size } = extent;
  const wide = size * 1.35;
  stencil.outline([at(collar, -size), at(collar, size), at(mouth, size), at(mouth, -size)]);
  stencil.paint({ fill: 'shade' });
  const folds: [number, number][] = [];
  for (let i = 0; i <= 2 * FOLDS; i += 1) {
    folds.push(at(collar + ((mouth - collar) * i) / (2 * FOLDS), i % 2 === 0 ? -wide : wide));
  }
  stencil.outline(folds, false).paint({ stroke: 'ink', width: 'thin' });
  for (const offset of [-wide, wide]) {
    stencil.outline([at(collar, offset), at(mouth, offset)], false).paint({ stroke: 'ink', width: 'hair' });
  }
  stencil.outline([at(collar, -wide * 1.1), at(collar, wide * 1.1)], false).paint({ stroke: 'ink', width: 'thick' });
}

/** A dished pad on a ball: the sole is at the foot, the rim turns up. */
function drawPad(stencil: Stencil, figure: Figure, foot: BodySpot, tilt: number, size: number): void {
  const cos = Math.cos(tilt);
  const sin = Math.sin(tilt);
  const at = (x: number, z: number): [number, number] => [foot.x + x * cos - z * sin, foot.z + x * sin + z * cos];
  const half = figure.padRadius;
  const rise = Math.min(0.3 * half, 1.4 * size);
  const [ballX, ballZ] = at(0, rise + 0.5 * size);
  stencil.circle(ballX, ballZ, size * 0.85).paint({ fill: 'card', stroke: 'ink', width: 'edge' });
  stencil.outline([at(-half, rise * 0.9), at(-half * 0.78, 0), at(half * 0.78, 0), at(half, rise * 0.9)]);
  stencil.paint({ fill: 'card', stroke: 'ink', width: 'outline' });
  stencil.outline([at(-half * 0.78, 0), at(half * 0.78, 0)], false).paint({ stroke: 'ink', width: 'heavy' });
}

/** Legs that stand between the outer two as the section sees them, behind the body and in thin lines. */
export function drawInnerLegs(stencil: Stencil, figure: Figure, left: BodySpot, right: BodySpot): void {
  for (const foot of figure.innerFeet) {
    const share = (foot / figure.halfStance + 1) / 2;
    const z = left.z + (right.z - left.z) * share;
    const hipX = foot * (figure.hip.x / figure.halfStance);
    const half = 0.03 * figure.hip.z;
    stencil.outline([
      [foot - half * 0.6, z + half],
      [hipX - half * 1.5, figure.hip.z],
      [hipX + half * 1.5, figure.hip.z],
      [foot + half * 0.6, z + half],
    ]);
    stencil.paint({ fill: 'shade', stroke: 'ink', width: 'thin' });
    stencil
      .line(foot - figure.padRadius * 0.8, z, foot + figure.padRadius * 0.8, z)
      .paint({ stroke: 'ink', width: 'outline' });
  }
}
