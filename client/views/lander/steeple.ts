import type { BodyDrawing } from './drawLander.ts';
import { drawAxis, drawBell, drawCutTanks, drawCutWall, shadeRound } from './parts.ts';

/**
 * Steeple: tall, its tanks stacked one on the other, a louvered load bay above them and a latticed spire with a vane on
 * top. Half section, like all three.
 */
export function drawSteeple(body: BodyDrawing): void {
  const { stencil, figure } = body;
  const [exit, floor, bay, eaves, tip] = figure.profile;
  if (!exit || !floor || !bay || !eaves || !tip) return;
  const half = floor.half;
  const span = bay.z - floor.z;

  drawSpire(body, { half: eaves.half, foot: eaves.z, top: tip.z });
  drawBell(stencil, { throat: floor.z + 0.12 * span, exit: exit.z, half: exit.half });

  const right: [number, number][] = [
    [0.8 * half, floor.z],
    [half, floor.z + 0.06 * span],
    [half, bay.z],
    [0.9 * eaves.half, bay.z + 0.05 * span],
    [0.9 * eaves.half, eaves.z - 0.04 * span],
    [eaves.half, eaves.z],
  ];
  const left = right.map(([x, z]): [number, number] => [-x, z]);
  stencil.outline([...right, ...left.toReversed()]).paint({ fill: 'card' });
  drawCutWall(stencil, right, 0.05 * half);
  stencil.line(0, floor.z, 0.8 * half, floor.z).paint({ stroke: 'ink', width: 'thick' });
  drawCutTanks(body);
  stencil.line(0, bay.z, half, bay.z).paint({ stroke: 'ink', width: 'outline' });
  drawLoad(body, bay.z, eaves.z);

  stencil.outline([[0, eaves.z], ...left.toReversed(), [0, floor.z]]).paint({ fill: 'card' });
  shadeRound(stencil, half, floor.z + 0.06 * span, bay.z, 5);
  for (const share of [0.06, 0.2, 0.34, 0.48, 0.62, 0.76, 0.9, 1]) {
    const z = floor.z + share * span;
    stencil.line(-half, z, 0, z).paint({ stroke: 'ink', width: share === 1 ? 'edge' : 'hair' });
  }
  drawLouvers(body, { half: eaves.half, bottom: bay.z + 0.1 * span, top: eaves.z - 0.06 * span });

  stencil.outline([...right, ...left.toReversed()]).paint({ stroke: 'ink', width: 'outline' });
  for (const [z, wide] of [
    [bay.z, half],
    [eaves.z, eaves.half],
  ] as const) {
    stencil.line(-1.05 * wide, z, 1.05 * wide, z).paint({ stroke: 'ink', width: 'thick' });
  }
  drawAxis(stencil, exit.z - 0.06 * span, tip.z + 0.2 * span);
}

/** A lattice that narrows to a point, and a vane that shows which way it goes. */
function drawSpire(body: BodyDrawing, spire: { half: number; foot: number; top: number }): void {
  const { stencil } = body;
  const { half, foot, top } = spire;
  const peak = top + 0.5 * (top - foot);
  const wide = 0.86 * half;
  const at = (share: number) => ({ x: wide * (1 - share), z: foot + share * (peak - foot) });
  stencil.outline([
    [-wide, foot],
    [0, peak],
    [wide, foot],
  ]);
  stencil.paint({ fill: 'paper', stroke: 'ink', width: 'outline' });
  let side = 1;
  let share = 0;
  for (const next of [0.26, 0.47, 0.64, 0.78]) {
    const low = at(share);
    const high = at(next);
    stencil.line(-side * low.x, low.z, side * high.x, high.z).line(-high.x, high.z, high.x, high.z);
    side = -side;
    share = next;
  }
  stencil.paint({ stroke: 'ink', width: 'thin' });
  const staff = 0.26 * (peak - foot);
  stencil.line(0, peak, 0, peak + staff).paint({ stroke: 'ink', width: 'edge' });
  stencil.outline([
    [-0.5 * staff, peak + 0.62 * staff],
    [0.75 * staff, peak + 0.9 * staff],
    [0.75 * staff, peak + 0.34 * staff],
  ]);
  stencil.paint({ fill: 'ink' });
}

/** The load in its bay, on the half that is cut. */
function drawLoad(body: BodyDrawing, floor: number, eaves: number): void {
  const { stencil, figure } = body;
  const [load] = figure.cargo;
  if (load === undefined) return;
  const bottom = Math.max(floor, load.z - load.height / 2);
  const top = Math.min(eaves, load.z + load.height / 2);
  stencil.box(0, bottom, load.half, top).paint({ fill: 'shade', stroke: 'ink', width: 'edge' });
  stencil.line(0, bottom, load.half, top).line(0, top, load.half, bottom).paint({ stroke: 'ink', width: 'hair' });
}

function drawLouvers(body: BodyDrawing, bay: { half: number; bottom: number; top: number }): void {
  const { stencil } = body;
  const outer = -0.7 * bay.half;
  const inner = -0.18 * bay.half;
  stencil.box(outer, bay.bottom, inner, bay.top).paint({ fill: 'shade', stroke: 'ink', width: 'thin' });
  const count = 7;
  const step = (bay.top - bay.bottom) / count;
  for (let i = 0; i < count; i += 1) {
    stencil.line(outer, bay.bottom + i * step, inner, bay.bottom + (i + 0.7) * step);
  }
  stencil.paint({ stroke: 'ink', width: 'thin' });
}
