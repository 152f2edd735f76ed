import type { InjectMeasures } from '../../../engine/review/index.ts';
import { MEASURE_KINDS } from '../../../engine/review/index.ts';
import type { Pen } from '../../ink/pen.ts';
import { SvgPen } from '../../ink/svgPen.ts';
import { MEASURES } from '../../text/debrief.ts';
import { seconds } from '../../text/numbers.ts';

const WIDTH = 460;
const HEIGHT = 92;
const LEFT = 12;
const RIGHT = 12;
const LINE = 62;
/** The shortest scale [s]. */
const LEAST_SPAN = 10;

/** When it was noticed, named and done, as marks on a scale of seconds after the inject; what was not observed has none. Undefined where nothing was. */
export function drawMeasures(
  measures: InjectMeasures,
  id: string,
): { markup: string; viewBox: string; label: string } | undefined {
  const pen = new SvgPen(1, id);
  const marks = MEASURE_KINDS.flatMap((kind) => {
    const after = shownSeconds(measures.measures[kind]);
    return after === undefined ? [] : [{ after, words: MEASURES.kinds[kind] }];
  }).toSorted((one, other) => one.after - other.after);
  if (marks.length === 0) return undefined;
  const span = Math.max(LEAST_SPAN, ...marks.map(({ after }) => 1.15 * after));
  const x = (after: number) => LEFT + (after / span) * (WIDTH - LEFT - RIGHT);
  drawScale(pen, span, x);
  marks.forEach(({ after, words }, i) => drawMark(pen, x(after), `${words} ${seconds(after)}`, i));
  const told = MEASURE_KINDS.map((kind) => `${MEASURES.kinds[kind]}: ${measureWords(measures.measures[kind])}`);
  return { markup: pen.markup, viewBox: `0 0 ${WIDTH} ${HEIGHT}`, label: MEASURES.drawn(told.join('; ')) };
}

type Measured = InjectMeasures['measures']['detect'];

/** What a person put right, else what the table saw; undefined: not observed. */
export function shownSeconds({ seconds: seen, corrected }: Measured): number | undefined {
  return corrected === undefined ? seen : corrected.seconds;
}

export function measureWords(measured: Measured): string {
  const after = shownSeconds(measured);
  if (after === undefined) return MEASURES.notObserved;
  return [MEASURES.after(seconds(after)), ...measured.over.map((sign) => MEASURES.over[sign])].join(', ');
}

function drawScale(pen: Pen, span: number, x: (after: number) => number): void {
  pen.moveTo(x(0), LINE);
  pen.lineTo(x(span), LINE);
  pen.paint({ stroke: 'ink', width: 'edge' });
  const every = span > 60 ? 20 : span > 25 ? 10 : 5;
  for (let after = 0; after <= span; after += every) {
    pen.moveTo(x(after), LINE);
    pen.lineTo(x(after), LINE + 6);
    pen.paint({ stroke: 'ink', width: 'thin' });
    pen.text(after === 0 ? '0' : String(after), x(after), LINE + 22, { size: 14, tone: 'pencil', align: 'center' });
  }
}

/** Each on a row of its own, so that words of marks close together do not meet. */
function drawMark(pen: Pen, at: number, words: string, row: number): void {
  const y = 14 + 16 * row;
  pen.moveTo(at, y - 10);
  pen.lineTo(at, LINE);
  pen.paint({ stroke: 'ink', width: 'thin' });
  pen.arc(at, LINE, 4, 0, 2 * Math.PI);
  pen.paint({ stroke: 'ink', width: 'edge', fill: 'ink' });
  const isRight = at > 0.55 * WIDTH;
  pen.text(words, isRight ? at - 5 : at + 5, y, { size: 15, halo: 'card', align: isRight ? 'right' : 'left' });
}
