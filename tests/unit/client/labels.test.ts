import { describe, expect, it } from 'vitest';
import { NO_INSETS, SectionCamera } from '../../../client/camera/sectionCamera.ts';
import { SvgPen } from '../../../client/ink/svgPen.ts';
import { LabelBoard, letter } from '../../../client/views/labels.ts';
import type { Sheet } from '../../../client/views/sheet.ts';

const LETTERING = { size: 20 } as const;
/** Over each other at the first places, apart at the second. */
const BELOW = [
  { x: 100, y: 100 },
  { x: 100, y: 150 },
];

type Wanted = Omit<Parameters<LabelBoard['put']>[0], 'lettering'>;

/** Words and where they stand, after one frame. */
function lettered(
  board: LabelBoard,
  labels: readonly Wanted[],
  time = 0,
  blockedUpTo = 0,
): Readonly<Record<string, number>> {
  const pen = new SvgPen(1, 'test');
  const camera = new SectionCamera();
  camera.size = { width: 400, height: 300, covered: NO_INSETS };
  const sheet: Sheet = { pen, camera, time, still: true, labels: board };
  board.begin();
  if (blockedUpTo > 0) board.block({ left: 0, right: 400, top: 0, bottom: blockedUpTo });
  for (const label of labels) letter(sheet, { ...label, lettering: LETTERING });
  board.letter(sheet);
  return Object.fromEntries(
    [...pen.markup.matchAll(/<text x="[\d.-]+" y="([\d.-]+)"[^>]*>([^<]*)/g)].map(([, y, words = '']) => [
      words,
      Number(y),
    ]),
  );
}

const FIRST: Wanted = { name: 'first', rank: 0, words: 'height', places: [{ x: 100, y: 100 }] };
const SECOND: Wanted = { name: 'second', rank: 1, words: 'slope', places: BELOW };

describe('words on the drawing', () => {
  it('give way to more important ones, in whatever order they come', () => {
    expect(lettered(new LabelBoard(), [SECOND, FIRST])).toEqual({ height: 100, slope: 150 });
    expect(lettered(new LabelBoard(), [SECOND])).toEqual({ slope: 100 });
  });

  it('are left out where there is no room, unless they must stay', () => {
    const only = { ...SECOND, places: [{ x: 110, y: 104 }] };
    expect(lettered(new LabelBoard(), [FIRST, { ...only, mayGo: true }])).toEqual({ height: 100 });
    expect(lettered(new LabelBoard(), [FIRST, only])).toEqual({ height: 100, slope: 104 });
  });

  it('keep clear of what is blocked', () => {
    expect(lettered(new LabelBoard(), [SECOND], 0, 110)).toEqual({ slope: 150 });
  });

  it('are moved into the sheet, or left out where they stand just there or nowhere', () => {
    const outside = { ...SECOND, places: [{ x: 100, y: 900 }] };
    const [y = 0] = Object.values(lettered(new LabelBoard(), [outside]));
    expect(y).toBeGreaterThan(250);
    expect(y).toBeLessThan(300);
    expect(lettered(new LabelBoard(), [{ ...outside, isFixed: true, mayGo: true }])).toEqual({});
  });

  it('stay where they are for a second before they go back to a better place', () => {
    const board = new LabelBoard();
    expect(lettered(board, [FIRST, SECOND], 0)['slope']).toBe(150);
    expect(lettered(board, [SECOND], 0.5)['slope']).toBe(150);
    expect(lettered(board, [SECOND], 1.5)['slope']).toBe(100);
    // what is in the way is given way to at once
    expect(lettered(board, [FIRST, SECOND], 1.6)['slope']).toBe(150);
  });

  it('that were left out come back a second later, and not at once', () => {
    const board = new LabelBoard();
    const label = { ...SECOND, places: [{ x: 100, y: 100 }], mayGo: true };
    expect(lettered(board, [FIRST, label], 0)).toEqual({ height: 100 });
    expect(lettered(board, [label], 0.5)).toEqual({});
    expect(lettered(board, [label], 1.5)).toEqual({ slope: 100 });
  });
});
