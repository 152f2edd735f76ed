import { groundHeight, type Profile } from '../../engine/ground/index.ts';
import { scatter, type Sheet } from './sheet.ts';

/** Dust that left the ground at one moment from one place. */
export interface Puff {
  /** Moment in the descent [s]. */
  readonly seconds: number;
  /** Place on the ground [m], and from how far to either side of it [m]. */
  readonly x: number;
  readonly half: number;
  /** 0 (none) to 1. */
  readonly strength: number;
  readonly grains: number;
}

/** How one grain leaves the ground [m], [m/s]. */
interface Throw {
  readonly x: number;
  readonly y: number;
  readonly vx: number;
  readonly vy: number;
}

/** Grains leave so fast along the slope, and so much slower away from it [m/s]. */
const ALONG = { least: 2, most: 9 };
const AWAY = { least: 0.15, most: 1.3 };
/** Slope is read over this distance [m]. */
const REACH = 0.5;
/** Grains of one moment where nothing moves: a still hatch. */
const STILL_GRAINS = 60;

/** Grain i of a puff: out to both sides in turn, low along the slope. The same puff throws the same grains on every screen. */
export function throwOf({ seconds, x, half, strength }: Puff, i: number, terrain: Profile): Throw {
  const salt = Math.round(60 * seconds);
  const side = i % 2 === 0 ? 1 : -1;
  const startX = x + side * half * scatter(i, salt + 5);
  const slope = Math.atan(
    (groundHeight(terrain, startX + REACH) - groundHeight(terrain, startX - REACH)) / (2 * REACH),
  );
  const share = 0.4 + 0.6 * strength;
  const along = side * share * (ALONG.least + (ALONG.most - ALONG.least) * scatter(i, salt + 11));
  const away = share * (AWAY.least + (AWAY.most - AWAY.least) * scatter(i, salt + 23) ** 2);
  return {
    x: startX,
    y: groundHeight(terrain, startX),
    vx: along * Math.cos(slope) - away * Math.sin(slope),
    vy: along * Math.sin(slope) + away * Math.cos(slope),
  };
}

/**
 * Where a thrown grain is after a time, as there is no air to hold it [m], [m/s].
 *
 *   x = x₀ + vx t        y = y₀ + vy t − g t² / 2
 */
export function grainAt({ x, y, vx, vy }: Throw, gravity: number, seconds: number): Throw {
  return {
    x: x + vx * seconds,
    y: y + vy * seconds - 0.5 * gravity * seconds * seconds,
    vx,
    vy: vy - gravity * seconds,
  };
}

/** Dust as pencil ticks in flight; what has come down again is ground. `now`: moment in the descent [s]. */
export function drawDust(
  sheet: Sheet,
  cloud: { readonly puffs: readonly Puff[]; readonly now: number; readonly terrain: Profile; readonly gravity: number },
): void {
  const { terrain, gravity } = cloud;
  for (const puff of sheet.still ? cloud.puffs.slice(-1) : cloud.puffs) {
    for (let i = 0; i < (sheet.still ? STILL_GRAINS * puff.strength : puff.grains); i += 1) {
      const thrown = throwOf(puff, i, terrain);
      // up to where a level ground would have it back
      const aloft = (2 * Math.max(0, thrown.vy)) / gravity;
      const grain = grainAt(thrown, gravity, sheet.still ? scatter(i, 6) * aloft : cloud.now - puff.seconds);
      if (grain.y < groundHeight(terrain, grain.x)) continue;
      drawGrain(sheet, grain, 4 + 5 * scatter(i, 3));
    }
  }
  sheet.pen.paint({ stroke: 'pencil', width: 'thin', alpha: 0.55 });
}

/** `length`: of its tick [drafting units]. */
function drawGrain({ pen, camera }: Sheet, { x, y, vx, vy }: Throw, length: number): void {
  const speed = Math.max(1e-6, Math.sqrt(vx * vx + vy * vy));
  const [px, py] = [camera.sheetX(x), camera.sheetY(y) - pen.unit];
  pen.moveTo(px, py);
  pen.lineTo(px - (vx / speed) * length * pen.unit, py + (vy / speed) * length * pen.unit);
}
