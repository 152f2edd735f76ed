import { toDegrees, toRadians } from '../../engine/math/index.ts';
import { SHAPE_FACTS, shapeOf, type ShapeField, type StudyCase } from '../../engine/study/index.ts';
import { NO_INSETS, SectionCamera } from '../camera/sectionCamera.ts';
import { SvgPen } from '../ink/svgPen.ts';
import { drawing, element } from '../panels/element.ts';
import { BENCH } from '../text/workbench.ts';
import { drawArrow } from '../views/arrow.ts';
import { drawLander, type FootPose } from '../views/lander/drawLander.ts';
import { landerExtent } from '../views/lander/extent.ts';
import { figureOf } from '../views/lander/figure.ts';
import { drawCenterOfMass } from '../views/plumbLine.ts';
import { ARRIVAL_BOUNDS, type ArrivalName } from './benchState.ts';
import { degreesOf } from './figures.ts';
import { termed } from '../terms/term.ts';

const SHEET = { width: 460, height: 380 } as const;
/** Of 1 m/s on the sheet [px]. */
const PER_SPEED = 34;
/** Where the slope is taken hold of, from the middle [px]. */
const SLOPE_GRIP = 190;

interface BenchDrawing {
  readonly node: HTMLElement;
  show(asked: StudyCase): void;
}

interface Dragged {
  readonly shape: (field: ShapeField, value: number) => void;
  readonly arrival: (name: ArrivalName, value: number) => void;
}

/**
 * The lander as it arrives: upright, its lower point on the ground of the case. Rings take hold of what a person would change by hand; each has a
 * field below for the keyboard. `only`: the one ring that is there.
 */
export function createBenchDrawing(
  drag: Dragged,
  only?: { readonly field: ShapeField; readonly hint: string },
): BenchDrawing {
  const node = element('div', { class: 'bench-drawing' });
  const holder = element('div', {});
  node.append(
    holder,
    element('p', { class: 'hint' }, ...(only === undefined ? termed(BENCH.dragHint, 'center of mass') : [only.hint])),
  );
  let held: Grip | undefined;
  let shown: Laid | undefined;
  const place = ({ clientX, clientY }: PointerEvent) => {
    const svg = holder.querySelector('svg');
    if (svg === null) return undefined;
    const box = svg.getBoundingClientRect();
    return {
      x: ((clientX - box.left) / box.width) * SHEET.width,
      y: ((clientY - box.top) / box.height) * SHEET.height,
    };
  };
  node.addEventListener('pointerdown', (event) => {
    const at = place(event);
    if (at === undefined || shown === undefined) return;
    held = shown.grips.find((grip) => Math.hypot(grip.x - at.x, grip.y - at.y) < GRIP_REACH);
    if (held === undefined) return;
    event.preventDefault();
    node.setPointerCapture(event.pointerId);
  });
  node.addEventListener('pointermove', (event) => {
    const at = place(event);
    if (held === undefined || at === undefined || shown === undefined) return;
    held.move(at, shown, drag);
  });
  const letGo = () => {
    held = undefined;
  };
  node.addEventListener('pointerup', letGo);
  node.addEventListener('pointercancel', letGo);
  return {
    node,
    show(asked) {
      // while it is held, the sheet keeps its scale: the ring stays under the finger
      shown = lay(asked, held === undefined ? undefined : shown, only?.field);
      const label = BENCH.drawing(asked.lander.name, degreesOf(asked.slopeDeg));
      holder.replaceChildren(
        drawing(shown.markup, { viewBox: `0 0 ${SHEET.width} ${SHEET.height}`, label, class: 'bench-sheet' }),
      );
    },
  };
}

const GRIP_REACH = 20;

interface Grip {
  readonly x: number;
  readonly y: number;
  readonly of: ShapeField | 'arrival';
  move(at: { readonly x: number; readonly y: number }, laid: Laid, drag: Dragged): void;
}

interface Laid {
  readonly markup: string;
  readonly grips: readonly Grip[];
  readonly camera: SectionCamera;
  /** Of the center of mass, and half the stance of the section [m], [px]. */
  readonly center: { readonly x: number; readonly y: number };
  readonly asked: StudyCase;
  readonly ground: { readonly x: number; readonly y: number };
}

