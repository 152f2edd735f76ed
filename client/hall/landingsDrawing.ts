import { groundHeight } from '../../engine/ground/index.ts';
import type { CardOutcome } from '../../engine/table/index.ts';
import type { DescentSetup } from '../../engine/world/index.ts';
import type { PhoneContact, PhoneLanding } from '../../levels/index.ts';
import type { Pen } from '../ink/pen.ts';
import { SvgPen } from '../ink/svgPen.ts';

/** What a hall tells apart of how a landing ends. */
export type Ending = 'stands' | 'falls' | 'breaks' | 'elsewhere';

const ENDINGS = {
  'upright inside limit': 'stands',
  'upright outside limit': 'stands',
  'tipped downhill': 'falls',
  'tipped uphill': 'falls',
  'gear overload': 'breaks',
  'off site': 'elsewhere',
  'propellant exhausted': 'elsewhere',
  aborted: 'elsewhere',
  stopped: 'elsewhere',
} as const satisfies Readonly<Record<CardOutcome, Ending>>;

export function endingOf({ outcome }: PhoneLanding): Ending {
  return ENDINGS[outcome];
}

interface Markup {
  readonly markup: string;
  readonly viewBox: string;
}

/** Of a sheet that is seen from afar [px]. */
const UNIT = 1.6;
const PATHS = { width: 900, height: 600, margin: 40 } as const;

/** To either side of the start at least so far, as a share of its height [-]: paths that lead farther run off the sheet. */
const REACH = { least: 0.35, most: 1.2 } as const;

/** Every landing as a thin line from the one start to where it ended. */
export function drawPaths({ terrain, start }: DescentSetup, landings: readonly PhoneLanding[]): Markup {
  const pen = new SvgPen(UNIT, 'paths');
  const fall = start.y - groundHeight(terrain, start.x);
  const ends = landings.flatMap(({ path }) => path.map(([x]) => x));
  const left = Math.max(start.x - REACH.most * fall, Math.min(start.x - REACH.least * fall, ...ends));
  const right = Math.min(start.x + REACH.most * fall, Math.max(start.x + REACH.least * fall, ...ends));
  const room = { width: PATHS.width - 2 * PATHS.margin, height: PATHS.height - 2 * PATHS.margin };
  const scale = Math.min(room.width / (right - left), room.height / (1.1 * fall));
  const x = (section: number) => PATHS.width / 2 + (section - (left + right) / 2) * scale;
  const y = (height: number) => PATHS.margin + (start.y - height) * scale;
  drawGround(pen, { x, y, scale }, terrain, (left + right) / 2);
  for (const landing of landings) {
    for (const [px, height] of landing.path) pen.lineTo(x(px), y(height));
    pen.paint({ stroke: 'pencil', width: 'thin', alpha: 0.7 });
  }
  // the ends over all lines
  for (const landing of landings) {
    const [px, height] = landing.path.at(-1)!;
    drawEnding(pen, endingOf(landing), x(px), y(height), 8);
  }
  pen.moveTo(x(start.x) + 7, y(start.y));
  pen.arc(x(start.x), y(start.y), 7, 0, 2 * Math.PI);
  pen.paint({ fill: 'ink' });
  return { markup: pen.markup, viewBox: `0 0 ${PATHS.width} ${PATHS.height}` };
}

interface Scales {
  readonly x: (section: number) => number;
  readonly y: (height: number) => number;
  /** [px/m] */
  readonly scale: number;
}

function drawGround(pen: Pen, { x, y, scale }: Scales, terrain: DescentSetup['terrain'], middle: number): void {
  // past the sheet to either side: where it lies is wider at times
  const reach = (1.5 * PATHS.width) / scale;
  for (let step = -150; step <= 150; step++) {
    const at = middle + (reach * step) / 150;
    pen.lineTo(x(at), y(groundHeight(terrain, at)));
  }
  pen.lineTo(2 * PATHS.width, PATHS.height + 400);
  pen.lineTo(-PATHS.width, PATHS.height + 400);
  pen.close();
  pen.paint({ fill: 'soil', stroke: 'ink', width: 'thick' });
}

