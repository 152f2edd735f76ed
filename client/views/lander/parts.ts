import type { Stencil } from '../../ink/stencil.ts';
import type { BodyDrawing } from './drawLander.ts';
import type { TankFigure } from './figure.ts';

/** Parts that the landers share: what a section shows of tanks, engine and walls. */

/** An engine bell on the axis, from its throat down to its exit, with hoops. */
export function drawBell(
  stencil: Stencil,
  bell: { readonly throat: number; readonly exit: number; readonly half: number },
): void {
  const { throat, exit, half } = bell;
  const neck = half * 0.3;
  const flare = (side: number) => {
    stencil.lineTo(side * neck, throat);
    stencil.curveTo(side * neck * 1.25, exit + 0.45 * (throat - exit), side * half, exit);
  };
  stencil.moveTo(-half, exit);
  stencil.curveTo(-neck * 1.25, exit + 0.45 * (throat - exit), -neck, throat);
  flare(1);
  stencil.close().paint({ fill: 'card', stroke: 'ink', width: 'outline' });
  for (const [share, width] of [
    [0.28, 0.8],
    [0.55, 0.55],
  ] as const) {
    const z = exit + share * (throat - exit);
    stencil
      .moveTo(-half * width, z)
      .curveTo(0, z - half * 0.16, half * width, z)
      .paint({ stroke: 'ink', width: 'hair' });
  }
  stencil.line(-half, exit, half, exit).paint({ stroke: 'ink', width: 'thick' });
}

/** Tanks that the plane of the section cuts, on the half that is drawn cut open. */
export function drawCutTanks(body: BodyDrawing): void {
  for (const tank of body.figure.tanks) {
    if (tank.x + tank.half < 0.02 || (!tank.lying && tank.depth > 0.5 * tank.half)) continue;
    drawTank(body, tank, tank.x - tank.half < 0 ? { from: 0 } : {});
  }
}

/** A tank cut open: double wall, and its liquid up to the present level. */
export function drawTank(body: BodyDrawing, tank: TankFigure, options: { readonly from?: number } = {}): void {
  const { stencil } = body;
  const left = Math.max(tank.x - tank.half, options.from ?? -Infinity);
  trace(stencil, tank, left);
  stencil.paint({ fill: 'card' });
  trace(stencil, tank, left);
  stencil.pen.within(() => drawLiquid(body, tank));
  trace(stencil, tank, left);
  stencil.paint({ stroke: 'ink', width: 'edge' });
}

function trace(stencil: Stencil, tank: TankFigure, left: number): void {
  const { x, half, bottom, top } = tank;
  const cut = left > x - half;
  if (tank.lying) {
    const middle = (bottom + top) / 2;
    if (!cut) stencil.circle(x, middle, half);
    else
      stencil
        .moveTo(left, bottom)
        .arc(x, middle, half, -Math.PI / 2, Math.PI / 2)
        .close();
    return;
  }
  // domed ends, as deep as a third of the radius
  const dome = Math.min(half * 0.55, (top - bottom) / 2);
  stencil.moveTo(left, cut ? bottom : bottom + dome);
  if (!cut) stencil.curveTo(x - half, bottom, x, bottom);
  else stencil.lineTo(x, bottom);
  stencil.curveTo(x + half, bottom, x + half, bottom + dome);
  stencil.lineTo(x + half, top - dome);
  stencil.curveTo(x + half, top, x, top);
  if (!cut) stencil.curveTo(x - half, top, x - half, top - dome);
  else stencil.lineTo(left, top);
  stencil.close();
}

/**
 * Liquid as still water is drawn: a surface line and shorter and shorter strokes under it. The surface lies square to
 * `up`; how high, is taken from the fill of the tank's extent that way, which is exact for an upright tank.
 */
function drawLiquid(body: BodyDrawing, tank: TankFigure): void {
  const { stencil, up } = body;
  const middle = (tank.bottom + tank.top) / 2;
  const tall = (tank.top - tank.bottom) / 2;
  const upX = Math.sin(up);
  const upZ = Math.cos(up);
  const reach = tank.half * Math.abs(upX) + tall * Math.abs(upZ);
  const level = reach * (2 * Math.min(1, Math.max(0, tank.fill * body.fill)) - 1);
  /** A point by its height over the middle of the tank and its distance along the surface. */
  const at = (height: number, along: number): [number, number] => [
    tank.x + height * upX + along * upZ,
    middle + height * upZ - along * upX,
  ];
  const far = 3 * (tank.half + tall);
  stencil.outline([at(level, -far), at(level, far), at(level - far, far), at(level - far, -far)]);
  stencil.paint({ fill: 'glass' });
  stencil.outline([at(level, -far), at(level, far)], false).paint({ stroke: 'ink', width: 'thin' });
  for (let i = 1; i <= 3; i += 1) {
    const half = tank.half * (0.78 - 0.2 * i);
    const drop = level - 0.18 * reach * i;
    stencil.outline([at(drop, -half), at(drop, half)], false);
  }
  stencil.paint({ stroke: 'ink', width: 'hair' });
}

/** The wall of a cut structure along a polyline: filled with close hatching, as solid material is. */
export function drawCutWall(stencil: Stencil, points: readonly (readonly [number, number])[], thickness: number): void {
  const inner = points.map(([x, z]): [number, number] => [x - thickness, z]);
  const wall = [...points, ...inner.toReversed()];
  stencil.outline(wall).paint({ fill: 'card' });
  stencil.outline(wall);
  stencil.pen.within(() => {
    const bottom = Math.min(...points.map(([, z]) => z));
    const top = Math.max(...points.map(([, z]) => z));
    const wide = Math.max(...points.map(([x]) => x));
    const step = (4.2 / stencil.placement.scale) * stencil.pen.unit;
    for (let z = bottom - wide; z < top; z += step) stencil.line(0, z, wide * 1.2, z + wide * 1.2);
    stencil.paint({ stroke: 'ink', width: 'hair' });
  });
  stencil.outline(wall).paint({ stroke: 'ink', width: 'thin' });
}

/** The chain line of the axis. */
export function drawAxis(stencil: Stencil, bottom: number, top: number): void {
  stencil.line(0, bottom, 0, top).paint({ stroke: 'pencil', width: 'hair', dash: 'chain' });
}

/** Upright lines that crowd toward the limb: how an engraver makes a flat area round. Left half only. */
export function shadeRound(stencil: Stencil, half: number, bottom: number, top: number, lines: number): void {
  for (let i = 1; i <= lines; i += 1) {
    const x = -half * Math.sin((Math.PI / 2) * Math.pow(i / (lines + 0.6), 0.62));
    stencil.line(x, bottom, x, top);
  }
  stencil.paint({ stroke: 'ink', width: 'hair', alpha: 0.55 });
}
