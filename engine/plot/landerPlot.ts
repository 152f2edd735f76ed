import { massProperties, type BodyPoint, type Lander, type Tank } from '../lander/index.ts';
import { cos, sin } from '../math/index.ts';
import { convexOutline, landerStance, leastStaticTilt } from '../statics/index.ts';
import { area, circle, line, polyline, words, type Plot, type Point } from './markup.ts';

const SIZE = { width: 760, height: 400 } as const;
/** Where the side view and the view from above may lie [px]. */
const SIDE = { left: 52, right: 392, top: 34, ground: 340 } as const;
const ABOVE = { left: 462, right: 736, top: 46, bottom: 356 } as const;

/** Which legs are gone, by index, and what the drawing is called. */
interface LanderQuestion {
  readonly lander: Lander;
  readonly missing: readonly number[];
  readonly label: string;
}

/** A drawing of a lander: from the side, x to the right, and from above, x to the right and y up; one scale, dimensions in meters. */
export function landerPlot({ lander, missing, label }: LanderQuestion): Plot {
  const spots = [...lander.hull, ...lander.legs.flatMap(footEnds), ...lander.tanks.flatMap(tankCorners)];
  const along = (axis: 0 | 1 | 2): Range => rangeOf(spots.map((spot) => spot[axis]));
  const [x, y, z] = [along(0), along(1), along(2)];
  const scale = Math.min(
    (SIDE.right - SIDE.left) / x.size,
    (SIDE.ground - SIDE.top) / Math.max(z.most, 0.01),
    (ABOVE.right - ABOVE.left) / x.size,
    (ABOVE.bottom - ABOVE.top) / y.size,
  );
  const side = ([px, , pz]: BodyPoint): Point => [
    (SIDE.left + SIDE.right) / 2 + (px - x.middle) * scale,
    SIDE.ground - pz * scale,
  ];
  const above = ([px, py]: readonly [number, number, ...unknown[]]): Point => [
    (ABOVE.left + ABOVE.right) / 2 + (px - x.middle) * scale,
    (ABOVE.top + ABOVE.bottom) / 2 - (py - y.middle) * scale,
  ];
  const markup = [
    sideView(lander, missing, side, { x, z, scale }),
    viewFromAbove(lander, missing, above, scale),
    words('from the side', (SIDE.left + SIDE.right) / 2, 16, { size: 12, ink: 'pencil', align: 'center' }),
    words('from above', (ABOVE.left + ABOVE.right) / 2, 16, { size: 12, ink: 'pencil', align: 'center' }),
  ].join('');
  return { ...SIZE, markup, label };
}

interface Range {
  readonly least: number;
  readonly most: number;
  readonly size: number;
  readonly middle: number;
}

function rangeOf(values: readonly number[]): Range {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  return { least, most, size: Math.max(most - least, 0.01), middle: (least + most) / 2 };
}

type Leg = Lander['legs'][number];

function footEnds({ footpad: [x, y, z], footpadDiameter }: Leg): readonly BodyPoint[] {
  const half = footpadDiameter / 2;
  return [
    [x - half, y - half, z],
    [x + half, y + half, z],
  ];
}

/** Opposite corners of the box round a tank. */
function tankCorners({ orientation, radius, length, bottomHeight, offset: [x, y] }: Tank): readonly BodyPoint[] {
  const [along, up] = orientation === 'upright' ? [radius, length] : [length / 2, 2 * radius];
  return [
    [x - radius, y - along, bottomHeight],
    [x + radius, y + along, bottomHeight + up],
  ];
}

/** A foot this much farther away than the center of mass stands behind the hull [m]. */
const BEHIND = 0.05;

type Placed<Spot> = (spot: Spot) => Point;

