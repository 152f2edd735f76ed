import { letter } from './labels.ts';
import type { Sheet } from './sheet.ts';
import type { Spot } from '../ink/stencil.ts';

/** On narrower sheets the words have no room [drafting units]. */
const ROOM = 520;
const DEGREE = Math.PI / 180;
/** The scale runs this far past the lander's own line. */
const BEYOND = 6 * DEGREE;

interface TiltReading {
  /** The foot that the lander would turn over [m]. */
  readonly foot: Spot;
  readonly center: Spot;
  /** 'right' when the lander would fall to the right. */
  readonly side: 'left' | 'right';
  /** In words, such as '38° to fall', or that there is nothing left. */
  readonly words: string;
  /** 0 (not drawn) to 1. */
  readonly alpha: number;
}

/**
 * The tip arc: a protractor laid on the foot that would be turned over. It opens from the upright through the foot to the
 * line from the foot to the center of mass; when that line reaches the upright, nothing holds the lander.
 */
export function drawProtractor(sheet: Sheet, reading: TiltReading): void {
  if (reading.alpha <= 0) return;
  const { pen, camera } = sheet;
  const x = camera.sheetX(reading.foot.x);
  const y = camera.sheetY(reading.foot.y);
  const toCenter = Math.atan2(camera.sheetY(reading.center.y) - y, camera.sheetX(reading.center.x) - x);
  const reach = Math.hypot(camera.sheetX(reading.center.x) - x, camera.sheetY(reading.center.y) - y);
  const radius = Math.max(0.78 * reach, 34 * pen.unit);
  // the sheet's angles run clockwise: straight up is -90 degrees, and the lander's line lies toward its own side of that
  const toward = reading.side === 'right' ? -1 : 1;
  const upright = -Math.PI / 2;
  const opening = (toCenter - upright) * toward;
  const end = upright + toward * (Math.max(opening, 0) + BEYOND);
  const { alpha } = reading;

  // past the upright nothing is left to open
  if (opening > 0) {
    pen.moveTo(x, y);
    pen.arc(x, y, radius, upright, toCenter, toward < 0);
    pen.close();
    pen.paint({ fill: 'blue', alpha: 0.09 * alpha });
  }
  pen.moveTo(x, y);
  pen.lineTo(x, y - 1.16 * radius);
  pen.paint({ stroke: 'blue', width: 'thin', dash: 'dotted', alpha });
  pen.moveTo(x, y);
  pen.lineTo(x + reach * Math.cos(toCenter), y + reach * Math.sin(toCenter));
  pen.paint({ stroke: 'blue', width: 'thin', dash: 'fine', alpha });
  pen.arc(x, y, radius, upright, end, toward < 0);
  pen.paint({ stroke: 'blue', width: 'edge', alpha });
  for (let degrees = 0; degrees * DEGREE <= opening + BEYOND; degrees += 5) {
    const angle = upright + toward * degrees * DEGREE;
    const length = (degrees % 10 === 0 ? 9 : 5) * pen.unit;
    pen.moveTo(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
    pen.lineTo(x + (radius - length) * Math.cos(angle), y + (radius - length) * Math.sin(angle));
  }
  pen.paint({ stroke: 'blue', width: 'thin', alpha });
  if (alpha > 0.6 && camera.freeWidth > ROOM * pen.unit) {
    const labelX = x + (reading.side === 'right' ? 9 : -9) * pen.unit;
    letter(sheet, {
      name: 'tilt left',
      rank: 5,
      words: reading.words,
      lettering: { size: 14, tone: 'blue', align: reading.side === 'right' ? 'left' : 'right', halo: 'paper' },
      places: [0.3, 0.55, 0.1].map((up) => ({ x: labelX, y: y - up * radius })),
      mayGo: true,
    });
  }
}