function lay(asked: StudyCase, before: Laid | undefined, only: ShapeField | undefined): Laid {
  const { lander, slopeDeg, horizontalSpeed, descentRate } = asked;
  const own = figureOf(lander);
  // a body that was drawn out is no longer the one that its own drawing knows
  const figure = { ...own, id: 'plain' };
  const slope = -toRadians(slopeDeg);
  const y = own.centerHeight + Math.tan(Math.abs(slope)) * own.halfStance;
  const foot = (side: -1 | 1): FootPose => ({
    x: side * own.halfStance,
    y: y - own.centerHeight,
    inContact: false,
    broken: false,
  });
  const pose = {
    x: 0,
    y,
    angle: 0,
    rate: 0,
    feet: [foot(-1), foot(1)] as const,
    slope,
    fill: shapeOf(lander).fill,
    settled: 1,
  };
  const camera = new SectionCamera();
  camera.size = { ...SHEET, covered: NO_INSETS };
  const room = landerExtent(figure, pose);
  const tall = room.top - Math.min(0, room.bottom);
  const wide = 2 * Math.max(own.halfStance, figure.hull.right);
  const scale = before?.camera.framing.scale ?? Math.min((0.7 * SHEET.height) / tall, (0.62 * SHEET.width) / wide);
  camera.framing = before?.camera.framing ?? { x: 0, y: room.top - (0.44 * SHEET.height) / scale, scale };
  const pen = new SvgPen(1, 'bench');
  drawSlope(pen, camera, slope);
  drawLander(pen, camera, figure, pose);
  const center = { x: camera.sheetX(0), y: camera.sheetY(y) };
  const tip = { x: center.x + horizontalSpeed * PER_SPEED, y: center.y + descentRate * PER_SPEED };
  // the plumb line, and how far it stands inside the feet
  pen.moveTo(center.x, center.y);
  pen.lineTo(center.x, camera.sheetY(0));
  pen.paint({ stroke: 'blue', width: 'thin' });
  drawArrow(pen, { fromX: center.x, fromY: center.y, toX: tip.x, toY: tip.y, tone: 'card', shaft: 'heavy', head: 9 });
  drawArrow(pen, { fromX: center.x, fromY: center.y, toX: tip.x, toY: tip.y, tone: 'ink', shaft: 'thick', head: 6 });
  drawCenterOfMass(pen, center.x, center.y, 0, 9);
  const right = { x: camera.sheetX(own.halfStance), y: camera.sheetY(pose.feet[1].y) };
  const ground = { x: camera.sheetX(0), y: camera.sheetY(0) };
  const slopeGrip = { x: ground.x + SLOPE_GRIP, y: ground.y + SLOPE_GRIP * Math.tan(-slope) };
  const all: readonly Grip[] = [
    { ...tip, of: 'arrival', move: moveSpeed },
    { ...right, of: 'footRadius', move: moveFoot },
    { ...slopeGrip, of: 'arrival', move: moveSlope },
    // beside the mark, so that the arrow does not cover it
    { x: center.x - 26, y: center.y, of: 'centerHeight', move: moveCenter },
  ];
  const grips = only === undefined ? all : all.filter((grip) => grip.of === only);
  for (const grip of grips) {
    pen.moveTo(grip.x + 8, grip.y);
    pen.arc(grip.x, grip.y, 8, 0, 2 * Math.PI);
    pen.paint({ stroke: 'blue', width: 'thick', fill: 'card', alpha: 0.9 });
  }
  pen.text(degreesOf(slopeDeg), slopeGrip.x - 4, slopeGrip.y - 15, { size: 14, align: 'right', halo: 'card' });
  return { markup: pen.markup, grips, camera, center, asked, ground };
}

function drawSlope(pen: SvgPen, camera: SectionCamera, slope: number): void {
  const y = (px: number) => camera.sheetY(Math.tan(slope) * camera.sectionX(px));
  const outline = () => {
    pen.moveTo(0, y(0));
    pen.lineTo(SHEET.width, y(SHEET.width));
    pen.lineTo(SHEET.width, SHEET.height + 200);
    pen.lineTo(0, SHEET.height + 200);
    pen.close();
  };
  outline();
  pen.paint({ fill: 'soil' });
  outline();
  pen.within(() => {
    for (let x = -SHEET.height; x < SHEET.width + 200; x += 9) {
      pen.moveTo(x, SHEET.height + 100);
      pen.lineTo(x + SHEET.height + 100, 0);
    }
    pen.paint({ stroke: 'hatch', width: 'hair', alpha: 0.6 });
  });
  pen.moveTo(0, y(0));
  pen.lineTo(SHEET.width, y(SHEET.width));
  pen.paint({ stroke: 'ink', width: 'thick' });
}

type Move = Grip['move'];

const moveSpeed: Move = (at, { center }, { arrival }) => {
  arrival('horizontalSpeed', within('horizontalSpeed', (at.x - center.x) / PER_SPEED));
  arrival('descentRate', within('descentRate', (at.y - center.y) / PER_SPEED));
};

const moveFoot: Move = (at, { camera, asked }, { shape }) => {
  const { halfStance } = figureOf(asked.lander);
  const present = shapeOf(asked.lander).footRadius;
  const wanted = (present * Math.max(0.1, camera.sectionX(at.x))) / halfStance;
  shape('footRadius', bounded('footRadius', wanted));
};

const moveCenter: Move = (at, { camera, asked }, { shape }) => {
  const lift = figureOf(asked.lander).halfStance * Math.tan(toRadians(asked.slopeDeg));
  shape('centerHeight', bounded('centerHeight', camera.sectionY(at.y) - lift));
};

const moveSlope: Move = (at, { ground }, { arrival }) => {
  const away = Math.max(40, at.x - ground.x);
  arrival('slopeDeg', within('slopeDeg', toDegrees(Math.atan2(at.y - ground.y, away))));
};

/** A drag ends at the bounds of the field and keeps its step: what is typed has neither. */
function within(name: ArrivalName, value: number): number {
  const { least, most, step } = ARRIVAL_BOUNDS[name];
  const fine = step / 2;
  return Number(Math.min(most, Math.max(least, Math.round(value / fine) * fine)).toFixed(3));
}

function bounded(field: ShapeField, value: number): number {
  const { least, most } = SHAPE_FACTS[field];
  return Number(Math.min(most, Math.max(least, value)).toFixed(2));
}
