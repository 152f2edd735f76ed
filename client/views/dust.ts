import { groundHeight, type Profile } from '../../engine/ground/index.ts';
import { ramp, scatter, type Sheet } from './sheet.ts';

interface DustCause {
  readonly x: number;
  readonly terrain: Profile;
  /** Of the lowest foot over the ground [m]. */
  readonly height: number;
  /** Thrust as a share of the most. */
  readonly throttle: number;
  /** [m/s²] */
  readonly gravity: number;
}

const TICKS = 90;
/** The engine lifts dust below this height [m]. */
const REACH = 16;

/** Dust as pencil ticks that fly out low from under the engine: in straight throws, as there is no air to hold them. */
export function drawDust(sheet: Sheet, cause: DustCause): void {
  const strength = ramp(cause.height, REACH, 1) * ramp(cause.throttle, 0.04, 0.35);
  if (strength <= 0) return;
  const { pen, camera } = sheet;
  const count = Math.round(TICKS * strength);
  for (let i = 0; i < count; i += 1) {
    const life = 1.1 + 0.9 * scatter(i, 7);
    const clock = sheet.still ? scatter(i, 6) * life : (sheet.time + scatter(i, 6) * life) % life;
    const lap = sheet.still ? 0 : Math.floor((sheet.time + scatter(i, 6) * life) / life);
    const side = i % 2 === 0 ? 1 : -1;
    const out = (3 + 9 * scatter(i, lap + 11)) * (0.5 + 0.5 * strength);
    const up = (0.3 + 1.5 * scatter(i, lap + 23)) * (0.4 + 0.6 * strength);
    const startX = cause.x + side * (0.4 + 1.6 * scatter(i, lap + 5));
    const x = startX + side * out * clock;
    const rise = up * clock - 0.5 * cause.gravity * clock * clock;
    if (rise < 0) continue;
    const y = groundHeight(cause.terrain, startX) + rise + 0.03;
    const speedY = up - cause.gravity * clock;
    const speed = Math.hypot(out, speedY);
    const length = (4 + 5 * scatter(i, 3)) * pen.unit;
    const px = camera.sheetX(x);
    const py = camera.sheetY(y);
    pen.moveTo(px, py);
    pen.lineTo(px - ((side * out) / speed) * length, py + (speedY / speed) * length);
  }
  pen.paint({ stroke: 'pencil', width: 'thin', alpha: 0.55 });
}