/** Told apart by shape: a ring stands, a cross falls, a square broke a leg, a bar ended otherwise. */
function drawEnding(pen: Pen, ending: Ending, x: number, y: number, radius: number): void {
  const r = 0.8 * radius;
  if (ending === 'stands') {
    pen.moveTo(x + r, y);
    pen.arc(x, y, r, 0, 2 * Math.PI);
    pen.paint({ fill: 'card', stroke: 'ink', width: 'outline' });
  } else if (ending === 'breaks') {
    pen.moveTo(x - r, y - r);
    for (const [across, down] of [
      [r, -r],
      [r, r],
      [-r, r],
    ] as const)
      pen.lineTo(x + across, y + down);
    pen.close();
    pen.paint({ fill: 'ink' });
  } else {
    pen.moveTo(x - r, ending === 'falls' ? y - r : y);
    pen.lineTo(x + r, ending === 'falls' ? y + r : y);
    if (ending === 'falls') {
      pen.moveTo(x - r, y + r);
      pen.lineTo(x + r, y - r);
    }
    pen.paint({ stroke: 'ink', width: 'thick' });
  }
}

/** One row of the key to the shapes. */
export function drawKey(ending: Ending): Markup {
  const pen = new SvgPen(UNIT, `key-${ending}`);
  drawEnding(pen, ending, 15, 15, 12);
  return { markup: pen.markup, viewBox: '0 0 30 30' };
}

/** The scale of the dots ends at so many times the tip limit; faster ones stand in one column past it. */
const MOST_SHARE = 2;
const COLUMNS_A_LIMIT = 10;
const COLUMNS = MOST_SHARE * COLUMNS_A_LIMIT + 1;
const DOTS = { width: 630, height: 300, floor: 290 } as const;
const COLUMN = DOTS.width / COLUMNS;

/** Where the tip limit stands on the sheet, from its left edge, and where its last column begins [-]. */
export const PLACES = { limit: COLUMNS_A_LIMIT / COLUMNS, beyond: (COLUMNS - 1) / COLUMNS } as const;

/** Speed across the ground at the contact that decided, as a share of the tip limit of that very arrival; where it tips at no speed that was looked at, at most this. */
export function shareOf({ speed, tip, upTo }: PhoneContact): number {
  const limit = tip ?? upTo;
  return limit === undefined || limit === 0 ? Infinity : speed / limit;
}

/** Every contact as a dot over a scale of tip limits, in columns; the limit is a line across. */
export function drawDots(landings: readonly PhoneLanding[]): Markup {
  const pen = new SvgPen(UNIT, 'dots');
  const columns = Array.from({ length: COLUMNS }, (): Ending[] => []);
  for (const landing of landings) {
    if (landing.contact === undefined) continue;
    const share = Math.min(shareOf(landing.contact), MOST_SHARE);
    columns[Math.floor(share * COLUMNS_A_LIMIT)]?.push(endingOf(landing));
  }
  const tallest = Math.max(...columns.map(({ length }) => length));
  const size = Math.min(COLUMN, (DOTS.floor - 10) / Math.max(1, tallest));
  columns.forEach((endings, i) => {
    endings.forEach((ending, row) =>
      drawEnding(pen, ending, (i + 0.5) * COLUMN, DOTS.floor - (row + 0.5) * size, size / 2),
    );
  });
  pen.moveTo(0, DOTS.floor);
  pen.lineTo(DOTS.width, DOTS.floor);
  pen.paint({ stroke: 'ink', width: 'edge' });
  const limit = PLACES.limit * DOTS.width;
  pen.moveTo(limit, 0);
  pen.lineTo(limit, DOTS.height);
  pen.paint({ stroke: 'blue', width: 'thick' });
  return { markup: pen.markup, viewBox: `0 0 ${DOTS.width} ${DOTS.height}` };
}
