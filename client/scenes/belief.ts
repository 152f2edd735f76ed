import { groundHeight, type Profile } from '../../engine/ground/index.ts';
import type { BeliefSpread, MapView, TableView } from '../../engine/table/index.ts';
import type { DescentState } from '../../engine/world/index.ts';
import type { Lettering } from '../ink/pen.ts';
import type { Spot } from '../ink/stencil.ts';
import { PencilPen } from '../ink/pencilPen.ts';
import { BELIEF } from '../text/en.ts';
import { distance, within } from '../text/numbers.ts';
import { BAND, drawBeliefBand, drawMapLine, drawProfileBand } from '../views/beliefBand.ts';
import { drawLander } from '../views/lander/drawLander.ts';
import type { Figure } from '../views/lander/figure.ts';
import { drawEdgeArrow, edgeTo, type AtEdge } from '../views/edgeArrow.ts';
import { letter } from '../views/labels.ts';
import { NARROW, type Sheet } from '../views/sheet.ts';
import { poseOf } from './pose.ts';

type Side = 'left' | 'right';

const LETTERING: Lettering = { size: 14, italic: true, halo: 'paper' };
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
  /** The descent still runs. */
  readonly isLive: boolean;
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
  lander: { readonly x: number; readonly y: number; readonly times: number },
  doubt: { readonly spread: BeliefSpread; readonly map: MapView; readonly side: Side },
): void {
  const { pen, camera } = sheet;
  const { spread, map, side } = doubt;
  const { times } = lander;
  const foot = lander.y - figure.centerHeight;
  const half = times * figure.halfStance;
  const top = foot + times * figure.hull.top + BAND * spread.height;
  drawBeliefBand(sheet, {
    left: lander.x - half - BAND * spread.x,
    right: lander.x + half + BAND * spread.x,
    bottom: foot - BAND * spread.height,
    top,
  });
  drawProfileBand(sheet, map, BAND * map.sigma);
  // a narrow sheet has the speed's words where a wide one has room
  const words = isNarrow(sheet) ? BELIEF.hatchShort : BELIEF.hatch;
  const width = pen.widthOf(words, LETTERING);
  const aside = [-1, 1].map((way) => camera.sheetX(lander.x + way * 1.9 * half) - (way < 0 ? width : 0));
  const sides = isNarrow(sheet) && side === 'right' ? aside : aside.toReversed();
  const y = camera.sheetY(top) - 6 * pen.unit;
  letter(sheet, {
    name: 'believed',
    rank: 3,
    words,
    lettering: LETTERING,
    places: [0, -20, 24].flatMap((up) => sides.map((x) => ({ x, y: y + up * pen.unit }))),
    mayGo: true,
  });
  drawMapWords(sheet, { words: BELIEF.map(within(BAND * map.sigma)), map, above: BAND * map.sigma, side });
}

/** The map, in pencil over the true ground. */
export function drawMapUnderTruth(sheet: Sheet, map: MapView, side: Side): void {
  drawMapLine(pencilSheet(sheet, { bare: true }), map);
  drawMapWords(sheet, { words: BELIEF.ground, map, above: 0, side });
}

/** What was believed, in pencil under the true lander, and how far it was off. */
export function drawBeliefUnderTruth(sheet: Sheet, figure: Figure, belief: BeliefUnderTruth): void {
  const { pen, camera } = sheet;
  const { state, right, up, isLive } = belief;
  const bare = pencilSheet(sheet, { bare: true });
  drawLander(bare.pen, camera, figure, poseOf(state, figure));
  const top = figure.hull.top - figure.centerHeight;
  const above = { x: camera.sheetX(state.x), y: camera.sheetY(state.y + CLEAR_OF_TOP * top) };
  const below = camera.sheetY(state.y - figure.centerHeight) + 22 * pen.unit;
  const edge = edgeTo(sheet, { x: camera.sheetX(state.x), y: camera.sheetY(state.y) });
  if (edge !== undefined) drawEdgeArrow(bare, edge);
  letter(sheet, {
    name: 'believed at the end',
    rank: 1,
    words: BELIEF.lander(right, up, distance, isLive || isNarrow(sheet) ? 'believed' : 'believed at the end'),
    lettering: { ...LETTERING, align: 'center' },
    places:
      edge === undefined
        ? [above.y, above.y - 20 * pen.unit, above.y - 40 * pen.unit, below, below + 20 * pen.unit].map((y) => ({
            x: above.x,
            y,
          }))
        : besideTail(edge, pen.unit),
  });
}

/** Says of the true lander that it is that: first away from the one that is drawn as believed. */
export function nameTruth(
  sheet: Sheet,
  figure: Figure,
  { truth, isToLeft }: { readonly truth: DescentState; readonly isToLeft: boolean },
): void {
  const { pen, camera } = sheet;
  const ways = isToLeft ? ([-1, 1] as const) : ([1, -1] as const);
  const width = pen.widthOf(BELIEF.true, LETTERING);
  const top = figure.hull.top - figure.centerHeight;
  letter(sheet, {
    name: 'true',
    rank: 2,
    words: BELIEF.true,
    lettering: LETTERING,
    places: [0.8 * top, 0, -0.8 * figure.centerHeight, CLEAR_OF_TOP * top].flatMap((over) =>
      ways.map((way) => ({
        x: camera.sheetX(truth.x + 1.2 * way * figure.halfStance) - (way < 0 ? width : 0),
        y: camera.sheetY(truth.y + over),
      })),
    ),
  });
}

function isNarrow({ pen, camera }: Sheet): boolean {
  return camera.freeWidth < NARROW * pen.unit;
}

/** Words over the tail of an arrow that points down or aside, else under it. */
function besideTail({ tip, tail }: AtEdge, unit: number): readonly Spot[] {
  const isUpward = tip.y < tail.y;
  return [10, 30].map((away) => ({ x: tail.x, y: tail.y + (isUpward ? away + 8 : -away) * unit }));
}

/** At an edge of the free part of the sheet, over the map's ground or in it: first away from the words of the slope. */
function drawMapWords(
  sheet: Sheet,
  note: { readonly words: string; readonly map: Profile; readonly above: number; readonly side: Side },
): void {
  const { pen, camera } = sheet;
  const { covered, width } = camera.size;
  // to the left the ladder of heights stands
  const [left, right] = [covered.left + 48 * pen.unit, width - covered.right - 10 * pen.unit];
  const wide = pen.widthOf(note.words, LETTERING);
  const ends = note.side === 'right' ? [left, right] : [right, left];
  const ground = (edge: number, above: number) => camera.sheetY(groundHeight(note.map, camera.sectionX(edge)) + above);
  const at = (edge: number, y: number) => ({ x: edge === left ? left : right - wide, y });
  letter(sheet, {
    name: 'map',
    rank: 4,
    words: note.words,
    lettering: LETTERING,
    places: [
      ...ends.map((edge) => at(edge, ground(edge, note.above) - 8 * pen.unit)),
      ...ends.map((edge) => at(edge, ground(edge, -note.above) + 20 * pen.unit)),
    ],
    mayGo: true,
  });
}
