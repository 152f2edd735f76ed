import { massProperties, type Lander } from '../../engine/lander/index.ts';
import { convexOutline } from '../../engine/statics/index.ts';
import type { StudyCase } from '../../engine/study/index.ts';
import type { TouchdownSample } from '../../engine/touchdown/index.ts';
import { SvgPen } from '../ink/svgPen.ts';
import { drawArrow } from '../views/arrow.ts';

type Vector = readonly [number, number, number];

interface SideSheet {
  readonly width: number;
  readonly height: number;
  /** Farthest point of the largest lander that is drawn to the same scale [m]; default: of this one. */
  readonly reach?: number;
  /** Pixels of a drafting unit, for sheets that are seen from afar; default 1. */
  readonly unit?: number;
  /** An arrow shows where it is heading, as long as this for 1 m/s [px]; default: there is none. */
  readonly perSpeed?: number;
}

const VIEW: SideSheet = { width: 566, height: 300 };

/** From the center of mass to the farthest point of the lander [m]. */
export function reachOf(lander: Lander): number {
  const { center } = massProperties(lander);
  const points = [...lander.hull, ...lander.legs.map(({ footpad }) => footpad)];
  return Math.max(...points.map((point) => Math.hypot(...minus(point, center))));
}

/** What is seen of one. */
export type SeenSample = Pick<TouchdownSample, 'position' | 'velocity' | 'attitude' | 'strokes'>;

/**
 * The lander of a simulated touchdown at one instant, seen across its direction of travel: world x to the right, z up. Its hull as an
 * outline, each leg as short as it was crushed.
 */
export function drawSide(
  { lander, missing }: Pick<StudyCase, 'lander' | 'missing'>,
  samples: readonly SeenSample[],
  at: number,
  slope: number,
  sheet: SideSheet = VIEW,
): { readonly markup: string; readonly viewBox: string } {
  const { center } = massProperties(lander);
  const sample = samples[at]!;
  const reach = sheet.reach ?? reachOf(lander);
  const scale = Math.min(sheet.height / 2.5, sheet.width / 2.5) / reach;
  const [cx, , cz] = sample.position;
  // the ground runs through the lowest point of the first sample, as the simulation lays it
  const x = (worldX: number) => sheet.width / 2 + (worldX - cx) * scale;
  const groundAt = (worldX: number) => -Math.tan(slope) * worldX;
  const middle = Math.max(cz, groundAt(cx) + 0.55 * reach);
  const y = (worldZ: number) => sheet.height * 0.52 - (worldZ - middle) * scale;
  const place = (point: Vector): readonly [number, number] => {
    const [px, , pz] = turned(sample.attitude, minus(point, center));
    return [x(cx + px), y(cz + pz)];
  };
  const pen = new SvgPen(sheet.unit ?? 1, 'side');
  const [left, right] = [cx - sheet.width / scale, cx + sheet.width / scale];
  pen.moveTo(x(left), y(groundAt(left)));
  pen.lineTo(x(right), y(groundAt(right)));
  pen.lineTo(x(right), sheet.height + 400);
  pen.lineTo(x(left), sheet.height + 400);
  pen.close();
  pen.paint({ fill: 'soil' });
  pen.moveTo(x(left), y(groundAt(left)));
  pen.lineTo(x(right), y(groundAt(right)));
  pen.paint({ stroke: 'ink', width: 'thick' });
  // every meter of the ground, so that a slide is seen
  for (let meter = Math.ceil(left); meter < right; meter++) {
    pen.moveTo(x(meter), y(groundAt(meter)));
    pen.lineTo(x(meter) - 5, y(groundAt(meter)) + 9);
  }
  pen.paint({ stroke: 'hatch', width: 'hair' });
  const trace = samples.slice(0, at + 1);
  trace.forEach((one, i) =>
    i === 0 ? pen.moveTo(x(one.position[0]), y(one.position[2])) : pen.lineTo(x(one.position[0]), y(one.position[2])),
  );
  pen.paint({ stroke: 'pencil', width: 'thin', dash: 'dashed' });
  lander.legs.forEach((leg, i) => {
    if (missing.includes(i)) return;
    const crushed = sample.strokes[i] ?? 0;
    const along = minus(leg.hip, leg.footpad);
    const share = crushed / Math.hypot(...along);
    const foot: Vector = [
      leg.footpad[0] + share * along[0],
      leg.footpad[1] + share * along[1],
      leg.footpad[2] + share * along[2],
    ];
    const [hx, hy] = place(leg.hip);
    const [fx, fy] = place(foot);
    pen.moveTo(hx, hy);
    pen.lineTo(fx, fy);
    pen.paint({ stroke: 'ink', width: 'thick' });
    const half = leg.footpadDiameter / 2;
    const [ax, ay] = place([foot[0] - half, foot[1], foot[2]]);
    const [bx, by] = place([foot[0] + half, foot[1], foot[2]]);
    pen.moveTo(ax, ay);
    pen.lineTo(bx, by);
    pen.paint({ stroke: 'ink', width: 'edge' });
  });
  const outline = convexOutline(lander.hull.map(place));
  outline.forEach(([px, py], i) => (i === 0 ? pen.moveTo(px, py) : pen.lineTo(px, py)));
  pen.close();
  pen.paint({ fill: 'card', stroke: 'ink', width: 'thick' });
  const [mx, my] = place(center);
  pen.moveTo(mx, my);
  pen.lineTo(mx, y(groundAt(cx)));
  pen.paint({ stroke: 'blue', width: 'thin' });
  pen.moveTo(mx + 5, my);
  pen.arc(mx, my, 5, 0, 2 * Math.PI);
  pen.paint({ fill: 'card', stroke: 'ink', width: 'thin' });
  const { perSpeed = 0 } = sheet;
  const [vx, , vz] = sample.velocity;
  const heading = { fromX: mx, fromY: my, toX: mx + vx * perSpeed, toY: my - vz * perSpeed };
  drawArrow(pen, { ...heading, tone: 'card', shaft: 'heavy', head: 9 });
  drawArrow(pen, { ...heading, tone: 'ink', shaft: 'thick', head: 6 });
  return { markup: pen.markup, viewBox: `0 0 ${sheet.width} ${sheet.height}` };
}

function minus(a: Vector, b: Vector): Vector {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

/** By a unit quaternion, w first: v + 2 w (q x v) + 2 q x (q x v). */
function turned([w, qx, qy, qz]: TouchdownSample['attitude'], [x, y, z]: Vector): Vector {
  const [tx, ty, tz] = [2 * (qy * z - qz * y), 2 * (qz * x - qx * z), 2 * (qx * y - qy * x)];
  return [x + w * tx + qy * tz - qz * ty, y + w * ty + qz * tx - qx * tz, z + w * tz + qx * ty - qy * tx];
}
