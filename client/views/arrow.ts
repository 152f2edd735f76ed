import type { Mark, Pen, Tone } from '../ink/pen.ts';

/** Length of an arrowhead for its half width. */
const SLENDER = 2.6;

interface Arrow {
  readonly fromX: number;
  readonly fromY: number;
  readonly toX: number;
  readonly toY: number;
  readonly tone: Tone;
  readonly shaft: NonNullable<Mark['width']>;
  /** Half width of the head [drafting units]. */
  readonly head: number;
  /** Filled: actual. Hollow: commanded. */
  readonly hollow?: boolean;
}

/** A straight arrow; the head is left out when there is no room for it. */
export function drawArrow(pen: Pen, arrow: Arrow): void {
  const dx = arrow.toX - arrow.fromX;
  const dy = arrow.toY - arrow.fromY;
  const length = Math.hypot(dx, dy);
  if (length < 1) return;
  const half = Math.min(arrow.head * pen.unit, length / SLENDER);
  const baseX = arrow.toX - (dx / length) * half * SLENDER;
  const baseY = arrow.toY - (dy / length) * half * SLENDER;
  pen.moveTo(arrow.fromX, arrow.fromY);
  pen.lineTo(baseX, baseY);
  pen.paint({ stroke: arrow.tone, width: arrow.shaft, ...(arrow.hollow === true ? { dash: 'fine' as const } : {}) });
  pen.moveTo(arrow.toX, arrow.toY);
  pen.lineTo(baseX - (dy / length) * half, baseY + (dx / length) * half);
  pen.lineTo(baseX + (dy / length) * half, baseY - (dx / length) * half);
  pen.close();
  if (arrow.hollow === true) pen.paint({ fill: 'paper', stroke: arrow.tone, width: 'edge' });
  else pen.paint({ fill: arrow.tone, stroke: arrow.tone, width: 'thin' });
}
