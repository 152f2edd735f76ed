import { Stencil, type Spot } from '../ink/stencil.ts';
import { bodyOrigin } from './lander/drawLander.ts';
import type { Figure } from './lander/figure.ts';
import type { Sheet } from './sheet.ts';

/** A lander at one moment of its fall: center of mass [m], angle [rad], and its outer feet. */
export interface Ghost extends Spot {
  readonly angle: number;
  readonly feet: readonly [Spot, Spot];
}

/** The places through which a lander fell, as bare outlines in thin pencil: hull, legs, and the center of mass as a small ring. */
export function drawGhosts({ pen, camera }: Sheet, figure: Figure, ghosts: readonly Ghost[]): void {
  for (const pose of ghosts) {
    const origin = bodyOrigin(figure, pose);
    const stencil = new Stencil(pen, camera.placement(origin.x, origin.y, pose.angle));
    const right = figure.profile.map(({ z, half }): [number, number] => [half, z]);
    stencil.outline([...right, ...right.map(([x, z]): [number, number] => [-x, z]).toReversed()]);
    for (const [side, foot] of [
      [-1, pose.feet[0]],
      [1, pose.feet[1]],
    ] as const) {
      const hip = stencil.spot(side * figure.hip.x, figure.hip.z);
      pen.moveTo(hip.x, hip.y);
      pen.lineTo(camera.sheetX(foot.x), camera.sheetY(foot.y));
    }
    pen.paint({ stroke: 'pencil', width: 'hair', alpha: 0.45 });
    const [x, y] = [camera.sheetX(pose.x), camera.sheetY(pose.y)];
    pen.moveTo(x + 3 * pen.unit, y);
    pen.arc(x, y, 3 * pen.unit, 0, 2 * Math.PI);
    pen.paint({ fill: 'paper', stroke: 'pencil', width: 'thin', alpha: 0.8 });
  }
}
