import type { BodyDrawing } from './drawLander.ts';
import { drawAxis, drawTank } from './parts.ts';

/** Any other lander: the outline of its structure, with its tanks in section. */
export function drawPlain(body: BodyDrawing): void {
  const { stencil, figure } = body;
  const right = figure.profile.map(({ z, half }): [number, number] => [half, z]);
  const outline = [...right, ...right.map(([x, z]): [number, number] => [-x, z]).toReversed()];
  stencil.outline(outline).paint({ fill: 'card', stroke: 'ink', width: 'outline' });
  for (const tank of figure.tanks) drawTank(body, tank);
  drawAxis(stencil, figure.hull.bottom - 0.3, figure.hull.top + 0.3);
}