function sideView(
  lander: Lander,
  missing: readonly number[],
  at: Placed<BodyPoint>,
  { x, z, scale }: { readonly x: Range; readonly z: Range; readonly scale: number },
): string {
  const { center } = massProperties(lander);
  const legs = lander.legs.flatMap((leg, i) => (missing.includes(i) ? [] : [leg]));
  const isBehind = ({ footpad }: Leg): boolean => footpad[1] > center[1] + BEHIND;
  const [left, ground] = at([x.least, 0, 0]);
  const [right, top] = at([x.most, 0, z.most]);
  const strokes = Array.from({ length: Math.floor((right - left + 24) / 14) }, (_, i) => left - 12 + 14 * i);
  return [
    line(left - 14, ground, right + 14, ground, { ink: 'ink', width: 1.2 }),
    ...strokes.map((from) => line(from, ground + 8, from + 7, ground, { ink: 'hatch' })),
    ...legs.filter(isBehind).map((leg) => legFromSide(leg, at, scale, 'pencil')),
    filled(silhouette(lander.hull), at),
    ...lander.tanks.map((tank) => tankFromSide(tank, at)),
    ...legs.filter((leg) => !isBehind(leg)).map((leg) => legFromSide(leg, at, scale, 'ink')),
    massMark(at(center)),
    upDimension(left - 26, ground, top, meters(z.most)),
    upDimension(right + 26, ground, at(center)[1], meters(center[2])),
    line(at(center)[0] + 10, at(center)[1], right + 30, at(center)[1], { ink: 'blue', width: 0.8, dash: 'dotted' }),
    acrossDimension(left, right, ground + 26, `${meters(x.size)} over footpads and hull`),
  ].join('');
}

function legFromSide(
  { footpad, hip, footpadDiameter }: Leg,
  at: Placed<BodyPoint>,
  scale: number,
  ink: 'ink' | 'pencil',
): string {
  const [[fx, fy], [hx, hy]] = [at(footpad), at(hip)];
  const half = (footpadDiameter / 2) * scale;
  return line(hx, hy, fx, fy, { ink, width: 3 }) + line(fx - half, fy - 1.5, fx + half, fy - 1.5, { ink, width: 3.5 });
}

/** From left to right at each height of hull points, so that a waist is seen; convex where a height has one point alone. */
function silhouette(hull: readonly BodyPoint[]): readonly BodyPoint[] {
  const heights = [...new Set(hull.map(([, , z]) => z))].toSorted((a, b) => a - b);
  const rows = heights.map((height) => {
    const across = hull.filter(([, , z]) => z === height).map(([px]) => px);
    return { height, least: Math.min(...across), most: Math.max(...across) };
  });
  if (rows.slice(1, -1).some(({ least, most }) => least === most))
    return convexOutline(hull.map(([px, , z]) => [px, z])).map(([px, z]) => [px, 0, z]);
  return [
    ...rows.map(({ height, most }): BodyPoint => [most, 0, height]),
    ...rows.toReversed().map(({ height, least }): BodyPoint => [least, 0, height]),
  ];
}

function filled(outline: readonly BodyPoint[], at: Placed<BodyPoint>): string {
  const points = outline.map(at);
  return area(points, 'var(--card)') + polyline(points, { ink: 'ink', width: 1.8 }, true);
}

/** A lying one is seen from its end, filled from below. */
function tankFromSide(tank: Tank, at: Placed<BodyPoint>): string {
  const { orientation, radius, length, bottomHeight, offset, fill } = tank;
  const [cx, cy] = offset;
  if (orientation === 'lying') {
    const [px, py] = at([cx, cy, bottomHeight + radius]);
    const [, rim] = at([cx, cy, bottomHeight]);
    return circle(px, py, rim - py, { ink: 'pencil', dash: 'dashed' });
  }
  const corner = (px: number, height: number): Point => at([px, cy, height]);
  const [left, right] = [cx - radius, cx + radius];
  const level = bottomHeight + fill * length;
  const box = (to: number): readonly Point[] => [
    corner(left, bottomHeight),
    corner(right, bottomHeight),
    corner(right, to),
    corner(left, to),
  ];
  return (
    (fill > 0 ? area(box(level), 'var(--soil)') : '') +
    polyline(box(bottomHeight + length), { ink: 'pencil', dash: 'dashed' }, true)
  );
}

