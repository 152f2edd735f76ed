import { groundHeight, type Profile } from '../../engine/ground/index.ts';
import type { BeliefSpread, MapView, TableView } from '../../engine/table/index.ts';
import type { DescentState } from '../../engine/world/index.ts';
import { PencilPen } from '../ink/pencilPen.ts';
import { BELIEF } from '../text/en.ts';
import { distance, within } from '../text/numbers.ts';
import { BAND, drawBeliefBand, drawMapLine, drawProfileBand } from '../views/beliefBand.ts';
import { drawBeliefWords } from '../views/beliefWords.ts';
import { drawLander } from '../views/lander/drawLander.ts';
import type { Figure } from '../views/lander/figure.ts';
import type { Sheet } from '../views/sheet.ts';
import { poseOf } from './pose.ts';

type Side = 'left' | 'right';

/** Sheets narrower than this get the short words [drafting units]. */
const NARROW = 600;
/** Words over a lander stand so many times as high over its center of mass as its top [-]. */
const CLEAR_OF_TOP = 1.45;

/** The last of what was believed before truth came to lie over it. */
export interface LastBelief {
  readonly state: DescentState;
  readonly map: MapView;
}

/** The same as it is drawn under the true lander, and how far from that it was believed [m]. */
export interface BeliefUnderTruth extends LastBelief {
  readonly right: number;
  readonly up: number;
}

/** The same sheet, drawn on in pencil. */
export function pencilSheet(sheet: Sheet, options = { bare: false }): Sheet {
  return { ...sheet, pen: new PencilPen(sheet.pen, options) };
}

/** What is believed now; nothing where what is seen is true. */
export function beliefOf({ drawnIn, flight, map }: TableView): LastBelief | undefined {
  return drawnIn === 'pencil' && map !== undefined ? { state: flight, map } : undefined;
}

/** In flight: how far off lander and ground may be, hatched, and in words. `side`: where the slope has its words. */
export function drawDoubt(
  sheet: Sheet,
  figure: Figure,
  lander: { readonly x: number; readonly y: number },
  doubt: { readonly spread: BeliefSpread; readonly map: MapView; readonly side: Side },
): void {
  const { pen, camera } = sheet;
  const { spread, map, side } = doubt;
  const foot = lander.y - figure.centerHeight;
  const top = foot + figure.hull.top + BAND * spread.height;
  drawBeliefBand(sheet, {
    left: lander.x - figure.halfStance - BAND * spread.x,
    right: lander.x + figure.halfStance + BAND * spread.x,
    bottom: foot - BAND * spread.height,
    top,
  });
  drawProfileBand(sheet, map, BAND * map.sigma);
  // a narrow sheet has the speed's words where a wide one has room
  const isNarrow = camera.freeWidth < NARROW * pen.unit;
  const isLeft = isNarrow && side === 'right';
  drawBeliefWords(sheet, {
    words: isNarrow ? BELIEF.hatchShort : BELIEF.hatch,
    x: camera.sheetX(lander.x + (isLeft ? -1.9 : 1.9) * figure.halfStance),
    y: camera.sheetY(top) - 6 * pen.unit,
    align: isLeft ? 'right' : 'left',
  });
  drawMapWords(sheet, { words: BELIEF.map(within(BAND * map.sigma)), map, above: BAND * map.sigma, side });
}

/** At rest: what was believed last, in pencil over the true ground and under the true lander, and how far it was off. */
export function drawBeliefUnderTruth(
  sheet: Sheet,
  figure: Figure,
  belief: BeliefUnderTruth,
  options: { readonly truth: DescentState; readonly side: Side },
): void {
  const { camera } = sheet;
  const { state, map, right, up } = belief;
  const { truth, side } = options;
  const bare = pencilSheet(sheet, { bare: true });
  drawMapLine(bare, map);
  drawLander(bare.pen, camera, figure, poseOf(state, figure));
  const top = figure.hull.top - figure.centerHeight;
  drawBeliefWords(sheet, {
    words: BELIEF.lander(right, up, distance),
    x: camera.sheetX(state.x),
    y: camera.sheetY(state.y + CLEAR_OF_TOP * top),
    align: 'center',
  });
  // on the side on which there is no scale of the tilt left
  const away = side === 'right' ? -1 : 1;
  drawBeliefWords(sheet, {
    words: BELIEF.true,
    x: camera.sheetX(truth.x + 1.2 * away * figure.halfStance),
    y: camera.sheetY(truth.y + 0.8 * top),
    align: side === 'right' ? 'right' : 'left',
  });
  drawMapWords(sheet, { words: BELIEF.ground, map, above: 0, side });
}

/** Over the map's ground at the edge of the free part of the sheet, away from the words of the slope. */
function drawMapWords(
  sheet: Sheet,
  note: { readonly words: string; readonly map: Profile; readonly above: number; readonly side: Side },
): void {
  const { pen, camera } = sheet;
  const { covered, width } = camera.size;
  const isLeft = note.side === 'right';
  const edge = isLeft ? covered.left + 10 * pen.unit : width - covered.right - 10 * pen.unit;
  const ground = groundHeight(note.map, camera.sectionX(edge)) + note.above;
  drawBeliefWords(sheet, {
    words: note.words,
    x: edge,
    y: camera.sheetY(ground) - 8 * pen.unit,
    align: isLeft ? 'left' : 'right',
  });
}
