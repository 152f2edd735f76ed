import type { BodyDrawing } from './drawLander.ts';
import { drawAxis, drawBell, drawCutTanks, drawCutWall } from './parts.ts';

/**
 * Bolster: a long hull that comes down lying on its side, on two rows of legs. The section looks along it, so it shows
 * round, quilted outside like the cushion it is named after, and cut open on its tanks.
 */
export function drawBolster(body: BodyDrawing): void {
  const { stencil, figure } = body;
  const { bottom, top, right } = figure.hull;
  const radius = right;
  const middle = top - radius;
  const belly = middle - radius;

  for (const side of [-1, 1]) {
    drawBell(stencil.shifted(side * 0.28 * radius, 0), {
      throat: belly + 0.14 * radius,
      exit: bottom,
      half: 0.2 * radius,
    });
  }
  // cradle between hull and engines
  stencil.outline([
    [-0.62 * radius, belly + 0.2 * radius],
    [-0.5 * radius, belly - 0.02 * radius],
    [0.5 * radius, belly - 0.02 * radius],
    [0.62 * radius, belly + 0.2 * radius],
  ]);
  stencil.paint({ fill: 'shade', stroke: 'ink', width: 'edge' });

  stencil.circle(0, middle, radius).paint({ fill: 'card' });
  const wall: [number, number][] = [];
  for (let i = 0; i <= 24; i += 1) {
    const angle = -Math.PI / 2 + (Math.PI * i) / 24;
    wall.push([radius * Math.cos(angle), middle + radius * Math.sin(angle)]);
  }
  drawCutWall(stencil, wall, 0.055 * radius);
  drawCutTanks(body);
  drawQuilt(body, middle, radius);

  stencil.circle(0, middle, radius).paint({ stroke: 'ink', width: 'outline' });
  // a walkway along the top
  stencil.box(-0.4 * radius, top - 0.02 * radius, 0.4 * radius, top + 0.06 * radius);
  stencil.paint({ fill: 'card', stroke: 'ink', width: 'edge' });
  for (const x of [-0.36, -0.12, 0.12, 0.36]) {
    stencil.line(x * radius, top + 0.06 * radius, x * radius, top + 0.26 * radius);
  }
  stencil
    .line(-0.36 * radius, top + 0.26 * radius, 0.36 * radius, top + 0.26 * radius)
    .paint({ stroke: 'ink', width: 'thin' });
  drawAxis(stencil, bottom - 0.3 * radius, top + 0.5 * radius);
  stencil.line(-1.2 * radius, middle, 1.2 * radius, middle).paint({ stroke: 'pencil', width: 'hair', dash: 'chain' });
}

/** Left half: blankets quilted in diamonds, with a button in each crossing. */
function drawQuilt(body: BodyDrawing, middle: number, radius: number): void {
  const { stencil } = body;
  stencil
    .moveTo(0, middle + radius)
    .arc(0, middle, radius, Math.PI / 2, (3 * Math.PI) / 2)
    .close();
  stencil.paint({ fill: 'card' });
  stencil
    .moveTo(0, middle + radius)
    .arc(0, middle, radius, Math.PI / 2, (3 * Math.PI) / 2)
    .close();
  stencil.pen.within(() => {
    const step = 0.4 * radius;
    for (let i = -6; i <= 6; i += 1) {
      const z = middle + i * step;
      stencil.moveTo(0, z).curveTo(-0.5 * radius, z + 0.62 * radius, -radius, z + 0.9 * radius);
      stencil.moveTo(0, z).curveTo(-0.5 * radius, z - 0.62 * radius, -radius, z - 0.9 * radius);
    }
    stencil.paint({ stroke: 'ink', width: 'hair' });
    for (let i = -4; i <= 4; i += 1) stencil.circle(0, middle + i * step, 0.028 * radius);
    stencil.paint({ fill: 'ink' });
  });
}