function viewFromAbove(
  lander: Lander,
  missing: readonly number[],
  at: Placed<readonly [number, number, ...unknown[]]>,
  scale: number,
): string {
  const { center } = massProperties(lander);
  const stance = landerStance(lander, { missing });
  const standing = lander.legs.filter((_, i) => !missing.includes(i)).map(({ footpad: [x, y] }): Point => [x, y]);
  const hull = convexOutline(lander.hull.map(([x, y]): Point => [x, y])).map(at);
  const [mx, my] = at(center);
  return [
    polyline(convexOutline(standing).map(at), { ink: 'pencil', dash: 'dashed' }, true),
    ...lander.legs.map(({ hip, footpad }, i) => {
      const [[hx, hy], [fx, fy]] = [at(hip), at(footpad)];
      return missing.includes(i) ? '' : line(hx, hy, fx, fy, { ink: 'ink', width: 2.4 });
    }),
    area(hull, 'var(--card)') + polyline(hull, { ink: 'ink', width: 1.6 }, true),
    ...lander.legs.map(({ footpad, footpadDiameter }, i) => {
      const [fx, fy] = at(footpad);
      const gone = missing.includes(i);
      const pad = circle(
        fx,
        fy,
        Math.max(7, (footpadDiameter / 2) * scale),
        { ink: 'ink', width: 1.4, dash: gone ? 'dotted' : 'solid' },
        gone ? 'none' : 'card',
      );
      return pad + words(String(i + 1), fx, fy + 4, { size: 11, align: 'center' });
    }),
    line(mx, my, ABOVE.right + 8, my, { ink: 'faint', width: 0.8, dash: 'chain' }),
    words('x, 0°', ABOVE.right + 12, my - 4, { size: 11, ink: 'pencil', align: 'right', halo: 'card' }),
    stance.kind === 'stands' ? halfStance(leastStaticTilt(stance).edge, center, at) : '',
    massMark([mx, my]),
  ].join('');
}

function halfStance(
  { normal, distance }: { readonly normal: number; readonly distance: number },
  [cx, cy]: BodyPoint,
  at: Placed<readonly [number, number, ...unknown[]]>,
): string {
  const [from, to] = [at([cx, cy]), at([cx + distance * cos(normal), cy + distance * sin(normal)])];
  return (
    line(...from, ...to, { ink: 'blue', width: 1.6 }) +
    words(`half stance ${meters(distance)}`, (ABOVE.left + ABOVE.right) / 2, ABOVE.bottom + 34, {
      size: 12,
      ink: 'blue',
      align: 'center',
    })
  );
}

/** The sign for a center of mass: a circle, two of its quarters dark. */
function massMark([x, y]: Point): string {
  const radius = 7;
  const quarter = (fromDeg: number): readonly Point[] => [
    [x, y],
    ...Array.from({ length: 7 }, (_, i): Point => {
      const angle = ((fromDeg + 15 * i) * Math.PI) / 180;
      return [x + radius * cos(angle), y - radius * sin(angle)];
    }),
  ];
  return [
    circle(x, y, radius, { ink: 'ink', width: 1.4 }, 'card'),
    area(quarter(0), 'var(--ink)'),
    area(quarter(180), 'var(--ink)'),
  ].join('');
}

function meters(length: number): string {
  return `${length.toFixed(2)} m`;
}

function upDimension(x: number, from: number, to: number, text: string): string {
  const stroke = { ink: 'blue', width: 0.9 } as const;
  const tick = (y: number): string => line(x - 5, y, x + 5, y, stroke);
  return [
    line(x, from, x, to, stroke),
    tick(from),
    tick(to),
    words(text, x - 5, (from + to) / 2, { size: 12, ink: 'blue', align: 'center', turn: -90, halo: 'card' }),
  ].join('');
}

function acrossDimension(from: number, to: number, y: number, text: string): string {
  const stroke = { ink: 'blue', width: 0.9 } as const;
  const tick = (x: number): string => line(x, y - 5, x, y + 5, stroke);
  return [
    line(from, y, to, y, stroke),
    tick(from),
    tick(to),
    words(text, (from + to) / 2, y + 16, { size: 12, ink: 'blue', align: 'center' }),
  ].join('');
}
