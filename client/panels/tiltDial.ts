import type { Pen } from '../ink/pen.ts';
import { SvgPen } from '../ink/svgPen.ts';
import { drawCenterOfMass } from '../views/plumbLine.ts';

export interface TiltFinding {
  /** [rad] */
  readonly limit: number;
  readonly used: number;
  readonly left: number;
}

const X = 84;
const Y = 172;
const RADIUS = 140;

export const TILT_DIAL_BOX = '0 0 190 190';

/** Static tilt as a protractor on the foot it would turn over: what is used lies filled, what is left open. */
export function drawTiltDial(finding: TiltFinding): string {
  const pen = new SvgPen(1, 'tilt');
  const degree = Math.PI / 180;
  // opens from the upright to the right, up to the limit; the used part grows from the far end toward the upright
  const left = Math.max(0, finding.left);
  const span = Math.max(finding.limit, left, 10 * degree);
  pen.moveTo(X, Y);
  pen.arc(X, Y, RADIUS, at(0), at(left));
  pen.close();
  pen.paint({ fill: 'wash' });
  if (span > left) drawUsed(pen, left, span);
  pen.arc(X, Y, RADIUS, at(0), at(span));
  pen.paint({ stroke: 'blue', width: 'edge' });
  for (let degrees = 0; degrees * degree <= span + 1e-9; degrees += 5) {
    const angle = at(degrees * degree);
    const length = degrees % 10 === 0 ? 10 : 5;
    pen.moveTo(X + RADIUS * Math.cos(angle), Y + RADIUS * Math.sin(angle));
    pen.lineTo(X + (RADIUS - length) * Math.cos(angle), Y + (RADIUS - length) * Math.sin(angle));
  }
  pen.paint({ stroke: 'blue', width: 'thin' });
  pen.moveTo(X, Y);
  pen.lineTo(X, Y - RADIUS - 22);
  pen.paint({ stroke: 'blue', width: 'thin', dash: 'dotted' });
  const line = at(left);
  pen.moveTo(X, Y);
  pen.lineTo(X + (RADIUS + 8) * Math.cos(line), Y + (RADIUS + 8) * Math.sin(line));
  pen.paint({ stroke: 'ink', width: 'outline' });
  drawCenterOfMass(pen, X + 0.72 * RADIUS * Math.cos(line), Y + 0.72 * RADIUS * Math.sin(line), 0, 8);
  pen.moveTo(X - 30, Y);
  pen.lineTo(X + 18, Y);
  pen.paint({ stroke: 'ink', width: 'heavy' });
  return pen.markup;
}

/** Angle on the sheet of a tilt to the right of the upright [rad]. */
function at(tilt: number): number {
  return tilt - Math.PI / 2;
}

/** The part of the limit that slope and attitude took: hatched, as cut material is. */
function drawUsed(pen: Pen, from: number, to: number): void {
  const wedge = () => {
    pen.moveTo(X, Y);
    pen.arc(X, Y, RADIUS, at(from), at(to));
    pen.close();
  };
  wedge();
  pen.paint({ fill: 'shade' });
  wedge();
  pen.within(() => {
    for (let offset = -2 * RADIUS; offset < 2 * RADIUS; offset += 8) {
      pen.moveTo(X + offset, Y);
      pen.lineTo(X + offset + 2 * RADIUS, Y - 2 * RADIUS);
    }
    pen.paint({ stroke: 'hatch', width: 'hair' });
  });
}
