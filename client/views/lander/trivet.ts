import type { BodyDrawing } from './drawLander.ts';
import { drawAxis, drawBell, drawCutTanks, drawCutWall, shadeRound } from './parts.ts';

/**
 * Trivet: a squat, pot-bodied cargo lander with its load on the lid and a lifting bail over it. Drawn as a half section:
 * the left half of the drum from outside, the right half cut open on its tanks.
 */
export function drawTrivet(body: BodyDrawing): void {
  const { stencil, figure } = body;
  const [exit, floor, shoulder, deck, crown] = figure.profile;
  if (!exit || !floor || !shoulder || !deck || !crown) return;
  const half = floor.half;
  const tall = shoulder.z - floor.z;

  drawBail(body, { half: 0.96 * half, foot: shoulder.z + 0.25 * (deck.z - shoulder.z), crown: crown.z });
  drawCargo(body, { half: crown.half, floor: deck.z, top: crown.z });
  drawBell(stencil, { throat: floor.z + 0.32 * tall, exit: exit.z, half: exit.half });

  const right: [number, number][] = [
    [0.86 * half, floor.z],
    [half, floor.z + 0.12 * tall],
    [half, shoulder.z],
    [deck.half, deck.z],
  ];
  const left = right.map(([x, z]): [number, number] => [-x, z]);
  stencil.outline([...right, ...left.toReversed()]).paint({ fill: 'card' });

  // right half: cut open, with the chamber of the engine on the axis
  drawCutWall(stencil, right, 0.05 * half);
  stencil.line(0, floor.z, 0.86 * half, floor.z).paint({ stroke: 'ink', width: 'thick' });
  drawChamber(body, floor.z, tall);
  drawCutTanks(body);

  // left half: from outside
  stencil.outline([[0, deck.z], ...left.toReversed(), [0, floor.z]]).paint({ fill: 'card' });
  shadeRound(stencil, half, floor.z + 0.12 * tall, shoulder.z, 6);
  for (const z of [floor.z + 0.12 * tall, shoulder.z]) {
    stencil.line(-half, z, 0, z).paint({ stroke: 'ink', width: 'edge' });
  }
  drawRivets(body, half, shoulder.z - 0.06 * tall);
  drawRivets(body, half, floor.z + 0.18 * tall);
  drawHatch(body, { x: -0.43 * half, z: floor.z + 0.58 * tall, radius: 0.2 * half });

  stencil.outline([...right, ...left.toReversed()]).paint({ stroke: 'ink', width: 'outline' });
  // the lid stands out over the drum
  stencil.line(-1.04 * deck.half, deck.z, 1.04 * deck.half, deck.z).paint({ stroke: 'ink', width: 'heavy' });
  drawAxis(stencil, exit.z - 0.35 * tall, crown.z + 0.95 * tall);
}

/** The lifting bail: a bow from shoulder to shoulder over the load, with an eye on top. */
function drawBail(body: BodyDrawing, bail: { half: number; foot: number; crown: number }): void {
  const { stencil } = body;
  const { half, foot, crown } = bail;
  const rise = crown - foot;
  const peak = crown + 0.26 * rise;
  const bow = () => {
    stencil.moveTo(-half, foot);
    stencil.curveTo(-1.02 * half, foot + 0.62 * rise, -0.74 * half, crown - 0.02 * rise);
    stencil.curveTo(-0.42 * half, peak, 0, peak);
    stencil.curveTo(0.42 * half, peak, 0.74 * half, crown - 0.02 * rise);
    stencil.curveTo(1.02 * half, foot + 0.62 * rise, half, foot);
  };
  bow();
  stencil.paint({ stroke: 'ink', width: 'heavy' });
  bow();
  stencil.paint({ stroke: 'card', width: 'edge' });
  const eye = 0.1 * half;
  stencil.circle(0, peak + eye, eye).paint({ fill: 'paper', stroke: 'ink', width: 'outline' });
  for (const side of [-1, 1]) {
    stencil.circle(side * half, foot, 0.06 * half).paint({ fill: 'card', stroke: 'ink', width: 'edge' });
  }
}

/** Three crates lashed down: one tall with a brace, two stacked. */
function drawCargo(body: BodyDrawing, load: { half: number; floor: number; top: number }): void {
  const { stencil } = body;
  const { half, floor, top } = load;
  const tall = top - floor;
  const split = 0.06 * half;
  const shelf = floor + 0.46 * tall;
  stencil.box(-half, floor, split, top).paint({ fill: 'card', stroke: 'ink', width: 'outline' });
  stencil.box(split, floor, half, shelf).paint({ fill: 'shade', stroke: 'ink', width: 'outline' });
  stencil.box(split, shelf, half, top).paint({ fill: 'card', stroke: 'ink', width: 'outline' });
  const inset = 0.09 * half;
  stencil.box(-half + inset, floor + inset, split - inset, top - inset).paint({ stroke: 'ink', width: 'hair' });
  stencil.line(-half + inset, floor + inset, split - inset, top - inset);
  stencil.line(-half + inset, top - inset, split - inset, floor + inset).paint({ stroke: 'ink', width: 'thin' });
  for (const share of [0.3, 0.7]) {
    const x = split + share * (half - split);
    stencil.line(x, floor, x, top);
  }
  stencil.paint({ stroke: 'ink', width: 'thin' });
}

/** The chamber above the bell, on the half that is cut. */
function drawChamber(body: BodyDrawing, floor: number, tall: number): void {
  const { stencil } = body;
  const wide = 0.17 * tall;
  stencil.outline([
    [0, floor],
    [0.45 * wide, floor],
    [wide, floor + 0.16 * tall],
    [wide, floor + 0.46 * tall],
    [0, floor + 0.46 * tall],
  ]);
  stencil.paint({ fill: 'shade', stroke: 'ink', width: 'edge' });
}

function drawRivets(body: BodyDrawing, half: number, z: number): void {
  const { stencil } = body;
  for (let i = 0; i < 9; i += 1) {
    const x = -half * Math.sin((Math.PI / 2) * ((i + 0.5) / 9.5));
    stencil.circle(x, z, 0.012 * half);
  }
  stencil.paint({ fill: 'ink' });
}

/** A round hatch with a wheel. */
function drawHatch(body: BodyDrawing, hatch: { x: number; z: number; radius: number }): void {
  const { stencil } = body;
  const { x, z, radius } = hatch;
  stencil.circle(x, z, radius).paint({ fill: 'card', stroke: 'ink', width: 'edge' });
  stencil.circle(x, z, 0.8 * radius).paint({ stroke: 'ink', width: 'hair' });
  for (let i = 0; i < 3; i += 1) {
    const angle = Math.PI / 2 + (i * 2 * Math.PI) / 3;
    stencil.line(x, z, x + 0.6 * radius * Math.cos(angle), z + 0.6 * radius * Math.sin(angle));
  }
  stencil.paint({ stroke: 'ink', width: 'thin' });
  stencil.circle(x, z, 0.14 * radius).paint({ fill: 'ink' });
}
