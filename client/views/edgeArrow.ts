import type { Sheet } from './sheet.ts';
import type { Spot } from '../ink/stencil.ts';

/** Kept free between the arrow's tip and the edge of the free sheet; its length; its head [drafting units]. */
const INSET = 14;
const LENGTH = 34;
const HEAD = 9;

/** Where an arrow at the edge stands for something beyond it [px]. */
export interface AtEdge {
  readonly tip: Spot;
  readonly tail: Spot;
}

/** Nearest place in the free sheet to something that lies outside of it, with the way there; undefined where it lies inside. */
export function edgeTo({ pen, camera }: Pick<Sheet, 'pen' | 'camera'>, { x, y }: Spot): AtEdge | undefined {
  const { width, height, covered } = camera.size;
  const { unit } = pen;
  const inset = INSET * unit;
  const tip = {
    x: Math.max(covered.left + inset, Math.min(width - covered.right - inset, x)),
    y: Math.max(covered.top + inset, Math.min(height - covered.bottom - inset, y)),
  };
  const far = Math.hypot(x - tip.x, y - tip.y);
  if (far <= inset) return undefined;
  const length = LENGTH * unit;
  return { tip, tail: { x: tip.x - ((x - tip.x) / far) * length, y: tip.y - ((y - tip.y) / far) * length } };
}

/** An arrow at the edge of the sheet toward what lies beyond. */
export function drawEdgeArrow({ pen }: Pick<Sheet, 'pen'>, { tip, tail }: AtEdge): void {
  const { unit } = pen;
  const angle = Math.atan2(tip.y - tail.y, tip.x - tail.x);
  const head = (way: number) => ({
    x: tip.x - HEAD * unit * Math.cos(angle + way * 0.45),
    y: tip.y - HEAD * unit * Math.sin(angle + way * 0.45),
  });
  pen.moveTo(tail.x, tail.y);
  pen.lineTo(tip.x, tip.y);
  for (const { x, y } of [head(1), head(-1)]) {
    pen.moveTo(tip.x, tip.y);
    pen.lineTo(x, y);
  }
  pen.paint({ stroke: 'ink', width: 'outline' });
}
