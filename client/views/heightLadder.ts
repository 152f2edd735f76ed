import { letter } from './labels.ts';
import { ramp, type Sheet } from './sheet.ts';

/** Heights from rung to rung, each a whole number of the one before. */
const STEPS = [0.5, 1, 5, 10, 50, 100, 500];
/** Heights from figure to figure. */
const FIGURES = [1, 2, 5, 10, 20, 50, 100, 200, 500];
/** Rungs nearer to one another than this are not there, and fully so from the other on [drafting units]. */
const FADE_FROM = 5;
const FADE_TO = 16;
/** Figures keep so far apart at least [drafting units]. */
const APART = 46;
/** From the edge of the free part of the sheet; half of the staff's width; rungs and the longer ones at figures [drafting units]. */
const INSET = 28;
const HALF = 2.5;
const RUNG = 6;
const LONG_RUNG = 11;
/** It is gone at the ground, and fully there from this height on [m]. */
const THERE = 0.6;

/** One height on the ladder. */
interface Rung {
  /** Over the ground below the lander, in the viewer's unit. */
  readonly at: number;
  /** 0 (not there) to 1. */
  readonly strength: number;
  readonly hasFigure: boolean;
}

/** The rungs from the ground up to a height, the lowest first. `perUnit`: drafting units on the sheet for one unit of height. */
export function rungsUpTo(top: number, perUnit: number): readonly Rung[] {
  const figured = figureStep(perUnit);
  const rungs: Rung[] = [];
  const [finest = 1] = STEPS.filter((step) => strengthOf(step, perUnit) > 0);
  for (let i = 0; i * finest <= top; i += 1) {
    const at = i * finest;
    const step = STEPS.findLast((one) => at % one === 0) ?? finest;
    // the ground needs no figure
    rungs.push({ at, strength: strengthOf(step, perUnit), hasFigure: at > 0 && at % figured === 0 });
  }
  return rungs;
}

function strengthOf(step: number, perUnit: number): number {
  return ramp(step * perUnit, FADE_FROM, FADE_TO);
}

function figureStep(perUnit: number): number {
  return FIGURES.find((step) => step * perUnit >= APART) ?? 500;
}

/**
 * A ladder of heights at the edge of the sheet, over the ground straight below the lander: its rungs run past whoever comes down, and a mark with a
 * dotted line shows where the feet are. It stands on what is believed where the lander is believed.
 */
export function drawHeightLadder(
  sheet: Sheet,
  reading: {
    /** Ground below the lander, the feet over it, and across [m]. */
    readonly groundY: number;
    readonly height: number;
    readonly x: number;
    /** The viewer's unit of length [m], and a height in words. */
    readonly unit: number;
    readonly format: (meters: number, digits: 0) => string;
  },
): void {
  const { pen, camera } = sheet;
  const alpha = ramp(reading.height, 0, THERE);
  if (alpha === 0) return;
  const x = camera.size.covered.left + INSET * pen.unit;
  const perUnit = camera.framing.scale * reading.unit;
  const yOf = (at: number) => camera.sheetY(reading.groundY + at * reading.unit);
  const top = (camera.sectionY(0) - reading.groundY) / reading.unit;
  const rungs = rungsUpTo(top, perUnit / pen.unit);
  drawStaff(sheet, { x, yOf, top, step: figureStep(perUnit / pen.unit), alpha });
  for (const { at, strength, hasFigure } of rungs) {
    if (strength === 0) continue;
    const y = yOf(at);
    pen.moveTo(x + HALF * pen.unit, y);
    pen.lineTo(x + (HALF + (hasFigure ? LONG_RUNG : RUNG)) * pen.unit, y);
    pen.paint({ stroke: 'pencil', width: hasFigure ? 'thin' : 'hair', alpha: alpha * strength });
    if (!hasFigure || alpha < 1) continue;
    letter(sheet, {
      name: `rung ${at}`,
      rank: 8,
      words: reading.format(at * reading.unit, 0),
      lettering: { size: 13, tone: 'pencil', halo: 'paper' },
      places: [{ x: x + (HALF + LONG_RUNG + 4) * pen.unit, y: y + 4.5 * pen.unit }],
      mayGo: true,
      isFixed: true,
    });
  }
  drawFeetMark(sheet, { x, y: yOf(reading.height / reading.unit), to: camera.sheetX(reading.x), alpha });
}

/** A staff of blocks, in turn filled and open, each from figure to figure. */
function drawStaff(
  { pen }: Sheet,
  staff: {
    readonly x: number;
    readonly yOf: (at: number) => number;
    readonly top: number;
    readonly step: number;
    readonly alpha: number;
  },
): void {
  const { x, yOf, alpha, step } = staff;
  const half = HALF * pen.unit;
  const box = (from: number, to: number) => {
    pen.moveTo(x - half, yOf(from));
    pen.lineTo(x + half, yOf(from));
    pen.lineTo(x + half, yOf(to));
    pen.lineTo(x - half, yOf(to));
    pen.close();
  };
  box(0, staff.top);
  pen.paint({ fill: 'card', stroke: 'pencil', width: 'hair', alpha });
  for (let i = 1; i * step <= staff.top; i += 2) box(i * step, Math.min((i + 1) * step, staff.top));
  pen.paint({ fill: 'pencil', alpha: 0.55 * alpha });
}

/** Where the feet are: a filled mark at the staff, and a dotted line to them. */
function drawFeetMark(
  { pen }: Sheet,
  mark: { readonly x: number; readonly y: number; readonly to: number; readonly alpha: number },
): void {
  const { x, y, alpha } = mark;
  const tip = x - HALF * pen.unit;
  pen.moveTo(x + (HALF + LONG_RUNG) * pen.unit, y);
  pen.lineTo(mark.to, y);
  pen.paint({ stroke: 'pencil', width: 'hair', dash: 'dotted', alpha: 0.8 * alpha });
  pen.moveTo(tip, y);
  pen.lineTo(tip - 11 * pen.unit, y - 5.5 * pen.unit);
  pen.lineTo(tip - 11 * pen.unit, y + 5.5 * pen.unit);
  pen.close();
  pen.paint({ fill: 'ink', alpha });
}
