import { ENVELOPE_CLASSES, type EnvelopeClass, type EnvelopeMap } from '../envelope/index.ts';
import { planePlot, type Hatch, type Plot } from '../plot/index.ts';
import type { PlaneGrid, StudyCase } from './studyCase.ts';

const HATCH_OF: { readonly [Class in EnvelopeClass]: Hatch } = {
  inside: 'clear',
  clearance: 'level',
  load: 'dotted',
  'crush exhausted': 'dotted',
  'timed out': 'crossed',
  'tip uphill': 'falling',
  'tip downhill': 'rising',
};

/** What is out of reach of the legs needs no room: the plane reaches to this, or to the arrival where that is faster [m/s]. */
const REACH = 4;

function reach(speed: number): number {
  return Math.max(REACH, Math.ceil(Math.abs(speed) * 1.2));
}

/** How far the plane of a case reaches. */
export function planeReach({
  horizontalSpeed,
  descentRate,
}: Pick<StudyCase, 'horizontalSpeed' | 'descentRate'>): Pick<PlaneGrid, 'speedTo' | 'descentTo'> {
  return { speedTo: reach(horizontalSpeed), descentTo: reach(descentRate) };
}

/** The classes that a map has, each with its hatch. */
export function planeClasses(
  map: EnvelopeMap | undefined,
): readonly { readonly name: EnvelopeClass; readonly hatch: Hatch }[] {
  const present = ENVELOPE_CLASSES.filter((name) => (map?.counts[name] ?? 0) > 0);
  return present.map((name) => ({ name, hatch: HATCH_OF[name] }));
}

/** The plane of horizontal speed and descent rate as far as it is known, with the arrival in it. */
export function planeDrawing(
  { horizontalSpeed, descentRate }: StudyCase,
  { speedTo, descentTo, steps }: PlaneGrid,
  map: EnvelopeMap | undefined,
  said: { readonly label: string; readonly x: string; readonly y: string; readonly point: string },
): Plot {
  const count = steps + 1;
  const unknown = (): readonly Hatch[] => Array.from({ length: count * count }, () => 'unknown');
  return planePlot({
    label: said.label,
    x: { from: -speedTo, to: speedTo, count, name: said.x },
    y: { from: 0, to: descentTo, count, name: said.y },
    cells: map?.nodes.map((node) => (node.class === undefined ? 'unknown' : HATCH_OF[node.class])) ?? unknown(),
    lines: map?.lines.map((line) => line.map((at) => ({ x: at.horizontalSpeed, y: at.descentRate }))) ?? [],
    point: { x: horizontalSpeed, y: descentRate, words: said.point },
  });
}
