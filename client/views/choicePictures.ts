import type { Lander } from '../../engine/lander/index.ts';
import { groundHeight, type Terrain } from '../../engine/ground/index.ts';
import { createGround, type Site } from '../../levels/index.ts';
import { NO_INSETS, SectionCamera } from '../camera/sectionCamera.ts';
import { SvgPen } from '../ink/svgPen.ts';
import { distance } from '../text/numbers.ts';
import { drawGround } from './ground.ts';
import { drawLander } from './lander/drawLander.ts';
import { figureOf } from './lander/figure.ts';
import { scatter, type Sheet } from './sheet.ts';

/** A small picture as SVG, and the box in which it is drawn. */
export interface Picture {
  readonly markup: string;
  readonly viewBox: string;
}

/** [drafting units] */
const WIDTH = 240;
const LANDER_HEIGHT = 180;
/** What of it a lander fills, and what the ground below [drafting units]. */
const LANDER_FILLS = 150;
const LANDER_GROUND = 18;
const SITE_HEIGHT = 96;
/** The stretch of a site that is shown: from here [m], so far [m]. It holds the level patch of Coombe Ledge and the rim of Tallow Hollow. */
const SHOWN_FROM = -140;
const SHOWN = 160;

/** A lander standing on level ground, in ink, with its height: each fills the picture, and only the dimension tells how tall it is. */
export function drawLanderPicture(lander: Lander): Picture {
  const figure = figureOf(lander);
  const { pen, sheet } = blank(LANDER_HEIGHT, `choice-${lander.id}`);
  const { camera } = sheet;
  const scale = Math.min(LANDER_FILLS / figure.hull.top, (0.55 * WIDTH) / (2 * figure.halfStance));
  camera.framing = { x: -0.12 * (WIDTH / scale), y: (LANDER_HEIGHT / 2 - LANDER_GROUND) / scale, scale };
  const terrain: Terrain = { firstX: -50, spacing: 100, heights: [0, 0], friction: 1 };
  drawGround(sheet, terrain);
  const foot = (side: -1 | 1) => ({ x: side * figure.halfStance, y: 0, inContact: true, broken: false });
  drawLander(pen, camera, figure, {
    x: 0,
    y: figure.centerHeight,
    angle: 0,
    rate: 0,
    feet: [foot(-1), foot(1)],
    slope: 0,
    fill: 1,
    settled: 1,
  });
  drawTallness(pen, sheet, figure.hull.top);
  return { markup: pen.markup, viewBox: `0 0 ${WIDTH} ${LANDER_HEIGHT}` };
}

/** Where the dimension line stands [drafting units]. */
const DIMENSION_X = 34;

/** A dimension line from the ground to the top [m]. */
function drawTallness(pen: SvgPen, { camera }: Sheet, height: number): void {
  const [top, ground] = [camera.sheetY(height), camera.sheetY(0)];
  for (const y of [top, ground]) {
    pen.moveTo(DIMENSION_X - 7, y);
    pen.lineTo(DIMENSION_X + 7, y);
  }
  pen.moveTo(DIMENSION_X, top);
  pen.lineTo(DIMENSION_X, ground);
  pen.paint({ stroke: 'pencil', width: 'thin' });
  pen.text(distance(height), DIMENSION_X + 5, (top + ground) / 2, { size: 19, tone: 'pencil' });
}

/** The ground of a site along its section, true to scale, with the place over which a descent begins. */
export function drawSitePicture(site: Site, seed: number): Picture {
  const { pen, sheet } = blank(SITE_HEIGHT, `choice-${site.id}`);
  const scale = WIDTH / SHOWN;
  const terrain = createGround(site, seed);
  const shown = terrain.heights.filter((_, i) => {
    const x = terrain.firstX + i * terrain.spacing;
    return x >= SHOWN_FROM && x <= SHOWN_FROM + SHOWN;
  });
  const middle = (Math.min(...shown) + Math.max(...shown)) / 2;
  // the ground lies low in the picture, with the sky above
  sheet.camera.framing = { x: SHOWN_FROM + SHOWN / 2, y: middle + SITE_HEIGHT / 6 / scale, scale };
  drawGround(sheet, terrain);
  if (site.ground.soil !== undefined) drawDust(pen, sheet, terrain);
  drawStartMark(pen, sheet, site.startX, groundHeight(terrain, site.startX));
  return { markup: pen.markup, viewBox: `0 0 ${WIDTH} ${SITE_HEIGHT}` };
}

function blank(height: number, name: string): { readonly pen: SvgPen; readonly sheet: Sheet } {
  const pen = new SvgPen(1, name);
  const camera = new SectionCamera();
  camera.size = { width: WIDTH, height, covered: NO_INSETS };
  return { pen, sheet: { pen, camera, time: 0, still: true } };
}

const DUST_DOTS = 420;
/** How deep the dots are strewn [drafting units]. */
const DUST_DEPTH = 15;

/** Fine dots under the surface, as loose soil is drawn in a section. */
function drawDust(pen: SvgPen, { camera }: Sheet, terrain: Terrain): void {
  for (let i = 0; i < DUST_DOTS; i++) {
    const x = WIDTH * scatter(i, 1);
    const y = camera.sheetY(groundHeight(terrain, camera.sectionX(x))) + 2 + DUST_DEPTH * scatter(i, 2) * scatter(i, 3);
    pen.moveTo(x + 0.8, y);
    pen.arc(x, y, 0.8, 0, 2 * Math.PI);
  }
  pen.paint({ fill: 'ink', alpha: 0.7 });
}

/** A pencil line straight down onto the ground, with an open triangle where the lander comes in. */
function drawStartMark(pen: SvgPen, { camera }: Sheet, x: number, ground: number): void {
  const [at, top] = [camera.sheetX(x), 10];
  pen.moveTo(at - 5, top - 7);
  pen.lineTo(at + 5, top - 7);
  pen.lineTo(at, top + 1);
  pen.close();
  pen.paint({ stroke: 'ink', width: 'thin' });
  pen.moveTo(at, top + 1);
  pen.lineTo(at, camera.sheetY(ground) - 2);
  pen.paint({ stroke: 'pencil', width: 'hair', dash: 'fine' });
}
