import { groundHeight, type Profile } from '../../engine/ground/index.ts';
import type { Sheet } from './sheet.ts';

/** Two ridges far behind the section, the farther first: how high over the ground line, how wavy [drafting units], and how much of the way across they go along. */
const RIDGES = [
  { lift: 40, waves: 13, along: 0.25, tone: 0.5 },
  { lift: 20, waves: 8, along: 0.5, tone: 0.85 },
] as const;
/** Way across at which a ridge goes along, for every doubling of it [drafting units]. */
const STEP = 12;
/** From the left edge to the right in so many straight pieces. */
const PIECES = 48;

/**
 * The land far behind the section, as sheets of paper laid behind one another: only for depth, and no ground of the site. It rises a little as the
 * picture comes nearer, and goes along a little with the way across; not where no movement is wanted.
 */
export function drawHorizon(sheet: Sheet, terrain: Profile): void {
  const { pen, camera } = sheet;
  const { width, height } = camera.size;
  const line = camera.sheetY(meanGround(sheet, terrain));
  const nearness = Math.max(0, Math.log2(camera.framing.scale / pen.unit)) / 6;
  RIDGES.forEach(({ lift, waves, along, tone }, index) => {
    const shift = sheet.still ? 0 : along * STEP * Math.asinh(camera.framing.x / 8);
    const ridge = (x: number) => {
      const at = x / pen.unit + shift + 400 * index;
      const wave = 0.5 * Math.sin(at / 97) + 0.3 * Math.sin(at / 41 + 2) + 0.2 * Math.sin(at / 19 + 5);
      return line - (lift * (0.5 + nearness) + waves * wave) * pen.unit;
    };
    pen.moveTo(0, ridge(0));
    for (let i = 1; i <= PIECES; i += 1) pen.lineTo((i * width) / PIECES, ridge((i * width) / PIECES));
    pen.lineTo(width, height);
    pen.lineTo(0, height);
    pen.close();
    pen.paint({ fill: 'shade', stroke: 'faint', width: 'hair', alpha: tone });
  });
}

/** Of the ground that is seen [m]: a hill that comes into the picture must not lift the horizon at once. */
function meanGround({ camera }: Sheet, terrain: Profile): number {
  const [left, right] = [camera.sectionX(0), camera.sectionX(camera.size.width)];
  const places = Array.from({ length: 9 }, (_, i) => left + ((right - left) * i) / 8);
  return places.reduce((sum, x) => sum + groundHeight(terrain, x), 0) / places.length;
}
